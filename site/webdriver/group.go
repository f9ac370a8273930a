package webdriver

import (
	"os/exec"
	"syscall"
	"time"
)

// startGroup starts a process as the head of a group of its own, so that endGroup reaches whatever it starts.
func startGroup(cmd *exec.Cmd) error {
	cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	endWithParent(cmd.SysProcAttr)
	cmd.WaitDelay = time.Second // a grandchild may hold the output open
	return cmd.Start()
}

// endGroup ends a group that was started. A nil or unstarted command is none.
func endGroup(cmd *exec.Cmd) {
	if cmd == nil || cmd.Process == nil {
		return
	}
	syscall.Kill(-cmd.Process.Pid, syscall.SIGKILL)
	cmd.Wait()
}
