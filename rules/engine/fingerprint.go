package engine

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"
)

// Fingerprints gives each finding of one spec its own, and counts those that
// would have the same.
type Fingerprints map[string]int

// withoutNumbers has a # for each run of what changes in a sentence while the finding
// stays: of digits, and of what stands between and after the digits of a quantity.
func withoutNumbers(text string) string {
	var b strings.Builder
	for text != "" {
		at := strings.IndexAny(text, "0123456789")
		if at < 0 {
			break
		}
		b.WriteString(text[:at])
		b.WriteByte('#')
		text = strings.TrimLeft(text[at:], `0123456789.'/" -`)
	}
	b.WriteString(text)
	return b.String()
}

// Of tells a finding from the others of its spec by what does not change when
// lines move or figures do: its rule, its key and its words; of several alike, by
// their order.
func (seen Fingerprints) Of(rule, key, text string) string {
	what := rule + "\n" + key + "\n" + withoutNumbers(strings.TrimSuffix(text, "."))
	seen[what]++
	if n := seen[what]; n > 1 {
		what += fmt.Sprintf("\n%d", n)
	}
	sum := sha256.Sum256([]byte(what))
	return hex.EncodeToString(sum[:16])
}
