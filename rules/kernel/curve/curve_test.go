package curve_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mathext"
	"pgregory.net/rapid"

	"dryfit/rules/kernel/curve"
)

func must(t testing.TB, c curve.Curve, err error) curve.Curve {
	t.Helper()
	require.NoError(t, err)
	return c
}

// The table of segments for radius 1: Machinery's Handbook, 31st edition,
// table after p. 83. Columns: angle, length, rise, chord, area, to its six
// digits.
func TestSegmentTable(t *testing.T) {
	for _, r := range [][5]float64{
		{5, 0.087266, 0.000952, 0.087239, 0.000055},
		{10, 0.174533, 0.003805, 0.174311, 0.000442},
		{20, 0.349066, 0.015192, 0.347296, 0.003523},
		{30, 0.523599, 0.034074, 0.517638, 0.011799},
		{40, 0.698132, 0.060307, 0.684040, 0.027672},
		{45, 0.785398, 0.076120, 0.765367, 0.039146},
		{50, 0.872665, 0.093692, 0.845237, 0.053310},
		{60, 1.047198, 0.133975, 1.000000, 0.090586},
		{70, 1.221730, 0.180848, 1.147153, 0.141019},
		{72, 1.256637, 0.190983, 1.175571, 0.152790},
		{80, 1.396263, 0.233956, 1.285575, 0.205728},
		{90, 1.570796, 0.292893, 1.414214, 0.285398},
		{100, 1.745329, 0.357212, 1.532089, 0.380261},
		{110, 1.919862, 0.426424, 1.638304, 0.490085},
		{120, 2.094395, 0.500000, 1.732051, 0.614185},
		{130, 2.268928, 0.577382, 1.812616, 0.751442},
		{140, 2.443461, 0.657980, 1.879385, 0.900337},
		{150, 2.617994, 0.741181, 1.931852, 1.058997},
		{160, 2.792527, 0.826352, 1.969616, 1.225253},
		{170, 2.967060, 0.912844, 1.992389, 1.396706},
		{180, 3.141593, 1.000000, 2.000000, 1.570796},
	} {
		angle := r[0] * math.Pi / 180
		c := must2(t)(curve.Segmental(2*math.Sin(angle/2), 1-math.Cos(angle/2)))
		name := fmt.Sprint(r[0], " degrees")
		assert.InDelta(t, 1, c.TightestRadius(), 1e-9, name)
		assert.InDelta(t, r[1], c.Length(), 0.6e-6, name)
		assert.InDelta(t, r[2], c.At(c.Length()/2).Z, 0.6e-6, name)
		assert.InDelta(t, r[3], c.At(c.Length()).Y, 0.6e-6, name)
		assert.InDelta(t, r[4], c.Area(), 0.6e-6, name)
		assert.InDelta(t, angle/2, c.HalfAngle(), 1e-9, name)
	}
}

func must2(t testing.TB) func(curve.Curve, error) curve.Curve {
	return func(c curve.Curve, err error) curve.Curve { t.Helper(); return must(t, c, err) }
}

func TestSegmentExamples(t *testing.T) {
	for _, e := range []struct {
		source            string
		chord, rise       float64
		radius, arc, area float64
	}{
		{"Machinery's Handbook 31st edition, p. 79: r = 8 1/3", 16, 6, 25.0 / 3, 21.4500, 70.7085},
		{"Machinery's Handbook 31st edition, p. 79: r = 60", 59.8665, 8, 60, 62.6778, 323.8039},
		{"Machinery's Handbook 31st edition, p. 50", 13.26650, 2, 12, 14.0565, 18.0062},
		{"a help page on circular sections", 21, 6, 12.1875, 25.308373, 89.254148},
	} {
		c := must2(t)(curve.Segmental(e.chord, e.rise))
		assert.InEpsilon(t, e.radius, c.TightestRadius(), 1e-5, e.source)
		assert.InEpsilon(t, e.arc, c.Length(), 1e-5, e.source)
		assert.InEpsilon(t, e.area, c.Area(), 1e-5, e.source)
	}
}

