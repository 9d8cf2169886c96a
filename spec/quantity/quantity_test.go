package quantity_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"dryfit/spec/quantity"
)

// Sizes of the units: NIST SP 811, from memory. The inch, the pound and
// standard gravity are exact by definition, and all others follow.
const (
	inch   = 0.0254
	pound  = 0.45359237
	poundF = pound * 9.80665
)

var readings = []struct {
	unit quantity.Unit
	text string
	want float64
}{
	{quantity.Metre, "4200mm", 4.2},
	{quantity.Metre, "4.2m", 4.2},
	{quantity.Metre, "42cm", 0.42},
	{quantity.Metre, "0mm", 0},
	{quantity.Metre, "-12mm", -0.012},
	{quantity.Metre, " 60 mm ", 0.06},
	{quantity.Metre, "13ft 9in", 165 * inch},
	{quantity.Metre, `13'-9 1/2"`, 165.5 * inch},
	{quantity.Metre, `13' 9"`, 165 * inch},
	{quantity.Metre, "13′-9 1/2″", 165.5 * inch},
	{quantity.Metre, "13’ 9”", 165 * inch},
	{quantity.Metre, "13ft", 156 * inch},
	{quantity.Metre, "8'", 96 * inch},
	{quantity.Metre, "3/4in", 0.75 * inch},
	{quantity.Metre, `165 3/8"`, 165.375 * inch},
	{quantity.Metre, "5 1/2in", 5.5 * inch},
	{quantity.Metre, "5-1/2in", 5.5 * inch},
	{quantity.Metre, "2.5in", 2.5 * inch},
	{quantity.Metre, "-3/4in", -0.75 * inch},
	{quantity.Kilogram, "25kg", 25},
	{quantity.Kilogram, "55lb", 55 * pound},
	{quantity.Kilogram, "500g", 0.5},
	{quantity.Newton, "1.1kN", 1100},
	{quantity.Newton, "900N", 900},
	{quantity.Newton, "250lbf", 250 * poundF},
	{quantity.Pascal, "12.3GPa", 12.3e9},
	{quantity.Pascal, "15MPa", 15e6},
	{quantity.Pascal, "1.78e6psi", 1.78e6 * poundF / (inch * inch)},
	{quantity.KilogramPerCubicMetre, "680kg/m3", 680},
	{quantity.KilogramPerCubicMetre, "42lb/ft3", 42 * pound / math.Pow(12*inch, 3)},
	{quantity.Celsius, "21C", 21},
	{quantity.Celsius, "70F", 190.0 / 9},
	{quantity.Celsius, "-4°F", -20},
	{quantity.Radian, "180deg", math.Pi},
	{quantity.Radian, "0.5rad", 0.5},
	{quantity.Fraction, "25%", 0.25},
	{quantity.Fraction, "12.5%", 0.125},
}

func TestParse(t *testing.T) {
	for _, r := range readings {
		got, err := quantity.Parse(r.unit, r.text)
		require.NoError(t, err, r.text)
		assert.Equal(t, r.unit, got.Unit, r.text)
		assert.InDelta(t, r.want, got.SI, 1e-12*math.Abs(r.want), r.text)
	}
}

func TestParseSaysWhatIsWrong(t *testing.T) {
	lengths := `; write "2700mm", "2.7m", "8ft 10 1/4in" or "3/4in"`
	for _, c := range []struct {
		unit       quantity.Unit
		text, want string
	}{
		{quantity.Metre, "2700", "no unit" + lengths},
		{quantity.Metre, "", "not a number with a unit" + lengths},
		{quantity.Metre, "nan", "not a number with a unit" + lengths},
		{quantity.Metre, "infmm", "not a number with a unit" + lengths},
		{quantity.Metre, "27OOmm", `unit "OOmm" does not belong here` + lengths},
		{quantity.Metre, "5/4", "a nominal stock is not a length" + lengths},
		{quantity.Metre, "1/0in", "a fraction of nothing" + lengths},
		{quantity.Metre, "25kg", `unit "kg" does not belong here` + lengths},
		{quantity.Metre, "1e1000000mm", `unit "00000mm" does not belong here` + lengths},
		{quantity.Metre, "1234567890123456789mm", "more digits than a quantity may have (18)" + lengths},
		{quantity.Kilogram, "25mm", `unit "mm" does not belong here; write "25kg" or "55lb"`},
		{quantity.Celsius, "21", `no unit; write "21C" or "70F"`},
		{quantity.Fraction, "0.25", `no unit; write "25%"`},
	} {
		_, err := quantity.Parse(c.unit, c.text)
		assert.EqualError(t, err, c.want, c.text)
	}
}

