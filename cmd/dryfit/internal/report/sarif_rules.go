package report

import (
	"strings"
	"unicode"

	"dryfit/cmd/dryfit/internal/report/markdown"
	"dryfit/cmd/dryfit/internal/report/rulebook"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/review/catalog"
)

// fileRules are what may be wrong with a file before any rule is run.
var fileRules = []struct{ id, title, why string }{
	{"file.read", "the file can be read", "A spec that can't be read is not checked."},
	{"file.toml", "the file is TOML", "A file that is not TOML has no keys to check."},
	{"file.shape", "the keys and values are those of the format", "A misspelt key would be ignored without a message."},
	{"file.value", "the standards give each key a value of its kind", "A default that does not fit its key can't be used."},
	{"spec.geometry", "the dimensions make a ceiling", "Dimensions that contradict each other leave nothing to check."},
}

// sarifRules describes the rules, and gives each one's place in the list.
func sarifRules(list []*engine.Rule, docs string) ([]sarifRule, map[string]int) {
	index := map[string]int{}
	out := make([]sarifRule, 0, len(fileRules)+len(list))
	add := func(r sarifRule, title, page string) {
		r.Name, r.Short = pascal(r.ID), sarifText{show.Sentence("Checks that " + title)}
		if docs != "" {
			r.HelpURI = docs + "/" + page
		}
		index[r.ID] = len(out)
		out = append(out, r)
	}
	for _, f := range fileRules {
		add(sarifRule{
			ID: f.id, Full: sarifText{f.why}, Help: sarifMarkup{f.why, markdown.Text(f.why)},
			Default: sarifLevel{"error"}, Bag: map[string]any{"severity": problemSeverity.String()},
		}, f.title, "format.md")
	}
	for _, r := range list {
		add(sarifRule{
			ID: r.ID, Full: sarifText{r.Why}, Help: sarifHelp(r), Default: sarifLevel{levels[r.Severity]},
			Bag: map[string]any{"severity": r.Severity.String(), "tags": []string{strings.Split(r.ID, ".")[0]}},
		}, r.Title, "rules/"+r.ID+".md")
	}
	return out, index
}

// pascal is an id as the name of a type: BendSkinRadius.
func pascal(id string) string {
	var b strings.Builder
	upper := true
	for _, c := range id {
		switch {
		case c == '.' || c == '-':
			upper = true
		case upper:
			b.WriteRune(unicode.ToUpper(c))
			upper = false
		default:
			b.WriteRune(c)
		}
	}
	return b.String()
}

// sarifHelp is what basis says of a rule, but for its cases.
func sarifHelp(r *engine.Rule) sarifMarkup {
	text, marked := []string{r.Why}, []string{markdown.Text(r.Why), ""}
	item := func(name, said string) {
		text = append(text, name+": "+said)
		marked = append(marked, "- "+markdown.Text(name+": "+said))
	}
	item("Severity", rulebook.Severity(r))
	if r.Basis.Formula != "" {
		item("Formula", r.Basis.Formula)
		for _, s := range r.Basis.Symbols {
			item(s.Name, s.Means+" ("+s.Unit+")")
		}
	}
	if r.Basis.Valid != "" {
		item("Valid", r.Basis.Valid)
	}
	for _, l := range r.Limits {
		item("Limit "+r.Full(l.Key), rulebook.Limit(l))
	}
	item("Needs", rulebook.Keys(r.Needs))
	item("Reads", rulebook.Keys(rulebook.Leaves(catalog.Reads(r.ID))))
	item("Basis", r.Basis.Source.String())
	item("More", "dryfit basis "+r.ID)
	return sarifMarkup{strings.Join(text, "\n"), strings.Join(marked, "\n")}
}
