package issuing

import (
	"time"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/drawing/pdf"
	"dryfit/cmd/dryfit/internal/report/show"
)

// document is what a PDF says of itself: its date is the one that it was
// judged on, so that the same spec makes the same bytes.
func document(title, on string) pdf.Document {
	date, err := time.Parse(time.DateOnly, on)
	if err != nil {
		date = time.Time{} // judgedOn has read it before
	}
	return pdf.Document{Title: show.Shown(title), Creator: "dryfit " + build.Version(), Date: date}
}
