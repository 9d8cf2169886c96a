package paper

// Sheet is one sheet of paper, its size in mm.
type Sheet struct {
	Name          string // "section", for files and references
	Number        string // "A-612.3"; "" where there is none
	Title         string // for a reader who can't see it: what the sheet shows
	About         string // the same at length, a sentence or two
	Width, Height float64
	Items         []Item // the later over the earlier
	// Marks are where findings bite, by their numbers, for who shows a part of
	// the sheet.
	Marks map[int]Point
	// Rest are the notes that its column has no room for: another sheet has them.
	Rest []Note
	// After is the name of the figure that this one has to come after, if any: steps are
	// read in their order.
	After string
}

// Note is a heading and the lines under it.
type Note struct {
	Title string
	Lines []string
}
