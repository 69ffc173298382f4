// Command brimline measures up an existing pool: it reads a field book, adjusts what was read, says
// how far each figure can be trusted, and draws the plan.
//
// Exit status: 0 done (solve: the shape is ready), 1 solve: not ready, 2 the input or the command's
// use was refused, 3 the program failed.
package main

import (
	"context"
	"os"
	"os/signal"
)

// version is set by the linker when a release is built.
var version = "dev"

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	code := run(ctx, os.Args[1:], streams{in: os.Stdin, out: os.Stdout, err: os.Stderr})
	stop()
	os.Exit(code)
}
