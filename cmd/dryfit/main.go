// Command dryfit checks the specification of a shop-built wood ceiling before
// drawings are issued.
package main

//go:generate go run ./internal/gendocs

import (
	"context"
	"os"
	"os/signal"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	status := run(ctx, os.Args[1:], streams{in: os.Stdin, out: os.Stdout, err: os.Stderr})
	stop()
	os.Exit(status)
}
