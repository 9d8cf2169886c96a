// Command dryfit checks the specification of a shop-built wood ceiling before
// drawings are issued.
package main

//go:generate go run ./internal/gendocs
//go:generate go run -tags pages . manual --output internal/manual/man
//go:generate go run -C ../../.ci/tools ./supply -root ../.. -page ../../docs/licences.md

import (
	"context"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"

	"dryfit/cmd/dryfit/internal/console"
)

func main() {
	// A pipe that is closed is an output that can't be written, and not the end
	// of the process: the exit status is then the one that is promised.
	signal.Ignore(syscall.SIGPIPE)
	roomForGarbage()
	ends := []os.Signal{os.Interrupt, syscall.SIGTERM}
	if !signal.Ignored(syscall.SIGHUP) { // as under nohup
		ends = append(ends, syscall.SIGHUP)
	}
	ctx, stop := signal.NotifyContext(context.Background(), ends...)
	status := run(ctx, os.Args[1:], console.Streams{In: os.Stdin, Out: os.Stdout, Err: os.Stderr})
	stop()
	os.Exit(status)
}

// How much may lie about before it is collected: as a percentage of what is in
// use, and with that in bytes, where it is collected oftener. One's own GOGC and
// GOMEMLIMIT come first.
const (
	garbagePercent = 1000
	memoryLimit    = 160 << 20
)

// roomForGarbage spares the collector work: next to nothing is kept of a spec
// that was checked or of an option that was studied, and it would else run every
// few of them.
func roomForGarbage() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(garbagePercent)
	}
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(memoryLimit)
	}
}
