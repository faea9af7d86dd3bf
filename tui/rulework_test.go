package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/rule"
	"example.com/lugbook/tui/theme"
)

// A danger is waived with a reason, a name and the extra word, stays listed, and the word is
// taken back by the same key.
func TestWaivingADanger(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 120, 36)
	recordCart(r)
	at := indexOfRule(r, "untraced-end-live")
	require.GreaterOrEqual(t, at, 0)
	r.press("n")
	f, _ := topOf[*findingsLayer](r.d)
	f.step(r.d, at-f.at)
	r.press("w<enter>")
	require.Contains(t, r.d.notice.text, "needs a reason")
	r.press("goes tomorrow<enter>bench two<enter>yes<enter>")
	require.Contains(t, r.d.notice.text, "only the word danger")
	require.Empty(t, sheetOf(r, model.AsFound).Waived)
	r.press("<backspace><backspace><backspace>danger<enter>")
	w := sheetOf(r, model.AsFound).Waived
	require.Len(t, w, 1)
	require.Equal(t, "untraced-end-live@w2", w[0].Finding)
	require.Equal(t, "goes tomorrow", w[0].Reason)
	require.Equal(t, "bench two", w[0].By)
	require.Equal(t, model.AcceptsDanger, w[0].Accepts)
	require.Equal(t, []string{"w2"}, w[0].Subjects)
	require.Contains(t, r.d.View(), "waived: w2 is not traced")
	r.press("w")
	require.Empty(t, sheetOf(r, model.AsFound).Waived)
	r.press("u")
	require.Len(t, sheetOf(r, model.AsFound).Waived, 1, "taking back is a step that can be undone")
}

func indexOfRule(r *robot, id string) int {
	for i, f := range r.d.work.findings {
		if f.Rule == id {
			return i
		}
	}
	return -1
}

// The questions are walked through by Enter and the answer, one after the other.
func TestWalkingThroughTheQuestions(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 120, 36)
	recordCart(r)
	wires := len(sheetOf(r, model.AsFound).Wires)
	require.Len(t, r.d.work.questions, wires)
	r.press("Q")
	require.Contains(t, r.d.View(), "w1: the length")
	require.Contains(t, r.d.View(), "the length of w1, which may turn out to be a ")
	require.Contains(t, r.d.View(), "decides how much is lost on the way")
	r.press("<enter>300mm<enter><enter>1.2m<enter>")
	require.Equal(t, "300 mm", sheetOf(r, model.AsFound).Wire("w1").Length.String())
	require.Equal(t, "1.2 m", sheetOf(r, model.AsFound).Wire("w2").Length.String())
	require.Len(t, r.d.work.questions, wires-2)
	require.NotContains(t, r.d.View(), "w1: the length")
	for range wires - 2 {
		r.press("<enter>1m<enter>")
	}
	r.press("<esc>Q")
	require.Contains(t, r.d.notice.text, "the rules ask nothing")
}

// The page of a finding's rule opens over the drawing, scrolls, and Esc leads back to the list.
func TestThePageOfARule(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	recordCart(r)
	r.press("ny")
	require.Equal(t, inPage, r.d.here())
	top := r.d.View()
	require.Contains(t, top, r.d.work.findings[0].Rule)
	require.Contains(t, top, "WHAT IT LOOKS FOR")
	r.press("<pgdown><down>")
	require.NotEqual(t, top, r.d.View())
	r.press("<pgup><pgup><up>")
	require.Equal(t, top, r.d.View())
	r.d.Update(tea.WindowSizeMsg{Width: 50, Height: 20})
	narrow := r.d.View()
	require.Contains(t, narrow, r.d.work.findings[0].Rule)
	p, _ := topOf[*pageLayer](r.d)
	require.Equal(t, 48, p.width, "its paragraphs are broken anew for the narrower screen")
	require.Contains(t, p.lines, scene.Fold(p.rule.About, 48)[0])
	r.press("<esc>")
	require.Equal(t, inFindings, r.d.here())
	r.d.openPage("no-such-rule")
	require.Contains(t, r.d.notice.text, "no rule")
}

// What follows from a cause is indented below it; a second choice has a key of its own.
func TestCausesAndChoices(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 120, 36)
	recordCart(r)
	d := r.d
	cause := d.work.findings[0]
	follows := rule.Finding{Rule: "under-voltage", Key: "under-voltage@b1", Cause: cause.Key, Severity: rule.Fault, Message: "too little", Subjects: []rule.Subject{rule.OfPart("b1")}}
	d.work.findings = []rule.Finding{cause, follows}
	r.press("n")
	require.Regexp(t, `(?m)│ {3}!  too little`, d.View())
	f, _ := topOf[*findingsLayer](d)
	f.step(d, 1)
	require.Contains(t, findingDetail(f.finding(d)), "follows from: "+cause.Key)
	require.Contains(t, d.action("finding-apply-other").refusal(d), "no ready-made edit")
}

// A question that no row of a card answers says where its answer goes.
func TestAQuestionWithoutAField(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 120, 36)
	recordCart(r)
	b1 := rule.OfPart("b1")
	for field, says := range map[string]string{"": "no single field holds it", "opens": "a curve has no field here; write it into the job file under b1, opens"} {
		r.d.question(rule.Question{Datum: "the curve", Field: field, Subject: b1, Worst: rule.Danger}).pick(r.d)
		require.Contains(t, r.d.notice.text, says)
		require.Equal(t, ofSubject(b1), r.d.cursor)
	}
}

// Where the list is short the detail of the finding has the rest of the height; where that is
// not enough its last line says that there is more.
func TestTheDetailOfAFinding(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	recordCart(r)
	long := r.d.work.findings[0]
	long.Basis.Text = "one two three"
	r.d.work.findings = []rule.Finding{long}
	r.press("n")
	require.Contains(t, r.d.View(), "no source)", "the last line of the detail")
	long.Message = strings.Repeat("a finding at length ", 60)
	r.d.work.findings = []rule.Finding{long}
	require.Regexp(t, `(?m)│ [a-z ]+… *$`, r.d.View())
}
