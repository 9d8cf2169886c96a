package remedy

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// A fitting over a rib is moved, not the ceiling divided anew; where it is cured
// by itself, so far that nothing about it is queried.
func TestAFittingIsMovedFirst(t *testing.T) {
	src := changed(t, `size   = { diameter = "90mm" }`, `size   = { diameter = "90mm" }
at     = { around = "0mm", along = "500mm" }`)
	o := Options{Review: reviewing(false), Answers: 1}
	got := sought(t, src, o)
	hold, ok := find(got.Open, "fitting.clear-of-members")
	require.True(t, ok)
	require.NotEmpty(t, got.Answers)
	require.Len(t, got.Answers[0].Changes, 1)
	moved := got.Answers[0].Changes[0]
	assert.Equal(t, "fitting.1.at.along", moved.Key)
	at, err := quantity.Parse(quantity.Metre, moved.Value.(string))
	require.NoError(t, err)
	assert.InDelta(t, 0, at.SI/0.005-float64(int(at.SI/0.005+0.5)), 1e-6, "set out by 5mm")

	cures, _, err := Cures(context.Background(), got.Assessment.Document.Tree, hold, o)
	require.NoError(t, err)
	require.NotEmpty(t, cures)
	assert.Equal(t, "fitting.1.at.along", cures[0].Key)
	assert.True(t, cures[0].Clean(), "%v %v", cures[0].Brings, cures[0].Worse)
}

// Wood that the shop delivers wet shrinks in every season. A wider moulding would
// hide the gap: the shop's air is what may change.
func TestWetDeliveryIsNotCuredByAWiderMoulding(t *testing.T) {
	src := sample.Source(t, sample.ReadingRoom, `shop = { temperature = "20C", humidity = "45%" }`, `shop = { temperature = "20C", humidity = "72%" }`,
		`cover = "60mm"`, `cover = "65mm"`)
	o := Options{Review: reviewing(true)}
	assessment := review.Spec("wet.ceiling.toml", src, o.Review)
	f, ok := find(assessment.Findings, "close.cover")
	require.True(t, ok)
	assert.Nil(t, f.Passes)
	cures, _, err := Cures(context.Background(), assessment.Document.Tree, f, o)
	require.NoError(t, err)
	keys := map[string]bool{}
	for _, c := range cures {
		keys[c.Key] = true
	}
	assert.True(t, keys["climate.shop.humidity"], keys)
	assert.False(t, keys["edge.cover"], keys)
}

// Where what may change is not enough, the keys that would have to are named.
func TestTheKeysThatWouldHaveToChange(t *testing.T) {
	src := changed(t, "along     = 6\naround    = 1", "along     = 6\naround    = 2", "around = 6\n", "around = 6\n")
	got := sought(t, src, Options{Review: reviewing(false), MayChange: []string{"rib.width", "edge"}})
	_, ok := find(got.Open, "close.two-way")
	require.True(t, ok, "%v", got.Open)
	assert.Empty(t, got.Answers)
	assert.Contains(t, got.Tied, "panels.around")
	assert.Contains(t, got.Tied, "close.last")
	require.NotEmpty(t, got.Needed)
	var keys []string
	for _, c := range got.Needed {
		keys = append(keys, c.Key)
	}
	assert.True(t, keys[0] == "close.last" || keys[0] == "panels.around", "%v", keys)
	with := sought(t, src, Options{Review: reviewing(false), MayChange: append(keys, "rib.width", "edge"), Answers: 1})
	assert.NotEmpty(t, with.Answers, "with %v there is an answer", keys)
}

// sagging is the search for what clears a rib that sags by its firm's limit, where its
// depth and the skin may change, and its straps are allowed so much.
func sagging(t *testing.T, load string) (got Result, sag engine.Finding, o Options) {
	t.Helper()
	firm, problems := catalog.ReadStandards("s", []byte("dryfit = 1\nname = \"s\"\n[limit]\n\"rib.sag.run\" = { value = 240, source = \"house rule\" }\n"))
	require.Empty(t, problems)
	o = Options{Review: reviewing(false), MayChange: []string{"rib.depth", "skin.thickness"}}
	o.Review.Standards = standards.With(firm)
	got = sought(t, coupled(t, "50mm", `["12%", "88%"]`, load), o)
	sag, ok := find(got.Open, "rib.sag")
	require.True(t, ok)
	return got, sag, o
}

// A deeper rib alone overloads the straps, and so it is no cure by itself; two
// keys together are one, and make nothing worse.
func TestTwoKeysWhereOneCannot(t *testing.T) {
	got, sag, o := sagging(t, "0.158kN")
	cures, _, err := Cures(context.Background(), got.Assessment.Document.Tree, sag, o)
	require.NoError(t, err)
	require.NotEmpty(t, cures)
	best := cures[0]
	require.Len(t, best.Also, 1, "%v", best.Change)
	assert.True(t, best.Clean())
	assert.ElementsMatch(t, []string{"rib.depth", "skin.thickness"}, keysOf(best.All()))
}

// Comments beside a changed value are listed, and those elsewhere that state
// what it was; a longer number is another one.
func TestCommentsThatAreLeft(t *testing.T) {
	doc, problems := spec.Parse("s", []byte(`# ribs of 60mm, not of 160mm
dryfit = 1
[rib] # of oak
depth = "66mm" # "deep" as the span asks
width = "90mm" # as deep as 60mm
# 160mm would be too deep
species = "white # oak"
`))
	require.Empty(t, problems)
	got := beside(doc, []Change{{Key: "rib.depth", Was: "60mm", Value: "66mm"}})
	assert.Equal(t, []Comment{
		{1, "# ribs of 60mm, not of 160mm", "rib.depth"},
		{4, `# "deep" as the span asks`, "rib.depth"},
		{5, "# as deep as 60mm", "rib.depth"},
	}, got)
}
