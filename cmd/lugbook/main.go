// Command lugbook records, plans, checks and draws the wiring of electric carts.
package main

import (
	"os"

	"example.com/lugbook/tui/early"
)

func main() {
	early.Restore()
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
