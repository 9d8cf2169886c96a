package rulebook

import (
	"fmt"
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
		row("equal parts in a row", "%d", layout.MostAlike),
		row("trials for passes with", "%d", review.MostTried),
	}
}

func limitInForce(r *engine.Rule, l engine.Limit, std *standards.Standards) inForce {
	row := inForce{
		Kind: "limit", Name: r.Full(l.Key), Value: quantity.Metric.Limit(l.Value), SI: show.JSONNumberOf(l.Value),
		Unit: l.Value.Unit.String(), Source: l.Source.String(),
	}
	if math.IsNaN(l.Value.SI) {
		row.Value, row.Source = "none", "only standards files set it"
	}
	if set, ok := std.Limit(row.Name); ok {
		row.BuiltIn, row.Loosened = row.Value, l.Loosens(set.Value.SI)
		row.Value, row.SI = quantity.Metric.Format(set.Value), show.JSONNumberOf(set.Value)
		row.Source, row.File, row.Line = set.Source, set.Origin.File, set.Origin.Line
	}
	return row
}
