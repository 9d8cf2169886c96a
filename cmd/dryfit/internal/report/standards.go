package report

import (
	"fmt"
	"io"
	"math"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/schema"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// inForce is one limit, severity or default as it holds.
type inForce struct {
	Kind     string           `json:"kind"` // "limit", "severity", "default", "route", "shop", "order", "require", "exclude", "fixed"
	Name     string           `json:"name"`
	Value    string           `json:"value"`
	SI       *show.JSONNumber `json:"si,omitempty"`
	Unit     string           `json:"unit,omitempty"`
	Source   string           `json:"source"`
	File     string           `json:"file,omitempty"`
	Line     int              `json:"line,omitempty"`
	BuiltIn  string           `json:"built_in,omitempty"` // what it stands in place of
	Loosened bool             `json:"loosened,omitempty"`
}

func allInForce(list []*engine.Rule, std *standards.Standards) []inForce {
	var out []inForce
	for _, r := range list {
		if set, ok := std.Severity(r.ID); ok {
			out = append(out, inForce{
				Kind: "severity", Name: r.ID, Value: set.Word, Source: "severity", File: set.Origin.File, Line: set.Origin.Line,
				BuiltIn: r.Severity.String(), Loosened: set.Word != r.Severity.String() && set.Word != "hold" && r.Severity != engine.Note,
			})
		}
		for _, l := range r.Limits {
			out = append(out, limitInForce(r, l, std))
		}
	}
	for _, d := range std.Defaults() {
		out = append(out, inForce{
			Kind: "default", Name: d.Key, Value: show.Written(d.Value), Source: d.Source, File: d.Origin.File, Line: d.Origin.Line,
		})
	}
	out = append(out, shopInForce(std)...)
	order := std.Order()
	for i, group := range order.Groups {
		out = append(out, inForce{
			Kind: "order", Name: fmt.Sprint(i + 1), Value: strings.Join(group, " "), Source: order.Source, File: order.Origin.File, Line: order.Origin.Line,
		})
	}
	for _, n := range std.Require {
		what := "given"
		if n.Rule {
			what = "checked"
		}
		out = append(out, inForce{
			Kind: "require", Name: "check.require", Value: n.Pattern, Source: "must be " + what, File: n.Origin.File, Line: n.Origin.Line,
		})
	}
	for _, p := range std.Exclude {
		out = append(out, inForce{
			Kind: "exclude", Name: "check.exclude", Value: p.Text, Source: "not checked unless it is named", File: p.Origin.File, Line: p.Origin.Line,
		})
	}
	return append(out, fixed()...)
}

// shopInForce are the legs that come before a spec's, and what the shop has.
func shopInForce(std *standards.Standards) []inForce {
	var out []inForce
	add := func(kind string, list []standards.Default) {
		for _, d := range list {
			out = append(out, inForce{Kind: kind, Name: d.Key, Value: show.Written(d.Value), Source: d.Source, File: d.Origin.File, Line: d.Origin.Line})
		}
	}
	add("route", std.Route().Rows())
	add("shop", std.Shop().Settings())
	return out
}

// fixed are the bounds of the format, which keep what a stranger's spec can cost
// within reason; no standards change them.
func fixed() []inForce {
	row := func(name, format string, args ...any) inForce {
		return inForce{Kind: "fixed", Name: name, Value: fmt.Sprintf(format, args...), Source: "the format"}
	}
	return []inForce{
		row("size of a file", "%dMiB", spec.MaxSize>>20),
		row("nesting of a file", "%d deep", spec.MaxDepth),
		row("a length", "%gmm to %gm", schema.Shortest*1000, schema.Longest),
		row("like parts in a row", "%d", layout.MostAlike),
		row("changes tried for what passes", "%d", review.MostTried),
	}
}

func limitInForce(r *engine.Rule, l engine.Limit, std *standards.Standards) inForce {
	row := inForce{
		Kind: "limit", Name: r.Full(l.Key), Value: quantity.Metric.Limit(l.Value), SI: show.JSONNumberOf(l.Value),
		Unit: l.Value.Unit.String(), Source: l.Source.String(),
	}
	if math.IsNaN(l.Value.SI) {
		row.Value, row.Source = "none", "only standards give one"
	}
	if set, ok := std.Limit(row.Name); ok {
		row.BuiltIn, row.Loosened = row.Value, l.Loosens(set.Value.SI)
		row.Value, row.SI = quantity.Metric.Format(set.Value), show.JSONNumberOf(set.Value)
		row.Source, row.File, row.Line = set.Source, set.Origin.File, set.Origin.Line
	}
	return row
}

// Standards lists everything in force, for people.
func Standards(w io.Writer, list []*engine.Rule, std *standards.Standards) error {
	t := NewReportText(w, false)
	t.Line(show.Shown(std.Name))
	for _, f := range std.Files {
		t.Line(show.Shown(f))
	}
	t.Rule("─")
	kind := ""
	for _, row := range allInForce(list, std) {
		if heading := map[string]string{"default": "defaults", "route": "the way in before a spec's legs", "shop": "the shop", "order": "what remedies change first", "require": "required", "exclude": "excluded", "fixed": "fixed, whatever the standards"}[row.Kind]; row.Kind != kind && (heading != "" || kind == "") {
			if heading == "" {
				heading = "limits and severities"
			}
			if kind != "" {
				t.Line("")
			}
			t.Line(heading)
		}
		kind = row.Kind
		t.inForce(row)
	}
	return t.Flush()
}

func (t ReportText) inForce(row inForce) {
	from := "built in: " + row.Source
	if row.File != "" {
		from = fmt.Sprintf("%s:%d: %s", row.File, row.Line, row.Source)
		if row.BuiltIn != "" {
			from += "; built in is " + row.BuiltIn
		}
	}
	if row.Loosened {
		from = "LOOSENED, " + from
	}
	const nameColumn = 34
	lead := show.Pad("  "+row.Name, nameColumn)
	for _, l := range show.Wrap(show.Shown(row.Value+", "+from), show.TextWidth-nameColumn) {
		t.Line(lead + l)
		lead = show.Pad("", nameColumn)
	}
}

// StandardsJSON lists everything in force as one document.
func StandardsJSON(w io.Writer, list []*engine.Rule, std *standards.Standards) error {
	return show.WriteJSON(w, struct {
		Name    string    `json:"name"`
		Files   []string  `json:"files"`
		InForce []inForce `json:"in_force"`
	}{std.Name, append([]string{}, std.Files...), allInForce(list, std)})
}
