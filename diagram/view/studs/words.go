package studs

import (
	"strings"

	"example.com/lugbook/model"
)

// title is the terminal, its part and where on the cart it is.
func (s *Stud) title(j *model.Job) string {
	words := s.At.String()
	if s.Part.Name != "" {
		words += ": " + s.Part.Name
	}
	if s.Part.Zone != "" {
		name := string(s.Part.Zone)
		if z := j.Zone(s.Part.Zone); z != nil && z.Name != "" {
			name = z.Name
		}
		words += ", " + name
	}
	return words
}

// about is what is known of the stud itself.
func (s *Stud) about() string {
	var words []string
	switch {
	case s.Size.IsZero():
		words = append(words, "size of stud not recorded")
	case s.Usual:
		words = append(words, s.Size.String()+" stud by the library")
	default:
		words = append(words, s.Size.String()+" stud")
	}
	if r := s.Record; r != nil {
		if r.Cover != "" {
			words = append(words, "cover "+string(r.Cover))
		}
		for _, c := range r.Condition {
			words = append(words, string(c))
		}
	}
	if !s.Ordered {
		words = append(words, "order of lugs not recorded")
	}
	return strings.Join(words, ", ")
}

func (s *Stud) torque() string {
	if s.Record != nil && !s.Record.Torque.IsZero() {
		return "nut, torque " + s.Record.Torque.String() + " by the part's record"
	}
	return "nut, torque not recorded"
}

// seat tells of the lugs whose hole is not that of the stud, or not recorded.
func (s *Stud) seat() string {
	words := []string{"seat"}
	var missing []string
	for _, l := range s.Lugs {
		switch hole := l.Wire.LugAt(s.At); {
		case hole.IsZero():
			missing = append(missing, string(l.Wire.ID))
		case hole != s.Size:
			words = append(words, "lug of "+string(l.Wire.ID)+" "+hole.String())
		}
	}
	if len(missing) > 0 {
		words = append(words, "lug of "+strings.Join(missing, ", ")+" not recorded")
	}
	return strings.Join(words, "; ")
}
