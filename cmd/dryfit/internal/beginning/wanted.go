package beginning

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/design/begin"
	"dryfit/spec/quantity"
)

// missing lists the flags without which there is nothing to draft.
func (f *Flags) missing() []string {
	var out []string
	for _, q := range f.questions() {
		if *q.to == "" {
			out = append(out, "--"+q.flag)
		}
	}
	return out
}

// wanted reads the flags. The units are those that the span, or the room's width,
// is written in unless they are said.
func (f *Flags) wanted() (begin.Wanted, error) {
	w := begin.Wanted{
		Title: f.Title, Profile: f.Profile, Span: f.Span, Rise: f.Rise, Length: f.Length, Units: quantity.Metric,
		Around: f.Around, Along: f.Along, Species: f.Species, Construction: f.Construction, Skin: f.Skin,
	}
	first := f.Span
	if f.Room != "" || f.Survey != "" {
		r, err := f.inRoom()
		if err != nil {
			return w, err
		}
		w.Room, first = r, r.Width
	}
	if f.measured != nil {
		w.Survey, first = f.measured, f.measured.Written()
	}
	switch {
	case f.Units == "imperial", f.Units == "" && !strings.HasSuffix(strings.TrimSpace(first), "m"):
		w.Units = quantity.Imperial
	case f.Units != "" && f.Units != "metric":
		return w, fmt.Errorf("--units %q is not metric or imperial", f.Units)
	case f.Around < 0 || f.Along < 0:
		return w, errors.New("--around and --along are counts, from 1")
	case f.Construction != "" && !slices.Contains(Constructions, f.Construction):
		return w, fmt.Errorf("--construction %q is not %s", f.Construction, usage.OneOf(Constructions))
	}
	for _, text := range f.Take {
		c, err := begin.Take(text)
		if err != nil {
			return w, fmt.Errorf("--take %s: %w", text, err)
		}
		w.Take = append(w.Take, c)
	}
	return w, nil
}

// inRoom reads the room, which is given in place of span and length.
func (f *Flags) inRoom() (*begin.Room, error) {
	switch {
	case f.Span != "" || f.Length != "":
		return nil, errors.New("give the room or --span and --length, not both: the room determines them")
	case f.Survey != "" && f.Room != "":
		return nil, errors.New("give --survey or --room, not both: the readings give the width and the length")
	case f.Survey != "":
		return &begin.Room{Height: f.Height}, nil
	case f.Height != "":
		return nil, errors.New("--height is only for --survey; --room includes the height")
	}
	parts := strings.Split(f.Room, ",")
	if len(parts) != 3 {
		return nil, fmt.Errorf("--room %q is not width,length,height, as in 4.57m,5.1m,2.7m", f.Room)
	}
	for i := range parts {
		parts[i] = strings.TrimSpace(parts[i])
	}
	return &begin.Room{Width: parts[0], Length: parts[1], Height: parts[2]}, nil
}
