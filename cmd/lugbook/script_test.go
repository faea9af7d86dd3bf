package main

import (
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"lugbook": func() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) },
	})
}

// TestTranscripts replays command lines against what they print, write and exit with.
func TestTranscripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "../../testdata/script",
		Setup: func(e *testscript.Env) error {
			e.Setenv("XDG_STATE_HOME", e.WorkDir+"/state")
			e.Setenv("XDG_CONFIG_HOME", e.WorkDir+"/config")
			e.Setenv("HOME", e.WorkDir)
			return nil
		},
	})
}
