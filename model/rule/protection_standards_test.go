package rule_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
	"example.com/lugbook/model/unit"
)

// by sets the basis of a job; limits are pairs of a name and a limit of the job's own.
func by(b model.Basis, limits ...string) func(*model.Job) {
	return func(j *model.Job) {
		j.Basis = b
		for i := 0; i < len(limits); i += 2 {
			value, err := unit.ParseAny(limits[i+1])
			if err != nil {
				panic(err)
			}
			j.Limits = append(j.Limits, model.Limit{Name: limits[i], Value: value, Reason: "the maker's word"})
		}
	}
}

// foundBy is the first finding of a rule on a text, judged by a basis; nil if there is none.
func foundBy(t *testing.T, id, text string, ground func(*model.Job)) *rule.Finding {
	t.Helper()
	j := job(t, text)
	ground(j)
	findings, err := rule.Check(j, model.AsFound, part.Library())
	require.NoError(t, err)
	for i := range findings {
		if findings[i].Rule == id {
			return &findings[i]
		}
	}
	return nil
}

func severityBy(t *testing.T, id, text string, ground func(*model.Job)) string {
	t.Helper()
	if f := foundBy(t, id, text, ground); f != nil {
		return string(f.Severity)
	}
	return ""
}

// TestRatingBases holds each basis against its source on one conductor, 2/0 AWG at 105 C, 330 A
// by 33 CFR 183.425 table 5: 183.455(c)(1) allows 150 %, 495 A, under 50 V; (c)(2) the next
// standard size of NEC 240.6(A), 350 A, from 50 V; FAA AC 43.13-1B 11-48 no more than the wire's
// rating, which is the house rule. A job's own limit stands above both.
func TestRatingBases(t *testing.T) {
	base, house := by(model.USSmallCraft), by(model.HouseRule)
	own := by(model.HouseRule, basis.FuseShare, "120 %", basis.FuseShareHigh, "120 %")
	for _, tt := range []struct {
		rating                          int
		below, from                     string // by the base table
		houseBelow, houseFrom, ownBelow string
		ownFrom                         string
	}{
		{330, "", "", "", "", "", ""},
		{331, "", "", "caution", "caution", "", ""},
		{350, "", "", "caution", "caution", "", ""},
		{351, "", "note", "caution", "caution", "", ""},
		{396, "", "note", "caution", "caution", "", ""},
		{397, "", "note", "caution", "caution", "caution", "caution"},
		{495, "", "note", "caution", "caution", "caution", "caution"},
		{496, "danger", "danger", "danger", "danger", "danger", "danger"},
	} {
		t.Run(fmt.Sprint(tt.rating), func(t *testing.T) {
			low, high := ratedFeed(lead48, "2/0AWG", 105, tt.rating), ratedFeed(lfp51, "2/0AWG", 105, tt.rating)
			require.Equal(t, tt.below, severityBy(t, "fuse-too-large", low, base), "under 50 V")
			require.Equal(t, tt.from, severityBy(t, "fuse-too-large", high, base), "51.2 V")
			require.Equal(t, tt.houseBelow, severityBy(t, "fuse-too-large", low, house), "house rule under 50 V")
			require.Equal(t, tt.houseFrom, severityBy(t, "fuse-too-large", high, house), "house rule at 51.2 V")
			require.Equal(t, tt.ownBelow, severityBy(t, "fuse-too-large", low, own), "own limit under 50 V")
			require.Equal(t, tt.ownFrom, severityBy(t, "fuse-too-large", high, own), "own limit at 51.2 V")
		})
	}
	require.Equal(t, "rating 331 A, at most 330 A: 0.3 % over; 330 A at 105 C insulation by house rule: FAA AC 43.13-1B 11-48: the device opens before the wire's rating is exceeded decides",
		foundBy(t, "fuse-too-large", ratedFeed(lead48, "2/0AWG", 105, 331), house).Figure.String())
	wide := by(model.HouseRule, basis.FuseShare, "200 %")
	require.Empty(t, severityBy(t, "fuse-too-large", ratedFeed(lead48, "2/0AWG", 105, 600), wide), "a job may allow more than the law")
}

// TestDistanceBases: 33 CFR 183.455(b) 7 in and 40 in; ABYC E-11 11.10.2.8.1 72 in from a
// battery in a sheath, which the house rule does not take.
func TestDistanceBases(t *testing.T) {
	base, house := by(model.USSmallCraft), by(model.HouseRule)
	for length, want := range map[string][2]string{
		"length=7in": {"", ""}, "length=8in": {"fault", "fault"}, "length=40in sheathed": {"", ""}, "length=60in sheathed": {"note", "fault"},
	} {
		text := edited(direct, "wire w1", "wire w1 pack.POS fu1.in gauge=2AWG insulation=105C "+length)
		require.Equal(t, want[0], severityBy(t, "fuse-too-far", text, base), length)
		require.Equal(t, want[1], severityBy(t, "fuse-too-far", text, house), length)
	}
	text := edited(direct, "wire w1", "wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=8in")
	require.Empty(t, severityBy(t, "fuse-too-far", text, by(model.HouseRule, basis.FuseDistance, "10 in")))
}

