package strictyaml

import (
	"bytes"
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v4"
)

var update = flag.Bool("update", false, "write the golden files anew")

func TestSchemaBytes(t *testing.T) {
	got, err := Schema(store{}, "Stock list")
	require.NoError(t, err)
	const golden = "testdata/schema.json"
	if *update {
		require.NoError(t, os.WriteFile(golden, got, 0o644))
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err)
	require.Equal(t, string(want), string(got))
	again, err := Schema(&store{}, "Stock list")
	require.NoError(t, err)
	require.Equal(t, got, again)
}

func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := Schema(store{}, "Stock list")
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("stock.json", doc))
	s, err := c.Compile("stock.json")
	require.NoError(t, err)
	return s
}

// An editor reads a file with a YAML reader of its own, so this test does.
func validate(t *testing.T, s *jsonschema.Schema, text string) error {
	t.Helper()
	var value any
	require.NoError(t, yaml.Load([]byte(text), &value))
	return s.Validate(value)
}

func TestSchemaAgreesWithDecode(t *testing.T) {
	s := compiled(t)
	require.NoError(t, validate(t, s, full))
	tests := []struct{ name, text, where string }{
		{"unknown field", "nmae: x\n", "nmae"},
		{"unknown field below", "aisles: {left: {itmes: {}}}\n", "itmes"},
		{"wrong word", "paint: grene\n", "/paint"},
		{"wrong word as key", "aisles: {middle: {}}\n", "'middle'"},
		{"wrong form", "routes: [{from: mill, far: 2 ft}]\n", "/routes/0/far"},
		{"wrong form of a lone value", "gauges: {a: 2 ft}\n", "/gauges/a"},
		{"missing field", "site: {x: 1}\n", "y"},
		{"fraction", "site: {x: 1.5, y: 1}\n", "/site/x"},
		{"text for a bool", "open: maybe\n", "/open"},
		{"mapping for a list", "tags: {a: b}\n", "/tags"},
		{"text for a mapping", "drawers: full\n", "/drawers"},
		{"null", "phone: ~\n", "/phone"},
		{"long key", "drawers: {" + strings.Repeat("x", 201) + ": {}}\n", "maxLength"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			require.NotEmpty(t, problemsOf(t, head+tt.text, Limits{}))
			err := validate(t, s, head+tt.text)
			require.Error(t, err)
			require.Contains(t, err.Error(), tt.where)
		})
	}
}
