package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/layout/metrics/offgrid"
)

const smallGraph = `{"zones":[{"id":"front"}],"nodes":[
 {"id":"a","zone":"front","w":8,"h":4,"ports":[{"id":"1","side":"E","offset":2}]},
 {"id":"b","zone":"front","w":8,"h":4,"ports":[{"id":"1","side":"W","offset":2}]}],
 "edges":[{"id":"w","from":["a","1"],"to":["b","1"]}]}`

func writeGraph(t *testing.T, text string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "graph.json")
	require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
	return name
}

func TestDrawsAGraph(t *testing.T) {
	for _, args := range [][]string{nil, {"-full", "-moves", "2000"}, {"-zones", "-width", "60"}} {
		var out, errs bytes.Buffer
		require.NoError(t, run(append(args, writeGraph(t, smallGraph)), &out, &errs))
		var d picture
		require.NoError(t, json.Unmarshal(out.Bytes(), &d))
		require.Len(t, d.Nodes, 2)
		path := d.Edges["w"]
		require.GreaterOrEqual(t, len(path), 2)
		require.Equal(t, offgrid.Point{d.Nodes["a"].X + 8, d.Nodes["a"].Y + 2}, path[0], "the wire begins at its terminal")
		require.Equal(t, offgrid.Point{d.Nodes["b"].X, d.Nodes["b"].Y + 2}, path[len(path)-1])
		require.Empty(t, errs.String())
	}
}

func TestWritesIntoADirectory(t *testing.T) {
	dir := t.TempDir()
	var out, errs bytes.Buffer
	require.NoError(t, run([]string{"-times", "-out", dir, writeGraph(t, smallGraph), writeGraph(t, smallGraph)}, &out, &errs))
	require.FileExists(t, filepath.Join(dir, "graph.json"))
	require.Empty(t, out.String())
	require.Contains(t, errs.String(), "graph.json: ")
}

func TestSaysWhatIsWrong(t *testing.T) {
	var out, errs bytes.Buffer
	require.ErrorContains(t, run(nil, &out, &errs), "give one graph")
	require.ErrorContains(t, run([]string{writeGraph(t, `{"nodes":[{"id":"a","w":3,"h":3,"ports":[{"id":"1","side":"X"}]}]}`)}, &out, &errs), "none of N, E, S, W")
	require.Error(t, run([]string{writeGraph(t, "{")}, &out, &errs))
	require.Error(t, run([]string{"no-such-file.json"}, &out, &errs))
	require.NoError(t, run([]string{"-h"}, &out, &errs))
	require.Contains(t, errs.String(), "usage: layoutbench")
}
