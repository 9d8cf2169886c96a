// Package change writes what a revision changed, and which changes would clear a
// spec.
package change

import (
	"fmt"
	"io"
	"math"
	"regexp"
	"strings"

	"github.com/rivo/uniseg"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/compare"
	"dryfit/rules/engine"
	"dryfit/rules/review"
	"dryfit/spec/quantity"
)

// Comparison is what changed from one spec to another, and when it was judged.
type Comparison struct {
	*compare.Comparison
	Version, On string
	All         bool // every figure that changed, and not only those that a decision hangs on
}

// compareText writes a comparison.
type compareText struct{ *show.Texter }

// CompareText writes the comparison for people, 80 columns wide.
func CompareText(w io.Writer, c Comparison) error {
	t := compareText{show.NewTexter(w, false)}
	t.side("old", c.Old)
	t.side("new", c.New)
	t.Paragraph("", "", "checked on "+c.On)
	t.Rule("─")
	for _, l := range show.Wrap(c.ending(), show.TextWidth) {
		t.Verdict(l)
	}
	t.Rule("─")
	for _, s := range c.sections() {
		t.Line(s.title)
		for _, e := range s.entries {
			if s.severities {
				t.Paragraph(e.mark, "", show.Shown(e.head()))
				t.Paragraph("", "", show.Shown(e.text))
			} else {
				t.compared(e)
			}
		}
		t.Line("")
	}
	t.Paragraph("caution", "", show.Caution)
	return t.Flush()
}

func (t compareText) side(mark string, s *review.Assessment) {
	p := s.Ceiling.Project
	t.Paragraph(mark, "", show.Shown(s.Path))
	t.Paragraph("", "", show.Title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()))
	t.Paragraph("", "", "to "+standardsOf(s))
	for _, l := range report.Loosenings(s.Loosened) {
		t.Paragraph("", "", l)
	}
}

func standardsOf(s *review.Assessment) string {
	if len(s.Standards.Files) == 0 {
		return "the " + s.Standards.Name
	}
	return show.Shown(s.Standards.Name + " (" + strings.Join(s.Standards.Files, ", ") + ")")
}

// compared writes what changed in the wide column, and how beside it.
func (t compareText) compared(e compareEntry) {
	lead := show.Pad(show.Pad(e.mark, show.Margin)+show.Shown(e.what), show.Margin+show.WideLabel)
	indent := strings.Repeat(" ", show.Margin+show.WideLabel)
	if uniseg.StringWidth(lead) > show.Margin+show.WideLabel {
		t.Line(lead)
		lead = indent
	}
	for i, l := range show.Wrap(show.Shown(e.text), show.TextWidth-len(indent)) {
		if i > 0 {
			lead = indent
		}
		t.Line(lead + l)
	}
}

// compareSection is one heading of the comparison with what stands under it.
type compareSection struct {
	title      string
	entries    []compareEntry
	severities bool // the marks are severities of findings
	decides    bool // they are the figures that a decision hangs on
}

// compareEntry is one change in words.
type compareEntry struct {
	mark, what, at, text string
	more                 []string // the keys of figures that are the same
}

func (e compareEntry) head() string { return e.what + " at " + e.at }

// sections are the changes in the order of the report, those without any left
// out.
func (c Comparison) sections() []compareSection {
	var out []compareSection
	add := func(s compareSection) {
		if len(s.entries) > 0 {
			out = append(out, s)
		}
	}
	for _, k := range []struct {
		kind  compare.Kind
		worse bool
		title string
	}{
		{compare.Added, false, "new findings"},
		{compare.Removed, false, "findings that are gone"},
		{compare.Changed, true, "findings that are worse"},
		{compare.Changed, false, "other changed findings"},
	} {
		s := compareSection{title: k.title, severities: true}
		for _, f := range c.Findings {
			if f.Kind == k.kind && f.Worsened() == k.worse {
				s.entries = append(s.entries, c.findingEntry(f))
			}
		}
		add(s)
	}
	for _, k := range []struct {
		kind  compare.Kind
		title string
	}{{compare.Added, "no longer checked"}, {compare.Removed, "checked now"}} {
		s := compareSection{title: k.title}
		for _, n := range c.NotChecked {
			if n.Kind == k.kind {
				s.entries = append(s.entries, coverageEntry(n))
			}
		}
		add(s)
	}
	add(c.figureSection())
	add(compareSection{title: "keys changed", entries: c.keyEntries()})
	add(compareSection{title: "elements renumbered", entries: c.numberEntries()})
	return out
}

// figureSection has the figures that a decision hangs on, or all that changed.
func (c Comparison) figureSection() compareSection {
	by := ", changed by more than " + share(c.Threshold) + " or across a limit"
	if c.All {
		return compareSection{title: "figures" + by, entries: c.figureEntries(c.Figures), decides: true}
	}
	entries := c.figureEntries(c.Deciding())
	if others := c.others(); others != "" {
		entries = append(entries, compareEntry{text: others})
	}
	return compareSection{title: "main figures" + by, entries: entries, decides: true}
}

// others counts the figures that changed and are not listed.
func (c Comparison) others() string {
	if n := len(c.Figures) - len(c.Deciding()); n > 0 && !c.All {
		return show.Plural(n, "other figure") + " changed: --all"
	}
	return ""
}

func share(v float64) string { return quantity.Metric.Format(quantity.Share(v).Value()) }

