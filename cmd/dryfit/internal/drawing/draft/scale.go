package draft

import (
	"fmt"
	"math"
	"strings"

	"dryfit/spec/quantity"
)

// imperialScales are the lengths on paper that stand for a foot, as they are
// written.
var imperialScales = []struct {
	text  string
	scale float64
}{
	{"12in = 1ft", 1},
	{"6in = 1ft", 2},
	{"3in = 1ft", 4},
	{"1 1/2in = 1ft", 8},
	{"1in = 1ft", 12},
	{"3/4in = 1ft", 16},
	{"1/2in = 1ft", 24},
	{"3/8in = 1ft", 32},
	{"1/4in = 1ft", 48},
	{"3/16in = 1ft", 64},
	{"1/8in = 1ft", 96},
	{"3/32in = 1ft", 128},
	{"1/16in = 1ft", 192},
	{"1/32in = 1ft", 384},
}

// UsualScales lists the scales that drawings are made in, the largest first;
// the metric ones are of ISO 5455.
func UsualScales(imperial bool) []float64 {
	if !imperial {
		return []float64{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000}
	}
	var out []float64
	for _, s := range imperialScales {
		out = append(out, s.scale)
	}
	return append(out, 768, 1200)
}

// ScaleText is a scale as a drawing states it.
func ScaleText(scale float64, imperial bool) string {
	if imperial {
		for _, s := range imperialScales {
			if s.scale == scale {
				return s.text
			}
		}
	}
	return fmt.Sprintf("1:%g", math.Round(scale*100)/100)
}

// ParseScale reads "1:20", or what on paper stands for what: "1/2in = 1ft".
func ParseScale(text string) (float64, error) {
	refused := fmt.Errorf("%q is not a scale; write 1:20, or 1/2in = 1ft", text)
	drawn, real := 0.0, 0.0
	if on, stands, ok := strings.Cut(text, "="); ok {
		a, err := quantity.Parse(quantity.Metre, strings.TrimSpace(on))
		b, err2 := quantity.Parse(quantity.Metre, strings.TrimSpace(stands))
		if err != nil || err2 != nil {
			return 0, refused
		}
		drawn, real = a.SI, b.SI
	} else if _, err := fmt.Sscanf(text+"\n", "%g:%g\n", &drawn, &real); err != nil {
		return 0, refused
	}
	scale := real / drawn
	if !(drawn > 0) || !(scale >= 0.1 && scale <= 10000) {
		return 0, refused
	}
	// A foot is 12 inches to the last bit.
	return math.Round(scale*1e9) / 1e9, nil
}

// Round is the greatest 1, 2 or 5 times a power of ten that is not over x.
func Round(x float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(x)))
	for _, m := range []float64{5, 2} {
		if m*power <= x*(1+1e-12) {
			return m * power
		}
	}
	return power
}
