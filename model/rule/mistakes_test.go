package rule_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// TestMistakesAtStudsEndsAndOnPaper: each mistake that is really made there is told by a rule
// that is about it, in words of its own.
func TestMistakesAtStudsEndsAndOnPaper(t *testing.T) {
	for _, m := range []struct{ mistake, rule, says, text string }{
		{"a small lug under a large one", "stack-order", "lies under", edited(lithium, "stack sol.L1", "stack sol.L1 k1 w2 c2 p1")},
		{"more lugs than the stud may take", "stack-count", "5 lugs on sol.L1; 4 are the most", edited(lithium, "wire s3", "wire s3 sol.L1 fu6.in gauge=16AWG insulation=105C length=100mm", "stack fu1.out", "stack fu1.out w2 r1", "stack sol.L1", "stack sol.L1 w2 c2 k1 s3 p1")},
		{"a hole smaller than the stud", "lug-hole", "does not go over the stud", nearStud("M6", "M8")},
		{"a hole more than one size larger", "lug-hole", "more than one size larger", nearStud("1/2_in", "1/4_in")},
		{"a washer in the current path", "washer-in-path", "a washer lies between two lugs", edited(lithium, "+", "at sol.L1 washer=between")},
		{"a lug that does not fit the cable", "lug-barrel", "is made for 4 AWG", barrels("2AWG", "4AWG", "2AWG")},
		{"a bare cut end", "cut-end-live", "it is live", edited(lithium, "+", "wire x1 key.IGN cut gauge=16AWG")},
		{"a capped wire still live", "capped-end-live", "it is live", edited(lithium, "+", "wire x1 key.IGN capped gauge=16AWG")},
		{"an untraced end on a live conductor", "untraced-end-live", "it is live", edited(lithium, "+", "wire x1 key.IGN untraced gauge=16AWG")},
		{"dissimilar metals", "dissimilar-metals", "no plated washer", edited(lithium, "wire n1", "wire n1 shunt.LOAD nb.1 gauge=6AWG insulation=105C length=200mm material=aluminium", "+", "at nb.1 washer=outside")},
		{"a positive stud without cover", "stud-cover", "no cover on what is live", edited(lithium, "at pack.POS", "at pack.POS cover=missing")},
		{"negatives chained through a thin wire", "return-overload", "can come back through", edited(lithium, "wire k8", "wire k8 sol.coil- nb.2 gauge=22AWG length=1m")},
		{"the torque of a pack stud not known", "torque-not-known", "pack.POS and pack.NEG", planned("")},
		{"the old sense lead fused to nothing", "dead-end-lead", "a left-over", edited(lithium, "+", oldSense)},
		{"nothing to make a wire by", "wire-to-make", "the length of x1", planned("wire x1 key.IGN buz.+ gauge=16AWG")},
		{"no photo of a stud that is taken apart", "stud-not-photographed", "a photo of nb.2", planned("stack nb.2 k8 r3")},
		{"a part without a rating that a decision needs", "rating-not-read", "the rating on the label of fu2", edited(lithium, "part fu2", "part fu2 fuse-cartridge", "+", "sheet plan")},
	} {
		said := ""
		for _, f := range check(t, m.text) {
			if f.Rule == m.rule {
				said += f.Message + "\n"
			}
		}
		require.Contains(t, said, m.says, m.mistake)
	}
}
