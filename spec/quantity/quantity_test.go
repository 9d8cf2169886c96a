package quantity_test

import (
	"math"
	"regexp"
	"strings"
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
	{quantity.Metre, "+12mm", 0.012},
	{quantity.Metre, "1e-3m", 0.001},
	{quantity.Metre, "1e+03mm", 1},
	{quantity.Metre, "13'-9½\"", 165.5 * inch},
	{quantity.Metre, "⅝″", 0.625 * inch},
	{quantity.Metre, "13' – 9 1⁄2”", 165.5 * inch},
	{quantity.Metre, "4200\u00a0mm", 4.2},
	{quantity.Metre, "−12mm", -0.012},
	{quantity.Kilogram, "25kg", 25},
	{quantity.Kilogram, "55lb", 55 * pound},
	{quantity.Kilogram, "500g", 0.5},
	{quantity.Kilogram, "8oz", pound / 2},
	{quantity.Newton, "1.1kN", 1100},
	{quantity.Newton, "900N", 900},
	{quantity.Newton, "250lbf", 250 * poundF},
	{quantity.Newton, "1.5kip", 1500 * poundF},
	{quantity.Pascal, "12.3GPa", 12.3e9},
	{quantity.Pascal, "15MPa", 15e6},
	{quantity.Pascal, "20kPa", 20e3},
	{quantity.Pascal, "500Pa", 500},
	{quantity.Pascal, "36ksi", 36e3 * poundF / (inch * inch)},
	{quantity.Pascal, "1.78e6psi", 1.78e6 * poundF / (inch * inch)},
	{quantity.KilogramPerCubicMetre, "680kg/m3", 680},
	{quantity.KilogramPerCubicMetre, "680 kg/m³", 680},
	{quantity.KilogramPerCubicMetre, "42lb/ft3", 42 * pound / math.Pow(12*inch, 3)},
	{quantity.Celsius, "21C", 21},
	{quantity.Celsius, "70F", 190.0 / 9},
	{quantity.Celsius, "-4°F", -20},
	{quantity.Radian, "180deg", math.Pi},
	{quantity.Radian, "90°", math.Pi / 2},
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
		{quantity.Metre, "1e1000000mm", `unit "e1000000mm" does not belong here` + lengths},
		{quantity.Metre, strings.Repeat("1", 41) + "mm", "more digits than a quantity may have (40)" + lengths},
		{quantity.Metre, "60" + strings.Repeat("m", 1000), "not a number with a unit" + lengths},
		{quantity.Metre, "mm", "not a number with a unit" + lengths},
		{quantity.Metre, "-", "not a number with a unit" + lengths},
		{quantity.Metre, "--5in", "not a number with a unit" + lengths},
		{quantity.Metre, "+-5in", "not a number with a unit" + lengths},
		{quantity.Metre, "2³mm", `unit "³mm" does not belong here` + lengths},
		{quantity.Metre, "12°mm", `unit "°mm" does not belong here` + lengths},
		{quantity.Metre, "4,2m", "a comma in a number, whose decimal mark is a point" + lengths},
		{quantity.Metre, "60MM", `unit "MM" is written "mm"` + lengths},
		{quantity.Metre, "13'-", `unit "'-" does not belong here` + lengths},
		{quantity.Metre, `13' 19"`, "twelve inches or more after feet" + lengths},
		{quantity.Metre, `9 11/8"`, "a fraction that is not less than one after whole inches" + lengths},
		{quantity.Newton, "250lb", `unit "lb" does not belong here; write "0.9kN", "900N" or "200lbf"`},
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
		{quantity.Metric, quantity.Length(0.01125).Value(), "11.3mm"},
		{quantity.Metric, quantity.Length(math.Nextafter(0.01125, 0)).Value(), "11.3mm"},
		{quantity.Metric, quantity.Length(-0.01125).Value(), "-11.3mm"},
		{quantity.Metric, quantity.Force(math.Nextafter(100, 0)).Value(), "0.10kN"},
		{quantity.Metric, quantity.Stress(1e-9).Value(), "0.00MPa"},
		{quantity.Imperial, quantity.Length(math.Nextafter(inch/32, 0)).Value(), `1/16"`},
		{quantity.Metric, quantity.Length(-0.00001).Value(), "-0.01mm"},
		{quantity.Metric, quantity.Mass(22.64).Value(), "22.6kg"},
		{quantity.Metric, quantity.Force(900).Value(), "0.90kN"},
		{quantity.Metric, quantity.Mass(0.0123).Value(), "0.012kg"},
		{quantity.Metric, quantity.Force(45.2).Value(), "45.2N"},
		{quantity.Metric, quantity.Stress(0).Value(), "0.00MPa"},
		{quantity.Metric, quantity.Stress(4200).Value(), "0.004MPa"},
		{quantity.Metric, quantity.Stress(1.2e5).Value(), "0.12MPa"},
		{quantity.Metric, quantity.Value{SI: 9.80665, Unit: quantity.NewtonPerKilogram}, "9.81N/kg"},
		{quantity.Metric, quantity.Stress(12.27e9).Value(), "12.27GPa"},
		{quantity.Metric, quantity.Share(0.255).Value(), "25.5%"},
		{quantity.Metric, quantity.Value{SI: 83.333, Unit: quantity.One}, "83.33"},
		{quantity.Metric, quantity.Value{SI: 80, Unit: quantity.One}, "80"},
		{quantity.Metric, quantity.Value{SI: 0.00266, Unit: quantity.SquareMetre}, "2660mm2"},
		{quantity.Metric, quantity.Value{SI: 0.1, Unit: quantity.SquareMetre}, "0.1m2"},
		{quantity.Imperial, quantity.Value{SI: 2.8125 * inch * inch, Unit: quantity.SquareMetre}, "2.813in2"},
		{quantity.Imperial, quantity.Value{SI: 0.1, Unit: quantity.SquareMetre}, "1.08ft2"},
		{quantity.Metric, quantity.Value{SI: 49.2, Unit: quantity.NewtonPerMetre}, "49.2N/m"},
		{quantity.Metric, quantity.Value{SI: 1000, Unit: quantity.NewtonPerMetre}, "1N/mm"},
		{quantity.Imperial, quantity.Value{SI: 2.02 * poundF / (12 * inch), Unit: quantity.NewtonPerMetre}, "2.02lbf/ft"},
		{quantity.Imperial, quantity.Value{SI: 10 * poundF / inch, Unit: quantity.NewtonPerMetre}, "10lbf/in"},
		{quantity.Imperial, quantity.Length(165.5 * inch).Value(), `13'-9 1/2"`},
		{quantity.Imperial, quantity.Length(0.625 * inch).Value(), `5/8"`},
		{quantity.Imperial, quantity.Length(12 * inch).Value(), `1'-0"`},
		{quantity.Imperial, quantity.Length(12.5 * inch).Value(), `1'-0 1/2"`},
		{quantity.Imperial, quantity.Length(0).Value(), `0"`},
		{quantity.Imperial, quantity.Length(-2 * inch).Value(), `-2"`},
		{quantity.Imperial, quantity.Mass(pound * 55).Value(), "55lb"},
		{quantity.Imperial, quantity.Force(poundF * 100).Value(), "100lbf"},
		{quantity.Imperial, quantity.Temperature(190.0 / 9).Value(), "70F"},
		{quantity.Imperial, quantity.Stress(14.52 * poundF / (inch * inch)).Value(), "14.5psi"},
		{quantity.Imperial, quantity.Length(1e30 * inch).Value(), `1000000000000000019884624838656"`},
		{quantity.Imperial, quantity.Length(math.NaN()).Value(), "no figure"},
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
	a, b = quantity.Metric.Pair(quantity.Force(99.97).Value(), quantity.Force(100).Value())
	assert.Equal(t, []string{"99.97N", "100N"}, []string{a, b}, "not 100N beside 0.10kN")
	a, b = quantity.Metric.Pair(quantity.Force(900).Value(), quantity.Force(45).Value())
	assert.Equal(t, []string{"900N", "45N"}, []string{a, b}, "one unit for both")
	a, b = quantity.Metric.Pair(quantity.Length(1).Value(), quantity.Length(1).Value())
	assert.Equal(t, []string{"1000mm", "1000mm"}, []string{a, b})
}

