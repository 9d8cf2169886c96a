package study_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A row of the table is the same after others, from which it takes what they have in
// common, as where it is the only one; in whatever order they are worked out.
func TestARowIsTheSameAfterOthers(t *testing.T) {
	for _, row := range []struct {
		spec string
		vary []string
	}{
		{"reading-room", []string{"vault.rise=700mm,840mm", "strap.allowable.load=200N,0.9kN", "close.first_gap=10mm,18mm,40mm"}},
		{"reading-room", []string{"climate.dry.humidity=20%,28%", "panels.around=1,2", "rib.lamination=4mm,6mm"}},
		{"reading-room", []string{"rib.depth=60mm", "vault.span,rise=4.2m/840mm,4m/900mm"}},
		{"reading-room", []string{"vault.rise=840mm,100m", "lift.capacity=20kg,200kg"}},
		{"map-gallery", []string{"rib.lamination=1/8in,1/4in", "strap.width=1in,2in", "vault.span=9ft,10ft"}},
	} {
		key, columns := "panel.mass.most", 0
		after := newStudy(t, row.spec, row.vary...)
		_, err := after.Choose([]string{key})
		assert.NoError(t, err)
		forward := make([]string, after.Total)
		for i := range forward {
			r := after.Row(after.Option(i + 1))
			forward[i], columns = fmt.Sprintf("%+v", r), max(columns, len(r.Figures))
		}
		assert.Len(t, after.Columns, columns)
		for i := range slices.Backward(forward) {
			assert.Equal(t, forward[i], fmt.Sprintf("%+v", after.Row(after.Option(i+1))), "%v, option %d again", row.vary, i+1)
			alone := newStudy(t, row.spec, row.vary...)
			_, err := alone.Choose([]string{key})
			assert.NoError(t, err)
			assert.Equal(t, forward[i], fmt.Sprintf("%+v", alone.Row(alone.Option(i+1))), "%v, option %d alone", row.vary, i+1)
		}
	}
}
