package engine

import (
	"io/fs"
	"strings"

	"golang.org/x/tools/txtar"
)

// Family is the rules of one subject, in report order, with the cases that
// show each failing and passing: one archive a rule, "testdata/<name>.txtar".
type Family struct {
	Name  string
	Title string
	Rules []Rule
	Cases fs.FS
}

// List is the family's rules, as they are run.
func (f Family) List() []*Rule {
	list := make([]*Rule, len(f.Rules))
	for i := range f.Rules {
		list[i] = &f.Rules[i]
	}
	return list
}

// Case is one of the specs that show a rule at work: what it changes in the
// base spec.
type Case struct {
	Name string // "fails", "passes", or one of them with a word after a hyphen
	Text string
}

// Fails reports whether the rule finds something in the case.
func (c Case) Fails() bool { return strings.HasPrefix(c.Name, "fails") }

// CasesOf reads the cases of one of the family's rules.
func (f Family) CasesOf(r *Rule) ([]Case, error) {
	name := strings.TrimPrefix(r.ID, f.Name+".")
	data, err := fs.ReadFile(f.Cases, "testdata/"+name+".txtar")
	if err != nil {
		return nil, err
	}
	var cases []Case
	for _, file := range txtar.Parse(data).Files {
		cases = append(cases, Case{Name: strings.TrimSuffix(file.Name, ".ceiling.toml"), Text: string(file.Data)})
	}
	return cases, nil
}
