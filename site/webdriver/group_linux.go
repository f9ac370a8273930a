package webdriver

import "syscall"

// endWithParent has a driver end its browsers and itself when the test is interrupted and can't end it.
func endWithParent(a *syscall.SysProcAttr) { a.Pdeathsig = syscall.SIGTERM }