// TestLoadBases: a fuse and a contact may carry their whole rating for long; the house rule
// leaves a fifth free, as NEC 210.20(A) asks 125 % for loads that last: 25 A on 20 A.
func TestLoadBases(t *testing.T) {
	base, house := by(model.USSmallCraft), by(model.HouseRule)
	own := by(model.HouseRule, basis.FuseLoad, "90 %", basis.ContactLoad, "90 %")
	for _, tt := range []struct {
		id, rated         string // what is rated for the pump's 29 A
		base, house, mine string
	}{
		{"fuse-too-small", "part fu3 fuse-cartridge fuse-rating=40A", "", "", ""},
		{"fuse-too-small", "part fu3 fuse-cartridge fuse-rating=35A", "", "fault", ""},
		{"fuse-too-small", "part fu3 fuse-cartridge fuse-rating=30A", "", "fault", "fault"},
		{"fuse-too-small", "part fu3 fuse-cartridge fuse-rating=25A", "fault", "fault", "fault"},
		{"contact-overload", "part sw switch continuous-current=40A", "", "", ""},
		{"contact-overload", "part sw switch continuous-current=35A", "", "fault", ""},
		{"contact-overload", "part sw switch continuous-current=25A", "fault", "fault", "fault"},
	} {
		var key string
		_, err := fmt.Sscanf(tt.rated, "part %s", &key)
		require.NoError(t, err)
		text := edited(page("fuse-too-small"), "part "+key, tt.rated)
		require.Equal(t, tt.base, severityBy(t, tt.id, text, base), tt.rated)
		require.Equal(t, tt.house, severityBy(t, tt.id, text, house), tt.rated)
		require.Equal(t, tt.mine, severityBy(t, tt.id, text, own), tt.rated)
	}
}

// TestFeedsAndReturnsByTheHouseRule: two feeds together, a charger and a return are held to the
// ampacity where the house rule holds a fuse to it (FAA AC 43.13-1B 11-48), and to 150 % of it
// by 33 CFR 183.455(c).
func TestFeedsAndReturnsByTheHouseRule(t *testing.T) {
	for _, tt := range []struct{ id, text string }{
		{"feeds-add-up", edited(page("feeds-add-up"), "part fu1", "part fu1 fuse-class-t fuse-rating=30A", "part fu2", "part fu2 fuse-class-t fuse-rating=30A", "part fu3", "", "wire y3", "wire y3 bar.3 lt.+ gauge=12AWG insulation=105C length=2m", "wire y4", "")},
		{"source-exceeds-wire", edited(page("source-exceeds-wire"), "part fu2", "part fu2 fuse-cartridge fuse-rating=20A", "wire c1", "wire c1 chg.DC+ fu2.in gauge=16AWG insulation=90C length=900mm", "part chg", "part chg charger-onboard-48v charge-current=28A")},
	} {
		require.NotEqual(t, "caution", severityBy(t, tt.id, tt.text, by(model.USSmallCraft)), tt.id)
		require.Equal(t, "caution", severityBy(t, tt.id, tt.text, by(model.HouseRule)), tt.id)
	}
	back := edited(page("return-overload"), "part fu3", "part fu3 fuse-cartridge fuse-rating=20A", "wire k4", "wire k4 sol.coil- pack.NEG gauge=16AWG insulation=60C length=1m")
	require.Equal(t, "note", severityBy(t, "return-overload", back, by(model.USSmallCraft)))
	require.Equal(t, "caution", severityBy(t, "return-overload", back, by(model.HouseRule)))
}

// TestUsualFuseIsFitted: FAA AC 43.13-1B table 11-3 puts 10 A before 16 AWG and 30 A before 10 AWG.
func TestUsualFuseIsFitted(t *testing.T) {
	for gauge, want := range map[string]string{"16AWG": "10 A", "10AWG": "30 A"} {
		text := edited(page("tap-unfused"), "part fu3", "", "wire k1", "", "wire k2", "wire k2 pack.POS key.BAT gauge="+gauge+" insulation=105C length=2m",
			"wire k3", "wire k3 key.IGN sol.coil+ gauge="+gauge+" insulation=105C length=2m", "at fu3.in", "")
		f := foundBy(t, "tap-unfused", text, by(model.USSmallCraft))
		require.Len(t, f.Fixes, 1)
		h := try(t, text, f)
		require.Equal(t, want, h.Part("fu1").Ratings[0].Value.String())
	}
}

// try applies the first ready-made edit of a finding, and returns the sheet as it then is.
func try(t *testing.T, text string, f *rule.Finding) *model.Sheet {
	t.Helper()
	j := job(t, text)
	require.NoError(t, f.Fixes[0].Apply(j))
	return &j.Sheets[0]
}
