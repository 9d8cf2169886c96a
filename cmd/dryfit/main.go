// Command dryfit checks the specification of a shop-built wood ceiling before
// drawings are issued.
package main

//go:generate go run ./internal/gendocs
//go:generate go run -C ../../.ci/tools ./supply -root ../.. -page ../../docs/licences.md

import (
	"context"
	"os"
	"os/signal"
	"syscall"
)

func main() {
	// A pipe that is closed is an output that can't be written, and not the end
	// of the process: the exit status is then the one that is promised.
	signal.Ignore(syscall.SIGPIPE)
	ends := []os.Signal{os.Interrupt, syscall.SIGTERM}
	if !signal.Ignored(syscall.SIGHUP) { // as under nohup
		ends = append(ends, syscall.SIGHUP)
	}
	ctx, stop := signal.NotifyContext(context.Background(), ends...)
	status := run(ctx, os.Args[1:], streams{in: os.Stdin, out: os.Stdout, err: os.Stderr})
	stop()
	os.Exit(status)
}
