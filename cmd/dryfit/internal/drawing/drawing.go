// Package drawing draws a ceiling on sheets, to scale: what is drawn is what was
// computed, and each sheet says what was assumed.
package drawing

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/panel"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/plan"
	"dryfit/cmd/dryfit/internal/drawing/section"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
)

// Names lists the sheets, in their order.
func Names() []string {
	var out []string
	for _, s := range sheets {
		out = append(out, s.name)
	}
	return out
}

// sheets are all there are.
var sheets = []struct {
	name, kind string
	make       func(sheet.Input) (*sheet.Subject, error)
}{
	{"section", arrangement, section.Cross},
	{"plan", arrangement, plan.Reflected},
	{"panel", detail, panel.Developed},
	{section.RibName, detail, section.Rib},
	{"straps", "schedule", straps},
	{"route", "route study", route},
	{"view", "view", view},
	{raisingName, "order of work", raisingSheet},
}

// Kinds of documents that several sheets are.
const (
	arrangement = "general arrangement"
	detail      = "detail"
)

// Draw makes the sheet of a name. Its errors are a *sheet.NeedsError, a
// *sheet.LimitError, a *NoPlanError and a *sheet.FitError. Its number is the one
// that it has among all.
func Draw(name string, in sheet.Input, o sheet.Options) (paper.Sheet, error) {
	if !slices.Contains(Names(), name) {
		return paper.Sheet{}, fmt.Errorf("there is no sheet %q; there are %s", name, strings.Join(Names(), ", "))
	}
	in = placed(in, o, name)
	i := slices.Index(Names(), name)
	s, err := made(in, i, max(1, in.Places[name]))
	if err != nil {
		return paper.Sheet{}, err
	}
	return sheet.Compose(in, o, s)
}

// made is one of the sheets, which has a place among those that can be drawn.
func made(in sheet.Input, i, place int) (*sheet.Subject, error) {
	s, err := sheets[i].make(in)
	if err == nil {
		s.Kind, s.Place = sheets[i].kind, place
	}
	return s, err
}