// Forces side by side are in one multiple with as many decimals, three digits of
// the least at the least; other quantities are as they are by themselves.
func TestAlike(t *testing.T) {
	forces := func(list ...float64) (out []quantity.Value) {
		for _, f := range list {
			out = append(out, quantity.Force(f).Value())
		}
		return out
	}
	assert.Equal(t, []string{"67.8N", "0.0N", "235.1N", "-5.0N"}, quantity.Metric.Alike(forces(67.8, 0, 235.1, -5)))
	assert.Equal(t, []string{"162.6N", "325.2N"}, quantity.Metric.Alike(forces(162.6, 325.2)), "not 0.16kN")
	assert.Equal(t, []string{"1.63kN", "3.25kN"}, quantity.Metric.Alike(forces(1626, 3252)))
	assert.Equal(t, []string{"15.0lbf"}, quantity.Imperial.Alike(forces(15*poundF)))
	assert.Equal(t, []string{"7144mm", "0.4mm"}, quantity.Metric.Alike([]quantity.Value{quantity.Length(7.144).Value(), quantity.Length(0.0004).Value()}))
	stiff := []quantity.Value{{SI: 8.9296e6, Unit: quantity.NewtonPerMetre}, {SI: math.Inf(1), Unit: quantity.NewtonPerMetre}}
	assert.Equal(t, []string{"8929.6N/mm", "unlimited"}, quantity.Metric.Alike(stiff))
}

