package options

import (
	"dryfit/rules/design/study"
)

// MostPlaces is how many options are drawn.
const MostPlaces = 60

// Axis is a key of a matrix and its values; of keys that change together all of them.
type Axis struct {
	Key    string
	Values []string

	stride, count int // of the options, and of its values
}

// Place is where an option is shown, with what is written under it. Without a row it
// is blank, and the lines say why.
type Place struct {
	Row   *study.Row
	Index int
	Title string
	Lines []string
}

// Places are the options as they are laid before a reader: in a matrix where exactly two
// keys vary, row by row, and else in the order of the table.
type Places struct {
	Rows, Columns Axis // without values in a list
	List          []Place
	Left          int // options that there is no room for
}

// Matrix reports whether the places are in rows and columns.
func (p Places) Matrix() bool { return len(p.Columns.Values) > 0 }

// Places lays out the options that are listed.
func (s Study) Places() (out Places) {
	axes := s.axes()
	if len(axes) != 2 || axes[0].count*axes[1].count > MostPlaces {
		for _, r := range s.made() {
			if len(out.List) == MostPlaces {
				out.Left++
				continue
			}
			title, lines := s.Caption(r)
			out.List = append(out.List, Place{&r, r.Index, title, lines})
		}
		return out
	}
	out.Rows, out.Columns = axes[0], axes[1]
	if out.Rows.count < out.Columns.count { // a page is longer than it is wide
		out.Rows, out.Columns = out.Columns, out.Rows
	}
	for i := range out.Rows.count {
		for j := range out.Columns.count {
			out.List = append(out.List, s.place(1+i*out.Rows.stride+j*out.Columns.stride))
		}
	}
	return out
}
