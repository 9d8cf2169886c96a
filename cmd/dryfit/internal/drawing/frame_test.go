package drawing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
)

// words are all texts of a sheet, in their order.
func words(items []paper.Item) (out []string) {
	for _, text := range textsOf(items) {
		out = append(out, text.Text)
	}
	return out
}

// Each sheet of a set has its own number, says which of how many it is, and bears the
// beginning of the spec's hash; one drawn alone keeps its number.
func TestTitleBlock(t *testing.T) {
	in := input(t, map[string]any{"project.owner": "Concourse trust", "project.issued": "2026-11-20"})
	in.SHA256 = strings.Repeat("0123456789abcdef", 4)
	drawn, _, err := All(in, sheet.Options{})
	require.NoError(t, err)
	for i, s := range drawn {
		said := strings.Join(words(s.Items), "\n")
		assert.Contains(t, said, "number A-612."+string(rune('1'+i)), s.Name)
		assert.Contains(t, said, "sheet "+string(rune('1'+i))+" of "+string(rune('0'+len(drawn))), s.Name)
		assert.Contains(t, said, "\n0123456789ab\n", s.Name)
		assert.Contains(t, said, "\nConcourse trust\n", s.Name)
		assert.Contains(t, said, "\n2026-11-20\n", s.Name)
		assert.Contains(t, said, "\napproved\n", "with a line to sign on")
	}
	alone, err := Draw("rib", in, sheet.Options{})
	require.NoError(t, err)
	said := strings.Join(words(alone.Items), "\n")
	assert.Contains(t, said, "number A-612.4")
	assert.Contains(t, said, "sheet 1 of 1")
}
