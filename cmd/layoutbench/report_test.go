package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/layout/layouttest"
	"example.com/lugbook/diagram/layout/metrics/offgrid"
)

// playPeer makes the test binary a peer: the variable says how it behaves.
const playPeer = "LAYOUTBENCH_TEST_PEER"

func TestMain(m *testing.M) {
	how := os.Getenv(playPeer)
	if how == "" {
		os.Exit(m.Run())
	}
	os.Exit(actAsPeer(how))
}

// actAsPeer draws with our own drafts, or fails in the way asked for.
func actAsPeer(how string) int {
	switch how {
	case "crash":
		fmt.Fprintln(os.Stderr, "first line\nout of ideas")
		return 3
	case "hang":
		time.Sleep(time.Minute)
	case "babble":
		fmt.Println("hello")
		return 0
	}
	var g fileGraph
	if err := json.NewDecoder(os.Stdin).Decode(&g); err != nil {
		return 1
	}
	own := draft.make(g)
	own.picture.Nodes["zone:front"] = fileCorner{W: 99, H: 99}
	answer := map[string]any{"layout": own.picture, "warmMs": 12.5, "dragMs": 1.5}
	if how == "shift" { // off its terminals
		for id, at := range own.picture.Nodes {
			at.Y++
			own.picture.Nodes[id] = at
		}
	}
	if err := json.NewEncoder(os.Stdout).Encode(answer); err != nil {
		return 1
	}
	return 0
}

func graphFolder(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	g := layouttest.Harness(5, layouttest.Shape{Boxes: 6, Wires: 9, Zoned: true})
	require.NoError(t, writeJSON(filepath.Join(dir, "small.json"), fileOf("small", g)))
	return dir
}

func runReport(t *testing.T, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	require.NoError(t, run(append([]string{"report", "-moves", "500", "-starts", "1"}, args...), &out, &errs))
	require.Contains(t, errs.String(), "section ")
	return out.String()
}

// rowOf is the row of a table that begins with the cells given.
func rowOf(t *testing.T, text string, cells ...string) []string {
	t.Helper()
	begin := "| " + strings.Join(cells, " | ") + " |"
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, begin) {
			return strings.Split(strings.Trim(strings.TrimSpace(line), "| "), " | ")
		}
	}
	require.Fail(t, "no such row", "%s in\n%s", begin, text)
	return nil
}

func TestReportSetsPeersBesideOurs(t *testing.T) {
	t.Setenv(playPeer, "draw")
	text := runReport(t, "-graphs", graphFolder(t), "-only", "speed,quality,stability", "-edits", "1", "-runs", "2",
		"-peer", "twin="+os.Args[0])
	require.Less(t, strings.Index(text, "## Quality"), strings.Index(text, "## Speed"), "sections keep their order")
	own, twin := rowOf(t, text, "small", "ours, draft"), rowOf(t, text, "small", "twin")
	require.Equal(t, own[3:], twin[3:], "equal drawings have equal figures")
	require.Equal(t, "12.5", twin[2])
	require.Equal(t, "0", own[13])
	require.Contains(t, text, "| small | twin | 12.5 | 1.50 |")
	require.Contains(t, text, "| small | equal | equal |")
	require.Contains(t, text, "| small | ours, draft | remove a wire | 0.0 % |")
	ratios := text[strings.Index(text, "\nours, draft:\n"):]
	require.Equal(t, []string{"**geometric mean**", "1", "1", "1", "1"}, rowOf(t, ratios, "**geometric mean**"))
}

func TestReportShowsPeersThatFail(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	dir := graphFolder(t)
	for how, want := range map[string]string{"crash": "exit status 3 out of ideas", "hang": "over 200ms",
		"babble": "unreadable answer"} {
		t.Setenv(playPeer, how)
		limit := "20s"
		if how == "hang" {
			limit = "200ms"
		}
		text := runReport(t, "-graphs", dir, "-only", "quality", "-timeout", limit, "-peer", "other="+os.Args[0])
		require.Contains(t, strings.Join(rowOf(t, text, "small", "other"), " "), want)
		require.Contains(t, text, "| **geometric mean** | - | - | - | - |", "nothing to compare with")
	}
	t.Setenv(playPeer, "draw")
	text := runReport(t, "-graphs", dir, "-only", "quality", "-peer", "other=no-such-program")
	require.Contains(t, text, "executable file not found")
}

func TestUnsoundDrawingsAreNoYardstick(t *testing.T) {
	t.Setenv(playPeer, "shift")
	text := runReport(t, "-graphs", graphFolder(t), "-only", "quality", "-peer", "other="+os.Args[0])
	require.NotEqual(t, "0", rowOf(t, text, "small", "other")[13])
	require.Contains(t, text, "| **geometric mean** | - | - | - | - |")
}

func TestReferenceFiguresStandInForPeers(t *testing.T) {
	file := filepath.Join(t.TempDir(), "known.json")
	require.NoError(t, os.WriteFile(file, []byte(`{"small":{"length":1e9}}`), 0o644))
	text := runReport(t, "-graphs", graphFolder(t), "-only", "quality", "-reference", file)
	row := rowOf(t, text[strings.Index(text, "\nours:\n"):], "small")
	require.Equal(t, "-", row[1])
	require.Equal(t, "0.00", row[3])
}

