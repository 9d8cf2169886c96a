package report

import (
	"fmt"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
)

// notChecked lists the missing keys, each with the rules that need it, then the
// rules that have another reason.
func (t ReportText) notChecked(list []engine.NotChecked) {
	if len(list) == 0 {
		return
	}
	t.Line("not checked")
	var keys []string
	neededBy := map[string][]string{}
	for _, n := range list {
		if n.Why != "" {
			continue
		}
		if neededBy[n.Key] == nil {
			keys = append(keys, n.Key)
		}
		neededBy[n.Key] = append(neededBy[n.Key], n.Rule.ID)
	}
	for _, key := range keys {
		t.Paragraph("", show.Pad(key, show.WideLabel), show.Safe("needed by "+strings.Join(neededBy[key], ", ")))
	}
	for _, l := range Lacking(list) {
		switch {
		case l.why == "":
		case len(l.Rules) == 1:
			t.Paragraph("", show.Pad(l.Rules[0], show.WideLabel), show.Shown(l.Said()))
		default:
			t.Paragraph("", "", show.Shown(l.Said())+": "+strings.Join(l.Rules, ", "))
		}
	}
	t.Line("")
}

// keyed prints a list under its title, each entry behind its key; nothing where there
// are none.
func keyed[T any](t ReportText, title string, list []T, entry func(T) (key, text string)) {
	if len(list) == 0 {
		return
	}
	t.Line(title)
	for _, e := range list {
		key, text := entry(e)
		t.Paragraph("", show.Pad(key, show.WideLabel), text)
	}
	t.Line("")
}

func (t ReportText) assumed(list []standards.Assumed) {
	keyed(t, "assumed", list, func(a standards.Assumed) (string, string) {
		return a.Key, show.Shown(show.Written(a.Value) + ", " + AssumedFrom(a))
	})
}

// Loosened lists the limits that the standards loosen and that were used: a
// change of the standards could let anything pass.
func (t ReportText) Loosened(list []engine.Loosened) {
	keyed(t, "loosened by the standards", list, func(l engine.Loosened) (string, string) {
		return l.Name, show.Shown(fmt.Sprintf("%s, built in is %s; %s:%d: %s", l.Used, l.BuiltIn, l.Origin.File, l.Origin.Line, l.Source))
	})
}

// awaited lists the absent keys that would let most rules be checked.
func (t ReportText) awaited(list []review.Awaited) {
	keyed(t, "give first", list, func(a review.Awaited) (string, string) { return a.Key, waiting(a) })
}