// parsed are the kinds that a spec states, with the sizes they come in.
var parsed = []struct {
	unit      quantity.Unit
	low, high float64
}{
	{quantity.Metre, 1e-4, 50},
	{quantity.Kilogram, 1e-2, 2000},
	{quantity.Newton, 1, 1e5},
	{quantity.Pascal, 1e4, 3e10},
	{quantity.KilogramPerCubicMetre, 50, 2000},
	{quantity.Celsius, -40, 60},
	{quantity.Radian, 0, math.Pi},
	{quantity.Fraction, 0, 1},
	{quantity.Hour, 0, 1000},
}

var systems = []quantity.System{quantity.Metric, quantity.Imperial}

func TestPairNeverPrintsEqualWhatDiffers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		system := rapid.SampledFrom(systems).Draw(t, "system")
		kind := rapid.SampledFrom(parsed).Draw(t, "kind")
		a := rapid.Float64Range(max(kind.low, kind.high/1e6), kind.high).Draw(t, "a")
		b := a * (1 + rapid.Float64Range(1e-6, 1e-3).Draw(t, "more"))
		pa, pb := system.Pair(quantity.Value{SI: a, Unit: kind.unit}, quantity.Value{SI: b, Unit: kind.unit})
		qa, errA := quantity.Parse(kind.unit, pa)
		qb, errB := quantity.Parse(kind.unit, pb)
		if errA != nil || errB != nil || !(qa.SI < qb.SI) {
			t.Fatalf("%v and %v print %s and %s", a, b, pa, pb)
		}
	})
}

// What is printed is read back, to the precision it is printed in: half a
// sixteenth of an inch, else half of the last digit.
func TestFormatReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		system := rapid.SampledFrom(systems).Draw(t, "system")
		kind := rapid.SampledFrom(parsed).Draw(t, "kind")
		x := rapid.Float64Range(kind.low, kind.high).Draw(t, "x")
		text := system.Format(quantity.Value{SI: x, Unit: kind.unit})
		got, err := quantity.Parse(kind.unit, text)
		if err != nil || !(math.Abs(got.SI-x) <= precision(system, kind.unit, x)*(1+1e-9)) {
			t.Fatalf("%v prints %s, which reads as %v (%v)", x, text, got.SI, err)
		}
	})
}

// precision is half of the last digit that a quantity prints with, in SI.
func precision(s quantity.System, u quantity.Unit, x float64) float64 {
	pick := func(metric, imperial float64) float64 {
		if s == quantity.Imperial {
			return imperial / 2
		}
		return metric / 2
	}
	psi := poundF / (inch * inch)
	switch {
	case u == quantity.Metre && x < 1:
		return pick(1e-4, inch/16)
	case u == quantity.Metre:
		return pick(1e-3, inch/16)
	case u == quantity.Kilogram:
		return pick(0.1, 0.1*pound)
	case u == quantity.Newton && x < 100:
		return pick(0.1, 0.1*poundF)
	case u == quantity.Newton:
		return pick(10, 0.1*poundF)
	case u == quantity.Pascal && x < 1e9:
		return pick(1e4, psi)
	case u == quantity.Pascal:
		return pick(1e7, psi)
	case u == quantity.KilogramPerCubicMetre:
		return pick(1, 0.1*pound/math.Pow(12*inch, 3))
	case u == quantity.Celsius:
		return pick(0.1, 0.1*5/9)
	case u == quantity.Radian:
		return pick(0.1*math.Pi/180, 0.1*math.Pi/180)
	case u == quantity.Fraction:
		return pick(0.001, 0.001)
	default:
		return pick(1, 1)
	}
}

// minusNought is what must never be printed.
var minusNought = regexp.MustCompile(`^-0(\.0*)?\D*$`)

func FuzzParse(f *testing.F) {
	for _, r := range readings {
		f.Add(uint8(r.unit), r.text)
	}
	f.Add(uint8(quantity.Metre), "1/0in")
	all := patterns()
	f.Fuzz(func(t *testing.T, unit uint8, text string) {
		u := quantity.Unit(unit)
		if u < quantity.One || u > quantity.Fraction {
			return
		}
		v, err := quantity.Parse(u, text)
		if err == nil && (math.IsNaN(v.SI) || math.IsInf(v.SI, 0) || v.Unit != u) {
			t.Fatalf("%q reads as %v", text, v)
		}
		if p := all[u][quantity.Signed]; err == nil && p != nil && !p.MatchString(text) {
			t.Fatalf("%q is read, and its pattern does not match it", text)
		}
		for _, system := range systems {
			if printed := system.Format(v); err == nil && minusNought.MatchString(printed) {
				t.Fatalf("%q prints %s", text, printed)
			}
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

func TestASixtyFourthShows(t *testing.T) {
	for text, m := range map[string]float64{`1/64"`: inch / 64, `-1/64"`: -inch / 64, `1/16"`: inch / 16, `0.0004"`: 1e-5, `0"`: 1e-8} {
		assert.Equal(t, text, quantity.Imperial.Format(quantity.Length(m).Value()))
	}
}