// Constructions of a basket handle with a = half the span: the first, by the
// quarter points and an equilateral triangle, is read in Basket-Handle Arch and
// Its Optimum Symmetry Generation, construction 3.1; the others follow from
// tangency.
func TestThreeCentred(t *testing.T) {
	for _, e := range []struct {
		a, b, r, crown, half, length float64
	}{
		{1, (3 - math.Sqrt(3)) / 2, 0.5, 1.5, 30, 2 * (math.Pi/6*1.5 + math.Pi/3*0.5)},
		{5, 3, 2, 7, 36.8699, 12.7182},
		{60, 36, 24, 84, 36.8699, 152.6184},
		{60, 36, 20, 78, 43.6028, 151.1093},
		{60, 36, 26.8057, 91.3238, 30.9638, 153.9463},
		{4, 3, 2.5, 5, 36.8699, 11.0715},
		{60, 36, 27.2154, 92.7846, 30, 154.1636},
		{5, 3, 2.2679, 7.7321, 30, 12.8470},
	} {
		byHaunch := must2(t)(curve.ThreeCentredByHaunch(2*e.a, e.b, e.r))
		byCrown := must2(t)(curve.ThreeCentredByCrown(2*e.a, e.b, e.crown))
		for _, c := range []curve.Curve{byHaunch, byCrown} {
			assert.InEpsilon(t, e.length, c.Length(), 2e-5)
			assert.InEpsilon(t, e.r, c.TightestRadius(), 1e-4)
			assert.InEpsilon(t, e.crown, 1/c.Curvature(c.Length()/2), 1e-4)
			assert.InDelta(t, e.b, c.At(c.Length()/2).Z, 1e-9*e.a)
			assert.InDelta(t, math.Pi/2, c.HalfAngle(), 1e-9, "upright at the springing")
		}
	}
}

// Radii by span, of pointed arches: names and their radii are read in the Brick
// Development Association's note on arches; the figures follow from Pythagoras.
func TestPointed(t *testing.T) {
	for _, e := range [][4]float64{ // R/s, h/s, length/s, area/s²
		{0.5, 0.5, 1.570796, 0.392699},
		{2.0 / 3, 0.645497, 1.757488, 0.478246},
		{0.75, 0.707107, 1.846439, 0.515638},
		{1, 0.866025, 2.094395, 0.614185},
		{1.25, 1, 2.318238, 0.698899},
		{2, 1.322876, 2.890937, 0.906624},
	} {
		for _, c := range []curve.Curve{
			must2(t)(curve.PointedByRadius(1, e[0])), must2(t)(curve.PointedByRise(1, e[1])),
		} {
			assert.InDelta(t, e[1], c.At(c.Length()/2).Z, 1e-6)
			assert.InDelta(t, e[2], c.Length(), 2e-6)
			assert.InDelta(t, e[3], c.Area(), 2e-6)
			assert.InDelta(t, e[0], c.TightestRadius(), 2e-6)
		}
	}
}

// Half perimeters by half axis: the complete elliptic integral of the second
// kind; the columns agree with the handbook's series (Standard Handbook of
// Petroleum and Natural Gas Engineering, p. 11).
// The length of any half ellipse is 2aE(m), m = 1 − b²/a²: compared with
// gonum's complete elliptic integral of the second kind.
func TestEllipseAgainstGonum(t *testing.T) {
	for _, ratio := range []float64{0.05, 0.1, 0.3, 0.5, 0.77, 0.99, 1} {
		c := must2(t)(curve.Elliptical(2, ratio))
		assert.InEpsilon(t, 2*mathext.CompleteE(1-ratio*ratio), c.Length(), 1e-9, "b/a %v", ratio)
	}
}

func TestEllipse(t *testing.T) {
	for _, e := range [][2]float64{
		{1, 3.141593},
		{0.9, 2.986580},
		{0.8, 2.836167},
		{0.75, 2.762937},
		{0.6, 2.552700},
		{0.5, 2.422112},
		{0.4, 2.301311},
		{0.25, 2.144605},
		{0.2, 2.101004},
	} {
		c := must2(t)(curve.Elliptical(2, e[0]))
		assert.InDelta(t, e[1], c.Length(), 0.6e-6, "b/a %v", e[0])
		assert.InDelta(t, math.Pi*e[0]/2, c.Area(), 1e-9)
		assert.InDelta(t, e[0]*e[0], c.TightestRadius(), 1e-9, "b²/a at the springing")
		assert.InDelta(t, 1/e[0], 1/c.Curvature(c.Length()/2), 1e-9, "a²/b at the crown")
	}
}