func TestReportOfRandomGraphsIsDeterministicButForTimes(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	args := []string{"-only", "random,channels", "-random", "12", "-most", "10", "-channels", "2"}
	once, again := runReport(t, args...), runReport(t, args...)
	times := regexp.MustCompile(`(\| (?:fixed|free) terminals[^|]*\|(?: \d+ \|){5}) [\d.]+ \| [\d.]+ \|`)
	require.Equal(t, times.ReplaceAllString(once, "$1"), times.ReplaceAllString(again, "$1"))
	require.Len(t, times.FindAllString(once, -1), 4)
	graphs := 0
	for _, kind := range []string{"fixed terminals", "fixed terminals, zones", "free terminals", "free terminals, zones"} {
		row := rowOf(t, once, kind)
		var n int
		_, err := fmt.Sscan(row[1], &n)
		require.NoError(t, err)
		graphs += n
		require.Equal(t, []string{"0", "0", "0", "0"}, row[2:6], "refused, unrouted, faults, restless")
		require.Equal(t, "0", row[12], "faults after edits")
	}
	require.Equal(t, 12, graphs)
}

func TestReportIsWrittenToAFile(t *testing.T) {
	file := filepath.Join(t.TempDir(), "report.md")
	require.Empty(t, runReport(t, "-only", "quality,channels", "-channels", "1", "-o", file))
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	require.Contains(t, string(text), "No port graphs")
	require.Contains(t, string(text), "## Random channels")
}

func TestFaultyDrawingsAreCounted(t *testing.T) {
	c := chaos{name: "broken"}
	g := layouttest.Harness(5, layouttest.Shape{Boxes: 6, Wires: 9})
	g.Wires[0].To.Port = "no such port"
	require.Contains(t, c.try(1, g), "does not exist")
	require.Equal(t, 1, c.refused)

	whole := layouttest.Harness(5, layouttest.Shape{Boxes: 6, Wires: 9})
	d, err := layout.Layout(whole, draft.options)
	require.NoError(t, err)
	require.Empty(t, c.chain(1, whole, d))
	require.NotEmpty(t, c.chain(1, g, d))
	require.Equal(t, 1, c.chainFaults)
}

func TestReportSaysWhatIsWrong(t *testing.T) {
	for want, args := range map[string][]string{
		`no section "speeed"`: {"-only", "speeed"},
		"takes flags only":    {"graph.json"},
		"give NAME=COMMAND":   {"-peer", "elk"},
		"there are no graphs": {"-only", "quality", "-graphs", t.TempDir()},
		"no-such-file":        {"-reference", "no-such-file"},
	} {
		var out, errs bytes.Buffer
		require.ErrorContains(t, run(append([]string{"report"}, args...), &out, &errs), want)
	}
	var out, errs bytes.Buffer
	require.NoError(t, run([]string{"report", "-h"}, &out, &errs))
	require.Contains(t, errs.String(), "layoutbench report")
}

func TestGraphsKeepTheirFreeEnds(t *testing.T) {
	file := fileOf("K3,3", layouttest.Classics()[6].Graph())
	text, err := json.Marshal(file)
	require.NoError(t, err)
	require.Contains(t, string(text), `"from":["n0",null]`)
	back, err := readGraph(text)
	require.NoError(t, err)
	require.Equal(t, file, back)
	g, err := back.graph(false)
	require.NoError(t, err)
	require.Equal(t, layout.AnySide, g.Boxes[0].Ports[2].Sides)
	require.Equal(t, -1, g.Boxes[0].Ports[2].Offset)
	require.NotEqual(t, g.Wires[0].From, g.Wires[1].From, "each end has a port of its own")
	_, err = readGraph([]byte(`{"edges":[{"from":["a"],"to":["b",null]}]}`))
	require.ErrorContains(t, err, "an end is [node, port]")
}

func TestChangesAreCountedWithoutACommonShift(t *testing.T) {
	before := picture{Nodes: map[string]fileCorner{"a": {X: 0}, "b": {X: 10}, "c": {X: 20}},
		Edges: map[string][]offgrid.Point{"w": {{1, 1}, {5, 1}}, "v": {{2, 2}, {2, 9}}}}
	after := picture{Nodes: map[string]fileCorner{"a": {X: 3}, "b": {X: 13}, "c": {X: 24}, "new": {}},
		Edges: map[string][]offgrid.Point{"w": {{4, 1}, {8, 1}}, "v": {{2, 2}, {2, 9}}}}
	require.Equal(t, change{boxes: 3, moved: 1, wires: 2, changed: 1}, after.since(before))
	two := fileGraph{Nodes: []fileNode{{ID: "a"}, {ID: "c"}}}
	require.Equal(t, change{boxes: 2, moved: 1, wires: 2, changed: 2}, after.of(&two).since(before), "frames are no boxes")
}

func TestSheetsOfACartAreReadOffTheirPages(t *testing.T) {
	if testing.Short() {
		t.Skip("a large sheet")
	}
	job, err := readCart("quarry-inspection")
	require.NoError(t, err)
	own, g, faults, err := drawSheet(job, job.Sheets[0].Name, "quarry-inspection", diagram.Options{Quick: true})
	require.NoError(t, err)
	require.Zero(t, faults)
	require.Zero(t, own.faults, "%+v", own.Report)
	require.Len(t, g.Edges, len(job.Sheets[0].Wires))
	dir := t.TempDir()
	r := reporter{reportFlags: reportFlags{export: dir}}
	require.NoError(t, r.save(g, own.picture))
	var out, errs bytes.Buffer
	require.NoError(t, run([]string{filepath.Join(dir, g.Name+".json")}, &out, &errs), "the graph can be drawn again")
}
