package rule_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
	"example.com/lugbook/model/unit"
)

// said is what one rule says about the last sheet of a job.
func said(t *testing.T, id string, j *model.Job) []string {
	t.Helper()
	require.Empty(t, j.Check(part.Library()))
	findings, err := rule.Check(j, j.Sheets[len(j.Sheets)-1].Name, part.Library())
	require.NoError(t, err)
	var list []string
	for i, line := range lines(findings) {
		if findings[i].Rule == id {
			list = append(list, line)
		}
	}
	return list
}

// TestEveryMistakeOfConductorsHasWords: what goes wrong with conductors, frame and earth, each
// found by the rule that is about it.
func TestEveryMistakeOfConductorsHasWords(t *testing.T) {
	for mistake, id := range map[string]string{
		"traction cable undersized for the controller's rating": "wire-too-thin",
		"parallel cables of unequal size or length":             "unequal-parallels",
		"drop too high at the load":                             "drop-too-high",
		"wire thinner than the mechanical minimum":              "wire-too-weak",
		"insulation class below the ambient":                    "place-too-hot",
		"motor leads left thin while mains were renewed":        "thin-motor-leads",
		"re-used corroded cable":                                "damaged-cable",
		"long positive and negative run apart":                  "wide-loop",
		"protective earth missing":                              "earth-missing",
		"frame used as a return on the traction side":           "traction-through-frame",
		"a traction conductor touches the frame":                "pack-on-frame",
	} {
		r := rule.Find(id)
		require.NotNil(t, r, mistake)
		j, err := r.Wrong.Job()
		require.NoError(t, err)
		require.NotEmpty(t, said(t, id, j), mistake)
	}
}

// TestHeatOfTheZones: a wire lies in the hottest zone that it passes, a zone that says nothing
// has the job's temperature.
func TestHeatOfTheZones(t *testing.T) {
	text := edited(pumped, "part pack", "part pack lithium-pack-16 zone=tray", "part fu1", "part fu1 fuse-class-t fuse-rating=70A zone=tray", "part sw", "part sw switch zone=dash",
		"part pump", "part pump pump-motor current=25A zone=tail", "wire w3", "wire w3 sw.OUT pump.+ gauge=6AWG insulation=75C length=1m",
		"+", "run tray dash 1m", "+", "run tray tail 1m")
	j := job(t, text)
	require.Empty(t, said(t, "place-too-hot", j))
	j.Zone("tray").Hottest = unit.C(80) // w3 goes from the dash over the tray to the tail
	require.Equal(t, []string{"fault place-too-hot: w3 of 75 C insulation: it gets 80 C in tray there before any current flows"}, said(t, "place-too-hot", j))
	j.Zone("tray").Hottest = unit.Celsius{}
	j.Hottest = unit.C(76)
	require.Len(t, said(t, "place-too-hot", j), 1, "no zone says its own")
	for _, id := range []model.ZoneID{"tray", "dash", "tail"} {
		j.Zone(id).Hottest = unit.C(40)
	}
	require.Empty(t, said(t, "place-too-hot", j), "each zone knows better than the job")
}

// TestDamageThatThePlanSeesTo: a note written anew, a new id or a new size say that somebody saw
// to a damaged cable.
func TestDamageThatThePlanSeesTo(t *testing.T) {
	base := edited(pumped, "wire w3", "wire w3 sw.OUT pump.+ gauge=6AWG insulation=105C length=1m condition=chafed", "+", "sheet plan")
	for line, speaks := range map[string]bool{
		"": true,
		"wire w3 sw.OUT pump.+ gauge=6AWG insulation=105C length=1m":                     true,
		"wire w3 pump.+ sw.OUT gauge=6AWG insulation=105C length=1m":                     true,
		"wire w3 sw.OUT pump.+ gauge=6AWG insulation=105C length=1m note=sleeved":        false,
		"wire w3 sw.OUT pump.+ gauge=4AWG insulation=105C length=1m":                     false,
		"no w3\nwire w13 sw.OUT pump.+ gauge=6AWG insulation=105C length=1m":             false,
		"wire w3 sw.OUT pump.+ gauge=6AWG insulation=105C length=1m condition=heat-mark": true,
	} {
		require.Equal(t, speaks, len(said(t, "damaged-cable", job(t, edited(base, "+", line)))) > 0, line)
	}
}

