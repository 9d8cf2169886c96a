// Package cite is the list of works that the program's figures come from. A
// work is spelled once, here; a table or a rule adds only the place in it and
// how the figure reached this project.
package cite

// Standing says how a figure reached this project, which decides how far it
// may be relied on.
type Standing uint8

// The standings, best first.
const (
	// Read: the work, or a page that reprints the passage, was opened.
	Read Standing = iota + 1
	// Derived: worked out from stated assumptions; the derivation is given.
	Derived
	// Memory: recalled from the named work, which was not opened.
	Memory
	// Practice: a fact of the trade with no publication behind it.
	Practice
)

// String names the standing as reports print it.
func (s Standing) String() string {
	switch s {
	case Read:
		return "published"
	case Derived:
		return "derived"
	case Memory:
		return "from memory"
	case Practice:
		return "common practice"
	default:
		return "no source"
	}
}

// Work is one publication.
type Work struct {
	Title string
}

// Source is a place in a work, or the lack of one, with its standing. The zero
// Source is no source at all.
type Source struct {
	Work     Work
	Place    string // page, table, clause or equation; for Derived, the reasoning in a few words
	Standing Standing
}

// At is a place in w that was opened.
func (w Work) At(place string) Source {
	return Source{Work: w, Place: place, Standing: Read}
}

// FromMemory is the same place, recalled and not opened.
func (s Source) FromMemory() Source {
	s.Standing = Memory
	return s
}

// Derivation is a figure worked out here.
func Derivation(how string) Source {
	return Source{Place: how, Standing: Derived}
}

// CommonPractice is a fact of the trade that no publication was found for.
func CommonPractice() Source {
	return Source{Standing: Practice}
}

// String is the source as reports print it, its standing last unless read.
func (s Source) String() string {
	text := s.Work.Title
	if s.Place != "" {
		if text != "" {
			text += ", "
		}
		text += s.Place
	}
	switch {
	case text == "":
		return s.Standing.String()
	case s.Standing == Read:
		return text
	default:
		return text + " (" + s.Standing.String() + ")"
	}
}
