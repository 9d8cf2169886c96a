package report

import "dryfit/rules/engine"

// Said is what is found at a key: the key, and one sentence.
func Said(key, text string) string { return entry{key: key, text: sentence(text)}.said() }

// BasisOf is what a finding rests on.
func BasisOf(f engine.Finding) string { return basis(f) }
