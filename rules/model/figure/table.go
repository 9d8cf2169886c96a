package figure

import "dryfit/spec/quantity"

// Table is a calculation that is followed best row by row, as a chain of lengths
// with their tolerances.
type Table struct {
	Key     string // stable: "close.stack"
	Title   string
	Subject string   // the heading that it stands under
	Head    []string // the label's first, then one for each value
	Rows    []Row
	Note    string // how the rows were worked, to follow the table
}

// Row is one line of a table.
type Row struct {
	Label  string
	Values []quantity.Value // as many as the head has after the label
}
