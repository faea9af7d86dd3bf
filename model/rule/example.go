package rule

import (
	"fmt"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/mini"
)

// Example is a small job as lines of text, in the language of package mini: a text, and the
// lines of it that are otherwise. It is what a rule's page draws and what the tests check.
type Example struct {
	Of  string   // the lines
	But []string // pairs: the beginning of a line, and what stands there instead; empty to leave it out; a + adds a line
}

// Job is the example as a job; it is judged on its last sheet. It fails if a line can't be
// read, or if a line that is to be changed is not there.
func (e Example) Job() (*model.Job, error) {
	text, err := e.Text()
	if err != nil {
		return nil, err
	}
	return mini.Job(text)
}

// Text is the lines of the example.
func (e Example) Text() (string, error) {
	text := e.Of
	for i := 0; i+1 < len(e.But); i += 2 {
		var err error
		if text, err = changed(text, e.But[i], e.But[i+1]); err != nil {
			return "", err
		}
	}
	return text, nil
}

// changed replaces the lines that begin with the words of key.
func changed(text, key, value string) (string, error) {
	if key == "+" {
		return text + "\n" + value, nil
	}
	var kept []string
	found := false
	for line := range strings.SplitSeq(text, "\n") {
		if strings.HasPrefix(strings.TrimSpace(line)+" ", key+" ") {
			found = true
			if value == "" {
				continue
			}
			line = value
		}
		kept = append(kept, line)
	}
	if !found {
		return "", fmt.Errorf("no line of the example begins with %q", key)
	}
	return strings.Join(kept, "\n"), nil
}
