package editor

import (
	"dryfit/spec"
)

// follower finds places near the last one without counting from the start of
// their line, which may be the whole text.
type follower struct {
	lined
	offset int
	place  position
}

func (f *follower) at(offset int) position {
	switch line := f.lineOf(offset); {
	case line != f.place.Line:
		f.place = f.position(offset)
	case offset < f.offset:
		f.place.Character -= f.units(f.text[offset:f.offset])
	default:
		f.place.Character += f.units(f.text[f.offset:offset])
	}
	f.offset = offset
	return f.place
}

func (f *follower) span(r spec.Range) span { return span{Start: f.at(r.Start), End: f.at(r.End)} }
