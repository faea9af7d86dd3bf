package model

// Answer is what somebody saw when they looked. The zero value means not recorded.
type Answer string

// The answers.
const (
	Yes Answer = "yes"
	No  Answer = "no"
)

// Names lists the words that a job file may use.
func (Answer) Names() []string { return []string{string(Yes), string(No)} }
