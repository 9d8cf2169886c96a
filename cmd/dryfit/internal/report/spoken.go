package report

import (
	"dryfit/rules/engine"

	"dryfit/cmd/dryfit/internal/report/show"
)

// Said is what is found at a key: the key, and one sentence.
func Said(key, text string) string { return Entry{Key: key, Text: show.Sentence(text)}.Said() }

// BasisOf is what a finding rests on.
func BasisOf(f engine.Finding) string { return basis(f) }
