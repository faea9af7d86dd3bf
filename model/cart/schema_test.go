package cart_test

import (
	"bytes"
	"testing"
	"time"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v4"

	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
)

// TestCartsHoldToTheSchema reads every worked cart with the YAML library alone and
// holds it against the generated JSON Schema with a validator that nobody here wrote.
func TestCartsHoldToTheSchema(t *testing.T) {
	text, err := jobfile.Schema()
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	compiler := jsonschema.NewCompiler()
	require.NoError(t, compiler.AddResource("job.json", doc))
	schema, err := compiler.Compile("job.json")
	require.NoError(t, err)
	for _, name := range cart.Names() {
		data, err := cart.Read(name)
		require.NoError(t, err)
		var job map[string]any
		require.NoError(t, yaml.Unmarshal(data, &job))
		if day, ok := job["date"].(time.Time); ok { // YAML 1.2 has no dates, this library has
			job["date"] = day.Format(time.DateOnly)
		}
		require.NoError(t, schema.Validate(job), name)

		job["sheets"].(map[string]any)["plan"].(map[string]any)["wirse"] = map[string]any{}
		require.Error(t, schema.Validate(job), "%s with an unknown field", name)
	}
}
