package rule_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/rule"
)

// TestEachMistakeOfProtectionIsOneFinding: each thing that goes wrong with the protection of a
// cart is said in words of its own, once, however many wires it is about.
func TestEachMistakeOfProtectionIsOneFinding(t *testing.T) {
	wrong := map[string]string{
		"no main fuse on the pack":                   "no-main-fuse",
		"main fuse too far along the cable":          "fuse-too-far",
		"unfused tap at pack positive":               "tap-unfused",
		"fuse larger than the wire carries":          "fuse-too-large",
		"fuse smaller than the load draws":           "fuse-too-small",
		"fuse voltage rating below full charge":      "fuse-volts",
		"interrupting rating below the fault":        "fuse-interrupting",
		"fuse in the negative only":                  "fuse-in-negative-only",
		"two feeds that together exceed the wire":    "feeds-add-up",
		"wire not protected from the charger's side": "source-exceeds-wire",
		"fuses not selective":                        "not-selective",
		"fuse too slow for the cable":                "device-too-slow",
		"breaker or switch without a DC rating":      "not-made-for-dc",
		"plug carries more than its rating":          "contact-overload",
		"packs in parallel without matching fuses":   "packs-in-parallel",
	}
	for mistake, id := range wrong {
		t.Run(mistake, func(t *testing.T) {
			count := 0
			for _, f := range judged(t, rule.Find(id).Wrong) {
				if f.Rule == id {
					count++
					require.NotEmpty(t, f.Message)
				}
			}
			require.Equal(t, 1, count)
		})
	}
	t.Run("thinner wire spliced on without a smaller fuse", func(t *testing.T) {
		findings := check(t, spliced)
		require.Equal(t, "fuse-too-large", findings[0].Rule)
		require.Contains(t, findings[0].Message, "k3, 16 AWG, goes on from k2, 12 AWG, at sp.J without a smaller fuse")
	})
}
