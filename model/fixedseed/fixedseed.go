// Package fixedseed makes property tests try the same cases in every run, so that a
// failure belongs to the change that it appears with. Test files import it for that alone:
//
//	import _ "example.com/lugbook/model/fixedseed"
//
// Other cases are tried with go test -rapid.seed=N, and more of them with -rapid.checks=N.
package fixedseed

import (
	"flag"

	_ "pgregory.net/rapid" // defines the flag
)

// Seed is the seed of every run that does not name another.
const Seed = "20"

func init() {
	if err := flag.Set("rapid.seed", Seed); err != nil {
		panic(err)
	}
}
