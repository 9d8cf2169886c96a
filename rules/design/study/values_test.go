package study_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/design/study"
)

// What VALUES may be, and what a key then has in turn.
func TestValues(t *testing.T) {
	for _, row := range []struct{ why, vary, want string }{
		{"a range of counts", "grid.along=3..6", "3 4 5 6"},
		{"by twos", "grid.along=3..9/2", "3 5 7 9"},
		{"a step that does not come out stops short", "grid.along=3..9/4", "3 7"},
		{"one value", "grid.along=4", "4"},
		{"a range of one", "grid.along=4..4", "4"},
		{"a list with a range in it", "grid.along=3,5..6,9", "3 5 6 9"},
		{"lengths by a step", "vault.rise=700mm..850mm/50mm", "700mm 750mm 800mm 850mm"},
		{"decimals step exactly", "vault.rise=0.1m..0.3m/0.1m", "0.1m 0.2m 0.3m"},
		{"tenths do too", "skin.thickness=6.1mm..6.4mm/0.1mm", "6.1mm 6.2mm 6.3mm 6.4mm"},
		{"feet by inches", "vault.rise=2ft..3ft/3in", "24in 27in 30in 33in 36in"},
		{"fractions of an inch, whose slashes are not the step's", "rib.depth=2 1/2in..3in/1/4in", "2 1/2in 2 3/4in 3in"},
		{"a fraction for an end", "skin.thickness=1/4in..3/8in/1/16in", "1/4in 5/16in 3/8in"},
		{"inch marks", `rib.depth=2"..2 1/2"/1/4"`, "2in 2 1/4in 2 1/2in"},
		{"units of one system mixed", "vault.rise=70cm..0.8m/50mm", "700mm 750mm 800mm"},
		{"a list of lengths as written", "skin.thickness=6mm,3/8in", "6mm 3/8in"},
		{"percentages", "climate.shop.humidity=30%..45%/7.5%", "30% 37.5% 45%"},
		{"temperatures, whose steps have no zero", "climate.shop.temperature=60F..70F/5F", "60F 65F 70F"},
		{"forces", "strap.allowable.load=0.5kN..0.9kN/200N", "0.5kN 0.7kN 0.9kN"},
		{"masses", "lift.capacity=100kg,300lb", "100kg 300lb"},
		{"words", "rib.species=white oak,red oak", "white oak,red oak"},
		{"a word with a comma in it", `rib.species="Douglas-fir, coast",white oak`, "Douglas-fir, coast,white oak"},
		{"words of a list", "springing.cut=plumb, radial ,level", "plumb,radial,level"},
		{"true and false", "ledger.packed=true,false", "true,false"},
		{"an element of a list", "strap.stations.2=30%..40%/5%", "30% 35% 40%"},
		{"a key of a leg", "route.2.width=800mm,900mm", "800mm 900mm"},
		{"a key that the spec leaves out", "vault.radius=3045mm", "3045mm"},
	} {
		s, err := study.New(base(t, "reading-room"), []string{row.vary}, options())
		if !assert.NoError(t, err, row.why) {
			continue
		}
		mark := " "
		if strings.Contains(row.want, ",") {
			mark = ","
		}
		var got []string
		for _, v := range s.Vary[0].Values {
			got = append(got, fmt.Sprint(v))
		}
		assert.Equal(t, row.want, strings.Join(got, mark), row.why)
	}
}

// What is wrong is said with the flag's own text before it.
func TestWrongValues(t *testing.T) {
	for _, row := range []struct{ vary, says string }{
		{"grid.along", "write KEY=VALUES"},
		{"=3", "write KEY=VALUES"},
		{"grid.alog=3", "there is no key grid.alog; is it grid.along?"},
		{"route.1.widht=3m", "is it route.*.width?"},
		{"grid=3", "grid is a table; vary one of its keys"},
		{"strap.stations=10%", "vary one of its elements, strap.stations.1"},
		{"strap.stations.9=10%", "the spec has no strap.stations.9"},
		{"rib.layer.1.stock=4/4", "the spec has no rib.layer.1"},
		{"project.units=metric,imperial", "does not change what is built"},
		{"accept.1.until=2030-01-01", "does not change what is built"},
		{"dryfit=1", "does not change what is built"},
		{"strap.allowable.source=a,b", "free text"},
		{"grid.along=", "a value is empty"},
		{"grid.along=3,,4", "a value is empty"},
		{"grid.along=three", "three is not a whole number"},
		{"grid.along=3.5", "3.5 is not a whole number"},
		{"grid.along=0..3", "0 is less than the minimum of 1"},
		{"grid.along=3..", "lacks an end"},
		{"grid.along=6..3", "is reversed; write 3..6"},
		{"grid.along=6..3/2", "is reversed; write 3..6/2"},
		{"grid.along=3..6/0", "the step 0 is not greater than zero"},
		{"grid.along=3..6/-1", "the step -1 is not greater than zero"},
		{"grid.along=3,4,3", "3 is given twice"},
		{"grid.along=1..10001", "more than 10000 values"},
		{"vault.rise=1mm..10m/0.0001mm", "more than 10000 values"},
		{"vault.rise=700mm..1000mm", "has no step; write 700mm..1000mm/STEP"},
		{"vault.rise=700mm..1000mm/0mm", "the step 0mm is not greater than zero"},
		{"vault.rise=1000mm..700mm/50mm", "is reversed"},
		{"vault.rise=700..1000/50", "no unit"},
		{"vault.rise=700kg", `unit "kg" does not belong here`},
		{"vault.rise=0mm", "greater than zero"},
		{"climate.shop.temperature=15C..70F/5C", "in one unit, C or F"},
		{"climate.shop.humidity=120%", "must be from 0% to 100%"},
		{"room.entry=bod", `"bod" is not "end" or "side"`},
		{"ledger.packed=yes", "yes is not true or false"},
		{"rib.species=wite oak", `is it "white oak"?`},
		{"skin.material=bendable plywod", `is it "bendable plywood"?`},
		{"route.1.going=200mm", "does not belong to a leg of kind vehicle"},
	} {
		_, err := study.New(base(t, "reading-room"), []string{row.vary}, options())
		if assert.Error(t, err, row.vary) {
			assert.True(t, strings.HasPrefix(err.Error(), "--vary "+row.vary+": "), err.Error())
			assert.ErrorContains(t, err, row.says, row.vary)
		}
	}
	_, err := study.New(base(t, "reading-room"), []string{"grid.along=3", "grid.along=4"}, options())
	assert.ErrorContains(t, err, "grid.along is varied twice")
	_, err = study.New(base(t, "reading-room"), nil, options())
	assert.ErrorContains(t, err, "nothing to vary")
	_, err = study.New(base(t, "reading-room"), []string{"grid.along=1..10000", "grid.around=1..10000", "panels.around=1..11"}, options())
	assert.ErrorContains(t, err, "more than 1000000000 options")
}

func TestPart(t *testing.T) {
	for _, text := range []string{"", "0/3", "4/3", "1", "1/0", "a/b", "1/2/3", "-1/2", "1/2 "} {
		_, err := study.ParsePart(text)
		assert.Error(t, err, text)
	}
	p, err := study.ParsePart("2/5")
	require.NoError(t, err)
	first, last := p.Options(12)
	assert.Equal(t, []int{4, 6}, []int{first, last})
}
