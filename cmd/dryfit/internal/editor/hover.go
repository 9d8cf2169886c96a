package editor

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/editor/outline"
	"dryfit/cmd/dryfit/internal/report/markdown"
	"dryfit/rules/engine"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/result"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/standards"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// most is how many figures or limits are listed of one key.
const most = 12

// hover helps with the key or value at a place. Where the text is newer than
// its review it waits for it, so that its figures are those of the text.
func (s *server) hover(p placeParams) (any, error) {
	d, err := s.at(p.Document.URI)
	if err != nil {
		return nil, err
	}
	if d.keys() == nil {
		return nil, nil
	}
	return later{d, func() any { return s.helpAt(d, p.Position) }}, nil
}

func (s *server) helpAt(d *document, p position) any {
	at := outline.Of(d.text.text).At(d.text.offset(p))
	if at.Role == outline.Nowhere || at.Word.Start == at.Word.End {
		return nil
	}
	text := ""
	switch path := pattern(at.Key); {
	case at.Role == outline.AValue && (path == "accept.*.rule" || path == "accept.holds.*"):
		text = s.ruleHelp(d.text.text[at.Word.Start:at.Word.End])
	case d.isStandards():
		text = s.standardsHelp(d, at.Key)
	default:
		text = s.help(d, at.Key)
	}
	if text == "" {
		return nil
	}
	r := d.text.span(at.Word)
	return &hover{Contents: inMarkdown(text), Range: &r}
}

// help is all that there is to say of a key.
func (s *server) help(d *document, key string) string {
	std, units := d.standards(), quantity.Metric
	if strings.HasSuffix(pattern(key), ".*") { // an element is told of with its list
		key = spec.Parent(key)
	}
	text := meaning(pattern(key), std)
	if text == "" {
		return ""
	}
	near := map[string]bool{}
	if d.good != nil {
		units = d.good.Ceiling.Units
		figures := d.derived(key)
		var lines []string
		for _, f := range figures {
			lines = append(lines, worked(f, units))
			near[f.Key] = true
		}
		text += section("Figures derived from it"+d.age(), lines, "dryfit calcs")
	}
	text += section("Limits in force that read it", limits(nearest(d.readers(s.Rules, key), key, near), std, units), "dryfit standards")
	if ids := withoutLimits(d.readers(s.Rules, key)); len(ids) > 0 {
		text += "\nAlso read by " + codes(ids) + ".\n"
	}
	if ids := wanting(key, s.Rules); len(ids) > 0 && !specKeys().at[pattern(key)].Required {
		text += "\nWithout it not checked: " + codes(ids) + ".\n"
	}
	return text
}

// nearest is a list of rules with those first that are closest to a key: they
// compare a figure that is derived from it, or are of its own table.
func nearest(list []*engine.Rule, key string, figures map[string]bool) []*engine.Rule {
	table, _, _ := strings.Cut(key, ".")
	far := func(r *engine.Rule) int {
		family, _, _ := strings.Cut(r.ID, ".")
		switch {
		case slices.ContainsFunc(r.Figures, func(f string) bool { return figures[f] }), slices.Contains(r.Needs, key):
			return 0
		case family == table:
			return 1
		default:
			return 2
		}
	}
	sorted := slices.Clone(list)
	slices.SortStableFunc(sorted, func(a, b *engine.Rule) int { return far(a) - far(b) })
	return sorted
}

// section is a list under a title. What is past the most is counted, with the
// command that lists it.
func section(title string, lines []string, rest string) string {
	if len(lines) == 0 {
		return ""
	}
	out := "\n" + title + ":\n\n"
	for i, l := range lines {
		if i == most && len(lines) > most+1 {
			return out + fmt.Sprintf("- and %d more, which %s lists\n", len(lines)-most, markdown.Code(rest))
		}
		out += "- " + l + "\n"
	}
	return out
}

// withoutLimits are the rules that have no limit to list.
func withoutLimits(list []*engine.Rule) []string {
	var ids []string
	for _, r := range list {
		if len(r.Limits) == 0 {
			ids = append(ids, r.ID)
		}
	}
	return ids
}

// age warns of figures that are not those of the text as it is.
func (d *document) age() string {
	if d.last.assessment == d.good {
		return ""
	}
	return ", before the text's last change"
}

// standards are those of the last review.
func (d *document) standards() *standards.Standards {
	if std := d.last.found.Standards; std != nil {
		return std
	}
	return standards.BuiltIn()
}

// derived are the figures of the calculation sheet that a key enters.
func (d *document) derived(key string) []figure.Figure {
	if d.figures == nil {
		d.figures = result.Of(d.good.Ceiling, carrying.Search{}, nil).Figures()
	}
	var out []figure.Figure
	for _, f := range d.figures {
		if f.Key != key && slices.ContainsFunc(f.Terms, func(t figure.Term) bool { return t.Key != "" && within(t.Key, key) }) {
			out = append(out, f)
		}
	}
	return out
}

// within reports whether a key is another or in it: the figure that a table
// enters is derived from its keys, and the other way round.
func within(a, b string) bool {
	return a == b || strings.HasPrefix(a, b+".") || strings.HasPrefix(b, a+".")
}

func worked(f figure.Figure, units quantity.System) string {
	line := fmt.Sprintf("%s %s: **%s**", markdown.Code(f.Key), markdown.Text(f.Name), markdown.Text(f.Printed(units)))
	if f.Formula == "" {
		return line
	}
	line += " " + markdown.Code(f.Symbol+" = "+f.Formula)
	if arithmetic, res := f.Worked(units); arithmetic != "" {
		line += " " + markdown.Code("= "+arithmetic+" = "+res)
	}
	return line
}

// ruleHelp is what a rule checks, by its id as it is written.
func (s *server) ruleHelp(written string) string {
	if r := ruleOf(s.Rules, strings.Trim(written, `"'`)); r != nil {
		return aboutRule(r)
	}
	return ""
}

// ruleOf is the rule of an id, nil where there is none.
func ruleOf(list []*engine.Rule, id string) *engine.Rule {
	for _, r := range list {
		if r.ID == id {
			return r
		}
	}
	return nil
}

func aboutRule(r *engine.Rule) string {
	text := fmt.Sprintf("%s: %s\n", markdown.Code(r.ID), markdown.Text(r.Title))
	if r.Why != "" {
		text += "\n" + markdown.Text(r.Why) + "\n"
	}
	return text
}