// profiles draws a curve of any profile.
func profiles(t *rapid.T) curve.Curve {
	span := rapid.Float64Range(0.5, 20).Draw(t, "span")
	share := rapid.Float64Range(0.03, 0.49).Draw(t, "rise by span")
	k := rapid.Float64Range(0.2, 0.8).Draw(t, "k")
	var c curve.Curve
	var err error
	switch rapid.SampledFrom([]string{"flat", "segmental", "semicircular", "three-centred", "pointed", "elliptical"}).Draw(t, "profile") {
	case "flat":
		c, err = curve.Flat(span)
	case "segmental":
		c, err = curve.Segmental(span, share*span)
	case "semicircular":
		c, err = curve.Semicircular(span)
	case "three-centred":
		c, err = curve.ThreeCentredByHaunch(span, share*span, k*share*span)
	case "pointed":
		c, err = curve.PointedByRadius(span, (0.5+2*k)*span)
	default:
		c, err = curve.Elliptical(span, 2*share*span)
	}
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func near(a, b curve.Point) float64 { return math.Hypot(a.Y-b.Y, a.Z-b.Z) }

func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := profiles(t)
		l := c.Length()
		s := rapid.Float64Range(0.001, 0.999).Draw(t, "station") * l
		at, tangent := c.At(s), c.Tangent(s)

		if d := math.Hypot(tangent.Y, tangent.Z) - 1; math.Abs(d) > 1e-12 {
			t.Fatalf("the tangent is %v too long", d)
		}
		if d := c.Between(0, s).Length() + c.Between(s, l).Length() - l; math.Abs(d) > 1e-9*l {
			t.Fatalf("lengths do not add up: %v", d)
		}
		if d := near(c.Between(s/2, l).At(s/2), at); d > 1e-9*l {
			t.Fatalf("a part is not where it was: %v", d)
		}
		mirrored := c.At(l - s)
		mirrored.Y = c.At(l).Y - mirrored.Y
		if d := near(mirrored, at); d > 1e-9*l {
			t.Fatalf("not symmetrical: %v", d)
		}
		if d := c.At(c.AtY(at.Y)).Y - at.Y; math.Abs(d) > 1e-9*l {
			t.Fatalf("does not pass its own y: %v", d)
		}
	})
}

// Curvature is the turn of the tangent by length, by central differences.
func TestCurvatureIsTheTurnOfTheTangent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := profiles(t)
		h := 1e-5 * c.Length()
		s := rapid.Float64Range(0.02, 0.48).Draw(t, "station") * c.Length()
		for _, corner := range c.Corners() {
			if math.Abs(s-corner) < 2*h {
				return
			}
		}
		a, b := c.Tangent(s-h), c.Tangent(s+h)
		turn := math.Asin(-(a.Y*b.Z - a.Z*b.Y))
		if d := turn/(2*h) - c.Curvature(s); math.Abs(d) > 1e-4*(1/c.TightestRadius()) {
			t.Fatalf("off by %v", d)
		}
	})
}

// A parallel is at its distance along the normal, its radius is longer by it,
// and its length by the distance times the turn.
func TestOffset(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := profiles(t)
		d := rapid.Float64Range(0.001, 0.2).Draw(t, "distance") * c.Length()
		o, err := c.Offset(d)
		if err != nil {
			t.Fatal(err)
		}
		turn := 0.0
		corners := c.Corners()
		for i := range len(corners) - 1 {
			a, b := c.Tangent(corners[i]), c.Between(corners[i], corners[i+1])
			e := b.Tangent(b.Length())
			turn += math.Abs(math.Atan2(a.Y*e.Z-a.Z*e.Y, a.Y*e.Y+a.Z*e.Z)) // of a half turn either sign
		}
		mitres := 0.0 // both arcs of a corner run on to the axis
		for _, s := range corners[1 : len(corners)-1] {
			r := 1 / c.Curvature(s)
			half := r * math.Sin(c.Kink(s)) // of the way between their centres
			mitres += 2 * (r + d) * (math.Asin(half/r) - math.Asin(half/(r+d)))
		}
		if miss := o.Length() - c.Length() - d*turn - mitres; math.Abs(miss) > 1e-9*c.Length() {
			t.Fatalf("length is off by %v", miss)
		}
		if r := c.TightestRadius(); !math.IsInf(r, 1) && math.Abs(o.TightestRadius()-r-d) > 1e-9*c.Length() {
			t.Fatalf("radius %v on %v", o.TightestRadius(), r)
		}
		n := curve.Normal(c.Tangent(0))
		want := curve.Point{Y: c.At(0).Y + d*n.Y, Z: c.At(0).Z + d*n.Z}
		if miss := near(o.At(0), want); miss > 1e-9*c.Length() {
			t.Fatalf("not along the normal: %v", miss)
		}
	})
}

