package sheet

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report/show"
)

// bites lists the numbers of the findings at keys that begin like one of those
// that a sheet shows.
func (in Input) bites(shows []string) []int {
	var out []int
	for i, f := range in.Assessment.Findings {
		if slices.ContainsFunc(shows, func(key string) bool { return f.At == key || strings.HasPrefix(f.At, key+".") }) {
			out = append(out, i+1)
		}
	}
	return out
}

// At puts the findings at a key, or under it, to a place.
func (in Input) At(places map[int]paper.Point, p paper.Point, keys ...string) {
	for _, n := range in.bites(keys) {
		if _, had := places[n]; !had {
			places[n] = p
		}
	}
}

// AtStation puts the findings at a station, and those that speak of it, to a place.
func (in Input) AtStation(places map[int]paper.Point, p paper.Point, key string) {
	in.At(places, p, key)
	for i, f := range in.Assessment.Findings {
		if _, had := places[i+1]; !had && slices.Contains(f.Related, key) {
			places[i+1] = p
		}
	}
}

// findings is the note of those that the sheet shows.
func (in Input) findings(shows []string) []paper.Note {
	n := paper.Note{Title: "Findings, by number"}
	for _, i := range in.bites(shows) {
		f := in.Assessment.Findings[i-1]
		text := fmt.Sprintf("%d %s %s: %s", i, f.Severity, f.Rule.ID, f.Text)
		if f.Accepted != nil {
			text += " (accepted)"
		}
		n.Lines = append(n.Lines, text)
	}
	return []paper.Note{n}
}

// reserves are what the verdict has to be read with: how much the standards loosen,
// and the families of what was not checked.
func (in Input) reserves() (out [][2]string) {
	if n := len(in.Assessment.Loosened); n > 0 {
		out = append(out, [2]string{"loosened", fmt.Sprintf("%d by the standards", n)})
	}
	if list := in.Assessment.Counts.Families.List(); list != "" {
		out = append(out, [2]string{"unchecked", list})
	}
	return out
}

// loosened is the note of what the standards loosen.
func (in Input) loosened() []paper.Note {
	n := paper.Note{Title: "Loosened by the standards"}
	for _, l := range in.Assessment.Loosened {
		n.Lines = append(n.Lines, fmt.Sprintf("%s is %s, built in is %s", l.Name, l.Used, l.BuiltIn))
	}
	return []paper.Note{n}
}

// unchecked is the note of the families of what was not checked.
func (in Input) unchecked() []paper.Note {
	n := paper.Note{Title: "Not checked"}
	if c := in.Assessment.Counts; c.NotChecked > 0 {
		n.Lines = []string{fmt.Sprintf("Rules of %s: %d in all.", c.Families.List(), c.NotChecked)}
	}
	return []paper.Note{n}
}

// assumed is the note of what the spec does not say.
func (in Input) assumed() []paper.Note {
	n := paper.Note{Title: "Assumed"}
	var line []string
	for _, a := range in.Assessment.Assumed {
		line = append(line, a.Key+" = "+show.Written(a.Value))
	}
	if len(line) == 0 {
		n.Lines = []string{"No value that a rule uses is assumed."}
	} else {
		n.Lines = line
	}
	return []paper.Note{n}
}
