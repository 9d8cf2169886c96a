package engine

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"regexp"
	"strings"
)

// Fingerprints gives each finding of one spec its own, and counts those that
// would have the same.
type Fingerprints map[string]int

// numbers are what changes in a sentence while the finding stays.
var numbers = regexp.MustCompile(`[0-9][0-9.'/" -]*`)

// Of tells a finding from the others of its spec by what does not change when
// lines move or figures do: its rule, its key and its words; of several alike, by
// their order.
func (seen Fingerprints) Of(rule, key, text string) string {
	what := rule + "\n" + key + "\n" + numbers.ReplaceAllString(strings.TrimSuffix(text, "."), "#")
	seen[what]++
	if n := seen[what]; n > 1 {
		what += fmt.Sprintf("\n%d", n)
	}
	sum := sha256.Sum256([]byte(what))
	return hex.EncodeToString(sum[:16])
}
