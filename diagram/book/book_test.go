package book_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/book"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

// pages makes the pages of all rules, once for all tests.
func pages(t *testing.T) []*book.Page {
	t.Helper()
	list, err := made()
	require.NoError(t, err)
	return list
}

var made = sync.OnceValues(func() ([]*book.Page, error) { return book.Pages(rule.All, part.Library()) })

// TestPages: every page shows both examples as readable drawings, what the rule says of the
// wrong one and nothing of the right one, in lines that a terminal of 80 columns shows.
func TestPages(t *testing.T) {
	for _, p := range pages(t) {
		t.Run(p.Rule.ID, func(t *testing.T) {
			require.NotEmpty(t, p.Wrong.Says)
			require.Empty(t, p.Right.Says)
			for _, plate := range []*book.Plate{&p.Wrong, &p.Right} {
				require.Empty(t, scene.Check(&plate.Drawn))
				require.NotEmpty(t, plate.Drawn.Boxes)
			}
			text := p.Text(78, false)
			for line := range strings.SplitSeq(text, "\n") {
				require.LessOrEqual(t, utf8.RuneCountInString(line), 80, line)
			}
			for _, said := range []string{p.Rule.ID, p.Rule.Title, "WHY IT MATTERS", "HOW TO TELL ON THE CART", "ITS LIMITS", p.Wrong.Says[0].Message[:20]} {
				require.Contains(t, strings.Join(strings.Fields(text), " "), strings.Join(strings.Fields(said), " "))
			}
			for _, r := range p.Text(78, true) {
				require.True(t, r == '\n' || r >= ' ' && r <= '~', "%q is not ASCII", r)
			}
		})
	}
}

func TestBooksHoldEveryPageOnce(t *testing.T) {
	list := pages(t)
	for _, form := range book.All {
		t.Run(form.Name, func(t *testing.T) {
			found, err := book.Find(form.Name)
			require.NoError(t, err)
			require.Equal(t, form.Ext, found.Ext)
			var b, again bytes.Buffer
			require.NoError(t, form.Write(&b, list))
			require.NoError(t, form.Write(&again, list))
			require.Equal(t, b.String(), again.String(), "equal pages give equal bytes")
			headings := regexp.MustCompile(`(?m)^(?:### |<h3 id=")([a-z0-9-]+)`).FindAllStringSubmatch(b.String(), -1)
			require.Len(t, headings, len(rule.All))
			for _, r := range rule.All {
				require.Contains(t, b.String(), "#"+r.ID, "the contents lead to every page")
			}
		})
	}
	_, err := book.Find("scroll")
	require.ErrorContains(t, err, "markdown, html")
}

// TestHTMLIsWellFormed reads the book as XML would be read, with HTML's void elements allowed,
// and sees that no id is there twice.
func TestHTMLIsWellFormed(t *testing.T) {
	var b bytes.Buffer
	html, err := book.Find("html")
	require.NoError(t, err)
	require.NoError(t, html.Write(&b, pages(t)))
	d := xml.NewDecoder(&b)
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	ids := map[string]bool{}
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		require.NotEqual(t, "script", start.Name.Local)
		for _, a := range start.Attr {
			if a.Name.Local == "id" {
				require.False(t, ids[a.Value], "id %s is there twice", a.Value)
				ids[a.Value] = true
			}
			if a.Name.Local == "xmlns" {
				continue // the name of a vocabulary, fetched by nobody
			}
			require.NotRegexp(t, `^https?://`, a.Value, "the book needs nothing from outside: %s", start.Name.Local)
		}
	}
	require.NotEmpty(t, ids)
}
