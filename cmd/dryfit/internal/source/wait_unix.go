//go:build !windows

package source

import "syscall"

// withoutWaiting opens a pipe at once, whether or not somebody writes to it.
const withoutWaiting = syscall.O_NONBLOCK
