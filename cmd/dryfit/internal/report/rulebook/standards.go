package rulebook

import (
	"fmt"
	"io"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
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

// Standards lists everything in force, for people.
func Standards(w io.Writer, list []*engine.Rule, std *standards.Standards) error {
	t := show.NewTexter(w, false)
	t.Line(show.Shown(std.Name))
	for _, f := range std.Files {
		t.Line(show.Shown(f))
	}
	t.Rule("─")
	kind := ""
	for _, row := range allInForce(list, std) {
		if heading := map[string]string{"default": "defaults", "route": "legs that come before those of a spec", "shop": "the shop", "order": "order in which remedies change keys", "require": "required", "exclude": "excluded", "fixed": "fixed, independent of the standards"}[row.Kind]; row.Kind != kind && (heading != "" || kind == "") {
			if heading == "" {
				heading = "limits and severities"
			}
			if kind != "" {
				t.Line("")
			}
			t.Line(heading)
		}
		kind = row.Kind
		writeInForce(t, row)
	}
	return t.Flush()
}

// writeInForce writes one of them, with where it comes from.
func writeInForce(t *show.Texter, row inForce) {
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
