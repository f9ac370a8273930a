//go:build !linux

package webdriver

import "syscall"

// endWithParent does nothing where the system has no such thing.
func endWithParent(*syscall.SysProcAttr) {}
