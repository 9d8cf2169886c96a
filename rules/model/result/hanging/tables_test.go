package hanging_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/figure"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/sample"
	"dryfit/spec/quantity"
)

// reactions are the forces of springs by frame and case, and the sum as printed.
type reactions map[string]struct {
	springs, sum float64
	thrust       bool
}

func (r reactions) read(t *testing.T, frame string, table figure.Table) {
	for _, row := range table.Rows {
		require.Len(t, row.Values, len(table.Head)-1, table.Title)
		one := r[frame+": "+row.Label]
		for i, v := range row.Values {
			switch table.Head[i+1] {
			case "sum":
				one.sum = v.SI
			case "thrust":
				one.thrust = true
			default:
				one.springs += v.SI
			}
		}
		r[frame+": "+row.Label] = one
	}
}

// The tables have every case of every frame, in parts where there are many
// straps, and what each case's springs hold is the frame's weight: of whole and
// of split arches, with lifts and ledgers.
func TestReactionsOfEachCaseAddUpToTheWeight(t *testing.T) {
	both := false
	packed := map[string]any{"ledger.packed": true, "ledger.projection": "200mm"}
	for name, changes := range map[string]map[string]any{
		"reading-room": packed, "orangery": nil, "concourse": nil, "gallery-soffit": nil, "off-balance": nil,
	} {
		h := hanging.Of(sample.Ceiling(t, name, changes), nil)
		weights, found := map[string]float64{}, reactions{}
		keys := map[string]bool{}
		for _, table := range h.Tables() {
			assert.False(t, keys[table.Key], "%s: two tables are %s", name, table.Key)
			keys[table.Key] = true
			if table.Key == "hanging.frames" {
				for _, row := range table.Rows {
					weights[row.Label] = row.Values[len(row.Values)-1].SI
				}
			}
			key := strings.TrimPrefix(table.Key, "hanging.frame.")
			if frame, _, ok := strings.Cut(key, ".reactions"); ok {
				assert.LessOrEqual(t, len(table.Head), 7, "more than the page is wide")
				found.read(t, frame, table)
			}
		}
		for _, f := range h.Frames() {
			for _, a := range f.Cases {
				got, ok := found[f.Key+": "+a.Words()]
				require.True(t, ok, "%s: no reactions of %s %s", name, f.Key, a.Key())
				assert.InEpsilon(t, weights[f.Key], got.springs, 1e-6, "%s %s %s", name, f.Key, a.Key())
				assert.InEpsilon(t, got.springs, got.sum, 1e-9)
				assert.Equal(t, len(f.Model.Supports) > 1, got.thrust, "%s %s", name, f.Key)
				both = both || got.thrust
			}
		}
	}
	assert.True(t, both, "feet that thrust are among them")
}

// What holds a frame stands at its node with its stiffness: a strap's is that of
// its steel, E·A/L.
func TestWhatHoldsAFrameIsPrinted(t *testing.T) {
	c := sample.Room(t, nil)
	for _, table := range hanging.Of(c, nil).Tables() {
		if table.Key != "hanging.frame.arch.held" {
			continue
		}
		first := table.Rows[0]
		assert.Equal(t, "strap 1", first.Label)
		length := c.StrapLength(c.Strap.Stations.Get()[0])
		assert.InEpsilon(t, 200e9*c.Strap.Width.Get()*c.Strap.Thickness.Get()/length, first.Values[2].SI, 1e-9)
		last := table.Rows[len(table.Rows)-1]
		assert.Equal(t, "middle, sideways", last.Label)
		assert.Equal(t, "unlimited", quantity.Metric.Format(last.Values[2]))
		return
	}
	t.Fatal("no table of what holds the arch")
}

// A ceiling that is not solved has no frame to print.
func TestNoFrameNoTables(t *testing.T) {
	assert.Empty(t, hanging.Of(sample.Ceiling(t, "porch", nil), nil).Tables())
}

// E, G, A, the area in shear and I are on the sheet, and are those of the model.
func TestTheSheetHasTheSectionOfTheFrame(t *testing.T) {
	c := sample.Room(t, nil)
	h := hanging.Of(c, nil)
	s := h.Frames()[0].Section
	want := map[string]float64{
		"hanging.frame.E": s.E, "hanging.frame.G": s.G, "hanging.frame.A": s.A, "hanging.frame.A_s": s.Shear, "hanging.frame.I": s.I,
	}
	for _, f := range h.Figures(c) {
		if v, ok := want[f.Key]; ok {
			assert.InEpsilon(t, v, f.Value.SI, 1e-12, f.Key)
			assert.NotEmpty(t, f.From, f.Key)
			delete(want, f.Key)
		}
	}
	assert.Empty(t, want)
}

// Of a rectangle five sixths of the area count in shear: by the work of the parabola
// of its stresses, 6/5 of that of an even one.
func TestShearAreaIsFiveSixths(t *testing.T) {
	for _, f := range hanging.Of(sample.Room(t, nil), nil).Frames() {
		assert.InEpsilon(t, 0.045*0.060-0.005*0.008, f.Section.A, 1e-9, "half of the reveal is cut out of it")
		assert.InEpsilon(t, f.Section.A*5/6, f.Section.Shear, 1e-9, f.Key)
	}
}
