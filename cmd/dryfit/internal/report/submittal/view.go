package submittal

import (
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
)

// submittalView is what the template puts in its places. Texts are safe to
// show; the template escapes them.
type submittalView struct {
	show.Furniture
	Title, Path, Verdict, Class, Checked string
	Counts                               []countView
	Groups                               []groupView
	Referred                             []referredView
	Accepted                             []findingView
	Lacking, Assumed, Loosened           []pairView
	Drawings                             []drawingView
	Sheets                               []sheetView
	Actions                              []string
	Undrawn                              []string
	Legend                               string
	Subjects                             []subjectView
	Takeoff                              []takeoffView
	Seal                                 report.Seal
	Caution                              string
}

type countView struct {
	N           int
	What, Class string
}

// groupView is the findings of one severity.
type groupView struct {
	Severity, Title string
	Findings        []findingView
}

type findingView struct {
	Number                                   int
	Severity, Rule, Place, Text              string
	Measured, Limit, Passes, Basis, Accepted string
	Details                                  []detailView
}

// detailView is the part of a drawing around a finding.
type detailView struct {
	Drawing, Number, Title, Box string
}

// drawingView is a figure, how the page that it is printed on lies, and the name of its
// place on the screen, which no other has.
type drawingView struct {
	show.DrawingView
	Page, Region string
}

// sheetView is a sheet in the index, by its first figure, with its notes.
type sheetView struct {
	Name, Number, Title string
	Notes               []pairView
}

// referredView is what goes to one addressee.
type referredView struct {
	To, Named string
	Findings  []findingView
}

type pairView struct{ What, Says string }

type subjectView struct {
	Title    string
	Cases    casesView
	Figures  []figureView
	Tables   []tableView
	OnScreen int // how many tables paper goes without
}

type figureView struct {
	Key, Name, Value string
	Assumed          bool
	Steps            []string
	Readers          string
	Shares           bool // what is said of the next one is said of it too
}

type tableView struct {
	Title, Note string
	Head        []string
	Rows        [][]string
	// OnScreen says that paper goes without it: on it stands what other tables have, for
	// who works a frame again by program.
	OnScreen bool
}

type takeoffView struct {
	Title string
	Rows  [][]string
}
