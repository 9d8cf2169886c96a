package submittal

import (
	"fmt"

	"dryfit/cmd/dryfit/internal/report/show"
)

// margins are what each printed page says of what it is a page of.
func (s Submittal) margins() string {
	p := s.Assessment.Ceiling.Project
	named := show.ShownTo(p.Title.Get(), mostInMargin)
	if sheet := p.Sheet.Get(); sheet != "" {
		named += ", sheet " + show.ShownTo(sheet, mostInMargin/2)
	}
	if revision := p.Revision.Get(); revision != "" {
		named += ", revision " + show.ShownTo(revision, mostInMargin/4)
	}
	judged := fmt.Sprintf("%s on %s, dryfit %s", s.Assessment.Verdict, s.Seal.On, s.Seal.Version)
	return fmt.Sprintf(`@page { font: 8pt sans-serif; @top-left { content: %s } @top-right { content: %s } `+
		`@bottom-left { content: %s } @bottom-right { content: "page " counter(page) " of " counter(pages) } }`,
		show.CSSString(named), show.CSSString("spec "+s.Seal.Spec.SHA256[:hashDigits]), show.CSSString(judged))
}

const (
	mostInMargin = 40 // characters of a title at the head of a page
	hashDigits   = 12 // as on a drawing
)