func TestOffsetFolds(t *testing.T) {
	c := must2(t)(curve.Semicircular(2))
	_, err := c.Offset(-1)
	var fold *curve.FoldError
	assert.True(t, errors.As(err, &fold))
}

// The area agrees with that of a fine polygon.
func TestArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := profiles(t)
		points := c.Polyline(500)
		area := 0.0
		for i, p := range points {
			q := points[(i+1)%len(points)]
			area += (p.Y*q.Z - p.Z*q.Y) / 2
		}
		if math.Abs(math.Abs(area)-c.Area()) > 1e-3*(c.Area()+1e-9) {
			t.Fatalf("area %v, by a polygon %v", c.Area(), area)
		}
	})
}

func TestImpossible(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	call := func(_ curve.Curve, err error) error { return err }
	for _, c := range []struct {
		name      string
		err       error
		dimension string
		over, to  float64
	}{
		{"segment over half the span", call(curve.Segmental(4, 2.1)), "rise", 0, 2},
		{"no rise", call(curve.Segmental(4, 0)), "rise", 0, 2},
		{"rise not a number", call(curve.Segmental(4, nan)), "rise", 0, 2},
		{"span not a number", call(curve.Segmental(nan, 1)), "span", 0, inf},
		{"endless span", call(curve.Flat(inf)), "span", 0, inf},
		{"negative span", call(curve.Semicircular(-1)), "span", 0, inf},
		{"haunch over the rise", call(curve.ThreeCentredByHaunch(10, 3, 3)), "haunch radius", 0, 3},
		{"crown too tight", call(curve.ThreeCentredByCrown(10, 3, 5)), "crown radius", 34.0 / 6, inf},
		{"three-centred as high as half its span", call(curve.ThreeCentredByHaunch(10, 5, 2)), "rise", 0, 5},
		{"pointed too low", call(curve.PointedByRise(10, 4)), "rise", 5, inf},
		{"pointed radius too short", call(curve.PointedByRadius(10, 4)), "radius", 5, inf},
		{"ellipse without rise", call(curve.Elliptical(10, -1)), "rise", 0, inf},
	} {
		var e *curve.ImpossibleError
		require.True(t, errors.As(c.err, &e), c.name)
		assert.Equal(t, c.dimension, e.Dimension, c.name)
		assert.InDelta(t, c.over, e.Over, 1e-12, c.name)
		assert.Equal(t, c.to, e.To, c.name)
	}
}

func BenchmarkSegmental(b *testing.B) {
	for b.Loop() {
		if _, err := curve.Segmental(4.2, 0.84); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkElliptical(b *testing.B) {
	for b.Loop() {
		if _, err := curve.Elliptical(4.2, 0.84); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAt(b *testing.B) {
	for name, c := range map[string]curve.Curve{
		"arc":     must2(b)(curve.Segmental(4.2, 0.84)),
		"ellipse": must2(b)(curve.Elliptical(4.2, 0.84)),
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				c.At(1)
			}
		})
	}
}

// An ellipse that is higher than half of its span is tightest at its crown, a²/b, also
// of a piece that holds the crown off its middle; a lower one at its springing, b²/a
// (closed form).
func TestTightestOfAnEllipse(t *testing.T) {
	high, err := curve.Elliptical(2, 1.5)
	require.NoError(t, err)
	assert.InDelta(t, 1/1.5, high.TightestRadius(), 1e-9)
	assert.InDelta(t, 1/1.5, high.Between(0.2, high.Length()-0.9).TightestRadius(), 1e-9)
	low, err := curve.Elliptical(2, 0.5)
	require.NoError(t, err)
	assert.InDelta(t, 0.25, low.TightestRadius(), 1e-9)
}
