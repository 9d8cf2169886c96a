package report

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"
	"unicode"

	"dryfit/cmd/dryfit/internal/report/show"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every character of the classes is written by its code, in texts and in names
// of members, and decodes to itself.
func TestJSONEscapes(t *testing.T) {
	var all strings.Builder
	for _, class := range []*unicode.RangeTable{unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp} {
		for _, r := range class.R16 {
			for c := rune(r.Lo); c <= rune(r.Hi); c += rune(r.Stride) {
				all.WriteRune(c)
			}
		}
		for _, r := range class.R32 {
			for c := rune(r.Lo); c <= rune(r.Hi); c += rune(r.Stride) {
				all.WriteRune(c)
			}
		}
	}
	all.WriteString("\ue000\uf8ff\U000f0000\U0010fffd") // ends of the private ranges
	text := "plain " + all.String() + " 漢字 <&> end"
	in := map[string]any{text: []any{text, 1.5, nil}}

	var b bytes.Buffer
	require.NoError(t, show.WriteJSON(&b, in))
	hidden(t, b.Bytes())
	assert.Contains(t, b.String(), `\u202e`)
	assert.Contains(t, b.String(), `\udb40\udc01`, "U+E0001 as a pair")
	assert.Contains(t, b.String(), "漢字 <&> end")
	var out map[string]any
	require.NoError(t, json.Unmarshal(b.Bytes(), &out))
	assert.Equal(t, in, out)

	seal := Seal{Spec: DigestOf(text, nil), Standards: []Digest{DigestOf(text, nil)}}
	sealed, err := json.Marshal(seal)
	require.NoError(t, err)
	hidden(t, sealed)
	var again Seal
	require.NoError(t, json.Unmarshal(sealed, &again))
	assert.Equal(t, seal, again)
}
