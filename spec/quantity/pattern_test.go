package quantity_test

import (
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"dryfit/spec/quantity"
)

var units = []quantity.Unit{
	quantity.Metre, quantity.Kilogram, quantity.Newton, quantity.Pascal, quantity.KilogramPerCubicMetre,
	quantity.Celsius, quantity.Radian, quantity.Fraction, quantity.Hour,
}

// fits is what a key of each kind takes of the numbers that Parse reads.
var fits = map[quantity.Allowed]func(float64) bool{
	quantity.Signed:      func(float64) bool { return true },
	quantity.NotNegative: func(v float64) bool { return v >= 0 },
	quantity.Positive:    func(v float64) bool { return v > 0 },
	quantity.Percentage:  func(v float64) bool { return v >= 0 && v <= 1 },
	quantity.Bearing:     func(v float64) bool { return v >= 0 && v < 2*math.Pi },
}

func patterns() map[quantity.Unit]map[quantity.Allowed]*regexp.Regexp {
	out := map[quantity.Unit]map[quantity.Allowed]*regexp.Regexp{}
	for _, u := range units {
		out[u] = map[quantity.Allowed]*regexp.Regexp{}
		for a := range fits {
			if a == quantity.Percentage && u != quantity.Fraction || a == quantity.Bearing && u != quantity.Radian || a != quantity.Signed && u == quantity.Celsius {
				continue // no key has such a one
			}
			out[u][a] = regexp.MustCompile(quantity.Pattern(u, a))
		}
	}
	return out
}

// slots are what a quantity is written with, well and badly, in its order; of
// each something is taken.
var slots = [][]string{
	{"", "", "", " ", "\u00a0", "\u3000", "\n"},
	{"", "", "", "+", "-", "−", "–", "--"},
	{"0", "0", "7", "11", "012", "90", "100", "101", "359.9", "360", "1.5", "0.0", "0.25", "1e1", "0e5", "2E-2", "1e100", ".5", "1,5", ""},
	{"", "", "", "", " 1/2", "-3/4", "½", " ⅞", "/2", "⁄4", " 0/4", "1/0", "½0"},
	{"", "", "", " ", "\t"},
	strings.Split("mm|cm|m|in|ft|'|′|\"|”|''|kg|g|lb|oz|kN|N|lbf|kip|GPa|MPa|kPa|Pa|psi|ksi|kg/m3|kg/m³|kg⁄m3|lb/ft3|lb/ft³|"+
		"C|F|°C|deg|rad|°|%|h|furlongs||MM", "|"),
	{"", "", "-", " - ", " ", "–"},
	{"", "", "", "0", "0.0", "7", "9.5", "11", "12", "3e0"},
	{"", "", " 1/2", "-3/4", "½", "/2", " 0/4", "3/8"},
	{"", "", "in", "\"", "″", " in", "ft", "mm"},
}

// exceptions are what a pattern takes and Parse does not, which compares
// numbers.
var exceptions = []string{"fraction that is not less than one", "twelve inches or more", "more digits"}

// Whatever is read is matched, and what is matched is read, but for what the
// documentation of Pattern leaves out.
func TestPatternsAgreeWithTheReader(t *testing.T) {
	all, random := patterns(), rand.New(rand.NewPCG(1, 2))
	read, refused := 0, 0
	for range 40000 {
		text := ""
		for _, slot := range slots[:[]int{6, len(slots)}[random.IntN(2)]] { // up to the unit, or with inches
			text += slot[random.IntN(len(slot))]
		}
		for _, u := range units {
			v, err := quantity.Parse(u, text)
			for a, pattern := range all[u] {
				matched, taken := pattern.MatchString(text), err == nil && fits[a](v.SI)
				require.True(t, matched == taken || matched && excepted(a, text, err),
					"%q of unit %v, allowed %d: read as %v (%v); matched: %v", text, u, a, v, err, matched)
				if taken {
					read++
				} else if !matched {
					refused++
				}
			}
		}
	}
	assert.Greater(t, read, 2000)
	assert.Greater(t, refused, 5000)
}

var signedNumeral = regexp.MustCompile(`[+−–-][\s\x{a0}]*[½⅞]`)

func excepted(a quantity.Allowed, text string, err error) bool {
	if err == nil {
		return (a == quantity.Percentage || a == quantity.Bearing) && strings.ContainsAny(text, "eE") || a == quantity.Bearing && strings.Contains(text, "rad")
	}
	for _, e := range exceptions {
		if strings.Contains(err.Error(), e) {
			return true
		}
	}
	return signedNumeral.MatchString(text)
}

// Every reading of the tables is matched, and so is all that is printed.
func TestPatternsMatchWhatIsPrinted(t *testing.T) {
	all := patterns()
	for _, r := range readings {
		if r.unit != quantity.One {
			assert.Regexp(t, all[r.unit][quantity.Signed], r.text)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		system := rapid.SampledFrom(systems).Draw(t, "system")
		kind := rapid.SampledFrom(parsed).Draw(t, "kind")
		x := rapid.Float64Range(kind.low, kind.high).Draw(t, "x")
		if text := system.Format(quantity.Value{SI: x, Unit: kind.unit}); !all[kind.unit][quantity.Signed].MatchString(text) {
			t.Fatalf("%s is not matched", text)
		}
	})
}

func TestStockPattern(t *testing.T) {
	form := regexp.MustCompile(quantity.StockPattern)
	for text, good := range map[string]bool{"4/4": true, "12/4": true, "0/4": false, "8/3": false, "2in": false, " 8/4": false, "100/4": false} {
		_, err := quantity.Stock(text).Quarters()
		require.Equal(t, good, err == nil, text)
		assert.Equal(t, good, form.MatchString(text), text)
	}
}
