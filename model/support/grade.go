package support

// Grade says how bad a thing is, by its consequence. Good means that it was looked at and
// nothing speaks against it on the figures at hand; it never means that a cart is safe.
type Grade string

// The grades, mildest first.
const (
	Good    Grade = "good"
	Note    Grade = "note" // worth knowing, or not to be judged for want of a figure
	Caution Grade = "caution"
	Fault   Grade = "fault"
	Danger  Grade = "danger"
)

// Judgement is one thing that was judged, with its numbers in the text.
type Judgement struct {
	Grade Grade  `json:"grade"`
	Text  string `json:"text"`
}

// IsBad reports whether a grade is worse than a caution.
func (g Grade) IsBad() bool { return g == Fault || g == Danger }

// Thresholds of judgements. They are common practice without a printed source, or our
// own choice.
const (
	leftShare    = 0.05 // of the source: the contact may close on less than this
	leftVolts    = 2    // volts on which any contact may close
	reverseTimes = 2    // times the full voltage that a suppression diode should hold back
	fewDays      = 7    // a cart that is flat after a week's rest has a fault
	seasonDays   = 60   // and one that does not last two months of rest deserves a word
	endHigh      = 1.005
	endLow       = 0.985
)