// TestWhatThePlanKeptIsToldAsBuiltToo: both rules go back to the cart as found.
func TestWhatThePlanKeptIsToldAsBuiltToo(t *testing.T) {
	for _, id := range []string{"damaged-cable", "thin-motor-leads"} {
		text, err := rule.Find(id).Wrong.Text()
		require.NoError(t, err)
		require.Len(t, said(t, id, job(t, text+"\nsheet as-built")), 1, id)
	}
}

// TestMotorLeadsThatNeedNoRenewal: leads that were renewed with the mains, mains that did not get
// thicker, and phases that stand the controller's phase current by its label.
func TestMotorLeadsThatNeedNoRenewal(t *testing.T) {
	wrong := rule.Find("thin-motor-leads").Wrong.Of
	require.Equal(t, []string{"caution thin-motor-leads: m1 and m2 stay 4 AWG, while the thinnest of the mains, w1, is now 2 AWG: 160 A against 210 A for the same drive"},
		said(t, "thin-motor-leads", job(t, wrong)))
	require.Empty(t, said(t, "thin-motor-leads", job(t, edited(wrong, "+", "wire w3 ctrl.B- pack.NEG gauge=4AWG insulation=105C length=700mm"))), "one of the mains is as thin")
	phases := func(more string) *model.Job {
		return job(t, edited(ac72, "part ctrl", "part ctrl controller-ac-72v clamp-voltage=110V "+more, "+", `sheet plan
wire w1 pack.POS fu1.in gauge=3/0AWG insulation=105C length=150mm
wire w2 fu1.out sol.L1 gauge=3/0AWG insulation=105C length=600mm
wire w3 sol.L2 ctrl.B+ gauge=3/0AWG insulation=105C length=600mm
wire w4 ctrl.B- pack.NEG gauge=3/0AWG insulation=105C length=700mm`))
	}
	require.Len(t, said(t, "thin-motor-leads", phases("")), 1, "nobody read the label")
	require.Empty(t, said(t, "thin-motor-leads", phases("continuous-current=120A peak-current=350A phase-current=400A")))
}

// TestLoopsNeedTheirZones: a way that is not known is no loop, and a detour that both take is none.
func TestLoopsNeedTheirZones(t *testing.T) {
	right := rule.Find("wide-loop").Right.Of
	round := "wire w3 ctrl.B- pack.NEG gauge=2AWG insulation=105C via=bay,dash,tray"
	require.Len(t, said(t, "wide-loop", job(t, edited(right, "wire w3", round))), 1)
	require.Empty(t, said(t, "wide-loop", job(t, edited(right, "wire w3", round, "wire w2", "wire w2 fu1.out ctrl.B+ gauge=2AWG insulation=105C via=tray,dash,bay"))))
	require.Empty(t, said(t, "wide-loop", job(t, edited(right, "wire w3", round, "part ctrl", "part ctrl controller-series"))), "the zone of the controller is not recorded")
	require.Empty(t, said(t, "wide-loop", job(t, edited(right, "wire w3", round, "run tray dash", "run tray dash 0.1m", "run dash bay", "run dash bay 0.1m"))), "0.9 m")
}

// TestQuietQuestions: what nobody recorded of mounting is asked for and not held against the cart.
func TestQuietQuestions(t *testing.T) {
	r, err := rule.Judge(rule.All, job(t, onCart), model.AsFound, part.Library())
	require.NoError(t, err)
	asked := map[string]bool{}
	for _, q := range r.Questions {
		asked[q.Field+" of "+q.Subject.String()] = true
	}
	for _, want := range []string{"secured of pack", "supported of c1", "strain-relief of c1", "guarded of c1"} {
		require.True(t, asked[want], want)
	}
	require.False(t, asked["supported of c2"], "it is short")
	require.False(t, asked["supported of c3"], "it ends on the pack, where 36 in are allowed")
}