func (c Comparison) keyEntries() []compareEntry {
	var out []compareEntry
	for _, k := range c.Keys {
		e := compareEntry{mark: k.Kind.String(), what: k.Key}
		switch {
		case k.Kind == compare.Changed:
			e.text = show.Written(k.Old) + " → " + show.Written(k.New)
		case k.Kind == compare.Added:
			e.text = named(k.Name, "") + show.Written(k.New)
			if k.Assumed != nil {
				e.text += ", where " + show.Written(k.Assumed) + " was assumed"
			}
		default:
			e.text = named(k.Name, " as the old spec numbers it") + show.Written(k.Old)
			if k.Assumed != nil {
				e.text += ", and " + show.Written(k.Assumed) + " is assumed"
			}
		}
		out = append(out, e)
	}
	return out
}

// named leads in an element of an array.
func named(name, numbered string) string {
	if name == "" {
		return ""
	}
	return name + numbered + ": "
}

func (c Comparison) numberEntries() []compareEntry {
	var out []compareEntry
	for _, r := range c.Renumbered {
		e := compareEntry{what: fmt.Sprintf("%s.%d", r.Array, r.Old), text: fmt.Sprintf("is %s.%d now: %s", r.Array, r.New, orUnnamed(r.Name))}
		if r.Reordered {
			e.text += "; the order changed too"
		}
		out = append(out, e)
	}
	return out
}

func orUnnamed(name string) string {
	if name == "" {
		return "it has no name"
	}
	return name
}

func (c Comparison) findingEntry(f compare.FindingChange) compareEntry {
	now := f.Finding()
	e := compareEntry{mark: now.Severity.String(), what: now.Rule.ID, at: now.At, text: show.Sentence(now.Text)}
	switch {
	case f.Kind == compare.Changed:
		e.text += " " + c.moveOf(f.Old, f.New)
	case f.Kind == compare.Removed:
		e.at += " of the old spec"
	}
	if f.Unchecked {
		e.text += " It is gone because the rule is no longer checked, or no longer in full."
	}
	return e
}

// moveOf says in what a finding differs from what it was.
func (c Comparison) moveOf(a, b *engine.Finding) string {
	var parts []string
	if a.Severity != b.Severity {
		parts = append(parts, "was "+a.Severity.String())
	}
	switch {
	case a.Accepted == nil && b.Accepted != nil:
		parts = append(parts, "is accepted now")
	case a.Accepted != nil && b.Accepted == nil:
		parts = append(parts, "is no longer accepted")
	}
	if a.Measured.SI != b.Measured.SI && a.Measured.Unit != 0 && a.Measured.Unit == b.Measured.Unit {
		was, _ := c.New.Ceiling.Units.Pair(a.Measured, b.Measured)
		parts = append(parts, "measured "+was+" before")
	}
	if a.Bound.SI != b.Bound.SI && a.Bound.Unit != 0 && a.Bound.Unit == b.Bound.Unit {
		was, _ := c.New.Ceiling.Units.Pair(a.Bound.Value, b.Bound.Value)
		parts = append(parts, "the limit was "+was)
	}
	if len(parts) == 0 {
		return "It was: " + show.Sentence(a.Text)
	}
	return "It " + strings.Join(parts, ", ") + "."
}

func coverageEntry(n compare.Coverage) compareEntry {
	e := compareEntry{what: n.Rule.ID}
	switch {
	case n.Kind == compare.Removed && n.Why == "":
		e.text = n.Needs + " is given now"
	case n.Kind == compare.Removed:
		e.text = "before: " + n.Why
	case n.Failed:
		e.text = "could not be computed: " + n.Why
	case n.Why != "":
		e.text = n.Why
	default:
		e.text = "needs " + n.Needs
	}
	return e
}

// figureEntries are the changes of some figures: those that are the same by symmetry,
// as of strap 1 and of strap 4, are one.
func (c Comparison) figureEntries(figures []compare.FigureChange) []compareEntry {
	var out []compareEntry
	units, alike := c.New.Ceiling.Units, map[[2]string]int{}
	for _, f := range figures {
		e := compareEntry{mark: f.Kind.String(), what: f.Key}
		switch f.Kind {
		case compare.Added:
			e.text = units.Format(f.New.Value)
		case compare.Removed:
			e.text = units.Format(f.Old.Value)
		default:
			a, b := units.Pair(f.Old.Value, f.New.Value)
			e.text = a + " → " + b
			if by := f.By(); !math.IsInf(by, 0) && !math.IsNaN(by) {
				e.text += fmt.Sprintf(" (%+.1f%%)", by*100)
			}
		}
		crossed := ""
		if len(f.Crossed) > 0 {
			crossed = "; across the limit of " + strings.Join(f.Crossed, ", ")
		}
		same := [2]string{digits.ReplaceAllString(f.Key, "0"), e.mark + e.text + crossed}
		if at, had := alike[same]; had && digits.MatchString(f.Key) {
			out[at].more = append(out[at].more, f.Key)
			continue
		}
		alike[same] = len(out)
		e.text += ", " + f.Name + crossed
		out = append(out, e)
	}
	for i, e := range out {
		if len(e.more) > 0 {
			out[i].text += "; likewise " + strings.Join(e.more, ", ")
		}
	}
	return out
}

// digits are what figures that are the same by symmetry differ in.
var digits = regexp.MustCompile(`[0-9]+`)

// ending is the verdict before and after, and how much changed.
func (c Comparison) ending() string {
	text := fmt.Sprintf("%s, %s, %s", show.Plural(len(c.Keys), "key"), show.Plural(len(c.Figures), "figure"), show.Plural(len(c.Findings), "finding"))
	if len(c.Keys)+len(c.Figures)+len(c.Findings) == 0 {
		text = "nothing"
	}
	text += " changed"
	if n := len(c.Rewritten); n > 0 {
		text += fmt.Sprintf("; %s in another spelling with the same value", show.Plural(n, "key"))
	}
	return fmt.Sprintf("%s → %s: %s", c.Old.Verdict, c.New.Verdict, text)
}