func TestStockIsAName(t *testing.T) {
	n, err := quantity.Stock("8/4").Quarters()
	require.NoError(t, err)
	assert.Equal(t, 8, n)
	for _, text := range []string{"2in", "8/3", "0/4", "8"} {
		_, err := quantity.Stock(text).Quarters()
		assert.Error(t, err, text)
	}
}

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		system quantity.System
		value  quantity.Value
		want   string
	}{
		{quantity.Metric, quantity.Length(4.2).Value(), "4200mm"},
		{quantity.Metric, quantity.Length(0.01124).Value(), "11.2mm"},
		{quantity.Metric, quantity.Length(0.0004).Value(), "0.4mm"},
		{quantity.Metric, quantity.Length(-0.00001).Value(), "0mm"},
		{quantity.Metric, quantity.Mass(22.64).Value(), "22.6kg"},
		{quantity.Metric, quantity.Force(900).Value(), "0.90kN"},
		{quantity.Metric, quantity.Force(45.2).Value(), "45.2N"},
		{quantity.Metric, quantity.Stress(12.27e9).Value(), "12.27GPa"},
		{quantity.Metric, quantity.Share(0.255).Value(), "25.5%"},
		{quantity.Metric, quantity.Value{SI: 83.333, Unit: quantity.One}, "83.33"},
		{quantity.Metric, quantity.Value{SI: 80, Unit: quantity.One}, "80"},
		{quantity.Imperial, quantity.Length(165.5 * inch).Value(), `13'-9 1/2"`},
		{quantity.Imperial, quantity.Length(0.625 * inch).Value(), `5/8"`},
		{quantity.Imperial, quantity.Length(12 * inch).Value(), `1'-0"`},
		{quantity.Imperial, quantity.Length(12.5 * inch).Value(), `1'-0 1/2"`},
		{quantity.Imperial, quantity.Length(0).Value(), `0"`},
		{quantity.Imperial, quantity.Length(-2 * inch).Value(), `-2"`},
		{quantity.Imperial, quantity.Mass(pound * 55).Value(), "55lb"},
		{quantity.Imperial, quantity.Force(poundF * 100).Value(), "100lbf"},
		{quantity.Imperial, quantity.Temperature(190.0 / 9).Value(), "70F"},
		{quantity.Metric, quantity.Length(math.Inf(1)).Value(), "unlimited"},
	} {
		assert.Equal(t, c.want, c.system.Format(c.value))
	}
}

func TestPairTellsApart(t *testing.T) {
	a, b := quantity.Metric.Pair(quantity.Length(4.20004).Value(), quantity.Length(4.2).Value())
	assert.Equal(t, []string{"4200.04mm", "4200mm"}, []string{a, b})
	a, b = quantity.Imperial.Pair(quantity.Length(10.02*inch).Value(), quantity.Length(10*inch).Value())
	assert.Equal(t, []string{`10 1/64"`, `10"`}, []string{a, b})
	a, b = quantity.Imperial.Pair(quantity.Length(10.001*inch).Value(), quantity.Length(10*inch).Value())
	assert.Equal(t, []string{`10.001"`, `10"`}, []string{a, b})
	a, b = quantity.Metric.Pair(quantity.Force(900.4).Value(), quantity.Force(900).Value())
	assert.Equal(t, []string{"0.9004kN", "0.9000kN"}, []string{a, b})
}

func TestPairNeverPrintsEqualWhatDiffers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		system := rapid.SampledFrom([]quantity.System{quantity.Metric, quantity.Imperial}).Draw(t, "system")
		a := rapid.Float64Range(0.001, 20).Draw(t, "a")
		b := a * (1 + rapid.Float64Range(1e-6, 1e-3).Draw(t, "more"))
		pa, pb := system.Pair(quantity.Length(a).Value(), quantity.Length(b).Value())
		if pa == pb {
			t.Fatalf("%v and %v both print %s", a, b, pa)
		}
	})
}

// What is printed is read back, to the precision it is printed in: half a
// tenth of a millimetre, half a sixteenth of an inch.
func TestFormatReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.Float64Range(0, 0.99).Draw(t, "m")
		for system, half := range map[quantity.System]float64{quantity.Metric: 0.5e-4, quantity.Imperial: inch / 32} {
			text := system.Format(quantity.Length(m).Value())
			got, err := quantity.Parse(quantity.Metre, text)
			if err != nil || math.Abs(got.SI-m) > half*(1+1e-9) {
				t.Fatalf("%v prints %s, which reads as %v (%v)", m, text, got.SI, err)
			}
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, r := range readings {
		f.Add(uint8(r.unit), r.text)
	}
	f.Add(uint8(quantity.Metre), "1/0in")
	f.Fuzz(func(t *testing.T, unit uint8, text string) {
		u := quantity.Unit(unit)
		if u < quantity.One || u > quantity.Fraction {
			return
		}
		v, err := quantity.Parse(u, text)
		if err == nil && (math.IsNaN(v.SI) || v.Unit != u) {
			t.Fatalf("%q reads as %v", text, v)
		}
		if err == nil {
			quantity.Metric.Format(v)
			quantity.Imperial.Format(v)
		}
	})
}

func BenchmarkParse(b *testing.B) {
	for _, text := range []string{"4200mm", `13'-9 1/2"`} {
		b.Run(text, func(b *testing.B) {
			for b.Loop() {
				if _, err := quantity.Parse(quantity.Metre, text); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
