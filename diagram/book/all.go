package book

import (
	"fmt"
	"io"
	"runtime"
	"strings"
	"sync"

	"example.com/lugbook/model"
	"example.com/lugbook/model/rule"
)

// Form is a form of the book.
type Form struct {
	Name  string // as commands take it
	Ext   string // of its files
	About string
	Write func(w io.Writer, pages []*Page) error
}

// All lists the forms.
var All = []Form{markdown, html}

// Find finds a form by name. The error lists the names that there are.
func Find(name string) (Form, error) {
	var names []string
	for _, f := range All {
		if f.Name == name {
			return f, nil
		}
		names = append(names, f.Name)
	}
	return Form{}, fmt.Errorf("no form %q; there are %s", name, strings.Join(names, ", "))
}

// Pages makes the pages of rules, in their order.
func Pages(rules []rule.Rule, lib *model.Catalogue) ([]*Page, error) {
	pages, errs := make([]*Page, len(rules)), make([]error, len(rules))
	var work sync.WaitGroup
	turn := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i := range rules {
		work.Add(1)
		turn <- struct{}{}
		go func() {
			defer func() { <-turn; work.Done() }()
			pages[i], errs[i] = PageOf(&rules[i], lib)
		}()
	}
	work.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return pages, nil
}

// chapter is the pages of one family.
type chapter struct {
	Family rule.Family
	Pages  []*Page
}

// chapters groups pages by family, in the order of the families.
func chapters(pages []*Page) []chapter {
	var list []chapter
	for _, family := range rule.Families() {
		c := chapter{Family: family}
		for _, p := range pages {
			if p.Rule.Family == family {
				c.Pages = append(c.Pages, p)
			}
		}
		if len(c.Pages) > 0 {
			list = append(list, c)
		}
	}
	return list
}
