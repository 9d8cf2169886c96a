package study_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/design/study"
	"dryfit/rules/review"
	"dryfit/spec"
)

// What has to follow follows, is said, and is left alone where the spec does
// not tie it or the study varies it.
func TestFollows(t *testing.T) {
	for _, row := range []struct {
		why  string
		spec string
		cut  string // from the example
		vary string // with the options between blanks
		says string
		has  string // key=value of the last option
	}{
		{"panels with the grid", "reading-room", "", "grid.along=3..5", "panels.along follows grid.along", "panels.along=5"},
		{"left out, they follow by default", "reading-room", "along     = 6\n", "grid.along=3..5", "panels.along follows grid.along", "panels.along="},
		{"two modules a panel are no tie", "map-gallery", "", "grid.along=6..10/2", "panels.along stays as it is stated", "panels.along=4"},
		{"pinned", "reading-room", "", "grid.along=3..5 panels.along=6", "", "panels.along=6"},
		{"the room with the span", "reading-room", "", "vault.span=4.2m,4.5m", "room.width keeps its 40mm beyond vault.span", "room.width=4540mm"},
		{"in inches", "map-gallery", "", "vault.span=10ft..12ft/1ft", `room.width keeps its 2" beyond vault.span`, "room.width=146in"},
		{"and with its length", "reading-room", "", "vault.length=7080mm,7100mm", "room.length keeps its 64mm beyond vault.length", "room.length=7164mm"},
		{"the room pinned", "reading-room", "", "vault.span=4.1m room.width=4240mm", "", "room.width=4240mm"},
		{"the framing with the rise", "reading-room", "", "vault.rise=0.8m", "room.above stays, so the framing rises with the vault", "room.above=450mm"},
		{"rails with the rib's depth", "reading-room", "", "rib.depth=60mm,70mm", "rail.depth follows rib.depth, less the skin; skin.setback follows rail.depth", "rail.depth=61mm skin.setback=61mm"},
		{"and with the skin", "reading-room", "", "skin.thickness=9mm,6mm", "rail.depth follows rib.depth, less the skin; skin.setback follows rail.depth", "rail.depth=54mm skin.setback=54mm"},
		{"and with its layers", "reading-room", "", "skin.layers=2", "rail.depth follows rib.depth, less the skin; skin.setback follows rail.depth", "rail.depth=42mm skin.setback=42mm"},
		{"as it is sold", "reading-room", "", "skin.material=softwood plywood skin.thickness=1/2in", "rail.depth follows rib.depth, less the skin; skin.setback follows rail.depth", "rail.depth=48.09375mm skin.setback=48.09375mm"},
		{"a setback beside a rail's default", "reading-room", "depth   = \"51mm\"\n", "rib.depth=70mm", "rail.depth follows rib.depth, less the skin; skin.setback follows rail.depth", "rail.depth= skin.setback=61mm"},
		{"rails with the rib's wood and width", "reading-room", "", "rib.species=red oak rib.width=80mm", "rail.species follows rib.species; rail.width follows rib.width", "rail.species=red oak rail.width=80mm"},
		{"nothing follows a strap", "reading-room", "", "strap.setting=1mm,2mm", "", ""},
	} {
		s := cutStudy(t, row.spec, row.cut, row.vary)
		assert.Equal(t, row.says, strings.Join(s.Says, "; "), row.why)
		tree := s.Tree(s.Total)
		for _, pair := range splitPairs(row.has) {
			key, want, _ := strings.Cut(pair, "=")
			v, ok := spec.Lookup(tree, key)
			assert.Equal(t, want != "", ok, "%s: %s", row.why, key)
			if ok {
				assert.Equal(t, want, fmt.Sprint(v), row.why)
			}
		}
	}
}

// splitPairs cuts at the blanks that a key follows.
func splitPairs(text string) []string {
	var out []string
	for _, word := range strings.Fields(text) {
		if strings.Contains(word, "=") {
			out = append(out, word)
		} else {
			out[len(out)-1] += " " + word
		}
	}
	return out
}

func cutStudy(t testing.TB, name, cut, vary string) *study.Study {
	assessment := base(t, name)
	if cut != "" {
		src := strings.Replace(string(assessment.Document.Source), cut, "", 1)
		require.NotEqual(t, string(assessment.Document.Source), src)
		if strings.HasPrefix(cut, "along") {
			// the grid's own stands first
			at := strings.LastIndex(string(assessment.Document.Source), cut)
			src = string(assessment.Document.Source[:at]) + string(assessment.Document.Source[at+len(cut):])
		}
		assessment = review.Spec(name, []byte(src), options())
		require.NotNil(t, assessment.Ceiling, "%v", assessment.Problems)
	}
	s, err := study.New(assessment, splitPairs(vary), options())
	require.NoError(t, err)
	return s
}

// A profile that says more than it needs can still be varied: what follows from
// the rest is left out.
func TestRedundantDimensionsFollow(t *testing.T) {
	src := strings.Replace(string(base(t, "reading-room").Document.Source), `rise    = "840mm"`, "rise    = \"840mm\"\nradius  = \"3045mm\"", 1)
	assessment := review.Spec("r", []byte(src), options())
	require.NotNil(t, assessment.Ceiling, "%v", assessment.Problems)
	s, err := study.New(assessment, []string{"vault.rise=800mm,900mm"}, options())
	require.NoError(t, err)
	assert.Contains(t, s.Says, "vault.radius follows from the rest of the profile")
	for i := 1; i <= s.Total; i++ {
		require.NotNil(t, s.Option(i).Assessment)
	}
	// s²/8h + h/2, the radius of a segment.
	assert.InDelta(t, 4.2*4.2/(8*0.9)+0.45, s.Option(2).Assessment.Ceiling.Vault.Radius.Get(), 1e-9)
}

// The spec that is studied is not changed.
func TestTheSpecIsLeftAsItWas(t *testing.T) {
	s := newStudy(t, "reading-room", "grid.along=3..5", "strap.stations.2=30%,40%", "vault.span=4m,5m")
	before := fmt.Sprint(s.Base.Document.Tree)
	for i := 1; i <= s.Total; i++ {
		s.Option(i)
	}
	assert.Equal(t, before, fmt.Sprint(s.Base.Document.Tree))
}
