package sums

import (
	"bytes"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/sample"
	"dryfit/rules/review/catalog"
)

// calculator works out arithmetic as a pocket calculator would, angles in
// degrees. It shares nothing with the code that prints the sheet.
type calculator struct {
	t    *testing.T
	rest string
}

func evaluate(t *testing.T, text string) float64 {
	c := &calculator{t, strings.ReplaceAll(text, " ", "")}
	v := c.sum()
	require.Empty(t, c.rest, text)
	return v
}

func (c *calculator) take(s string) bool {
	if strings.HasPrefix(c.rest, s) {
		c.rest = c.rest[len(s):]
		return true
	}
	return false
}

func (c *calculator) sum() float64 {
	v := c.product()
	for {
		switch {
		case c.take("+"):
			v += c.product()
		case c.take("-"):
			v -= c.product()
		default:
			return v
		}
	}
}

func (c *calculator) product() float64 {
	v := c.power()
	for {
		switch {
		case c.take("*"):
			v *= c.power()
		case c.take("/"):
			v /= c.power()
		default:
			return v
		}
	}
}

func (c *calculator) power() float64 {
	v := c.atom()
	if c.take("^") {
		return math.Pow(v, c.power())
	}
	return v
}

var numeral = regexp.MustCompile(`^\d+(\.\d+)?`)

const degree = math.Pi / 180

func (c *calculator) atom() float64 {
	if c.take("-") {
		return -c.atom()
	}
	if c.take("pi") {
		return math.Pi
	}
	for name, f := range map[string]func(...float64) float64{
		"":     func(x ...float64) float64 { return x[0] },
		"sqrt": func(x ...float64) float64 { return math.Sqrt(x[0]) },
		"sin":  func(x ...float64) float64 { return math.Sin(x[0] * degree) }, "cos": func(x ...float64) float64 { return math.Cos(x[0] * degree) },
		"acos": func(x ...float64) float64 { return math.Acos(x[0]) / degree }, "asin": func(x ...float64) float64 { return math.Asin(x[0]) / degree },
		"tan":  func(x ...float64) float64 { return math.Tan(x[0] * degree) },
		"atan": func(x ...float64) float64 { return math.Atan(x[0]) / degree }, "ceil": func(x ...float64) float64 { return math.Ceil(x[0]) },
		"max": func(x ...float64) float64 { return slices.Max(x) }, "min": func(x ...float64) float64 { return slices.Min(x) },
	} {
		if !c.take(name + "(") {
			continue
		}
		args := []float64{c.sum()}
		for c.take(",") {
			args = append(args, c.sum())
		}
		require.True(c.t, c.take(")"), c.rest)
		return f(args...)
	}
	n := numeral.FindString(c.rest)
	require.NotEmpty(c.t, n, c.rest)
	c.rest = c.rest[len(n):]
	v, err := strconv.ParseFloat(n, 64)
	require.NoError(c.t, err)
	return v
}

// Every printed line of arithmetic, worked by a separate evaluator, gives the
// printed result to its last digit.
func TestPrintedArithmeticIsRight(t *testing.T) {
	vault := func(more map[string]any) map[string]any {
		v := map[string]any{"span": "4200mm", "length": "7080mm"}
		for k, x := range more {
			v[k] = x
		}
		return v
	}
	lines := 0
	for _, changes := range []map[string]any{
		nil,
		{"vault": vault(map[string]any{"profile": "flat"})},
		{"vault": vault(map[string]any{"profile": "semicircular"}), "springing": map[string]any{}},
		{"vault": vault(map[string]any{"profile": "three-centred", "rise": "1500mm", "haunch_radius": "900mm"})},
		{"vault": vault(map[string]any{"profile": "pointed", "rise": "2600mm"})},
		{"vault": vault(map[string]any{"profile": "elliptical", "rise": "1200mm"})},
		{"grid.ends": "full", "panels.along": int64(3), "panels.around": int64(2), "springing.cut": "radial"},
		{"springing.cut": "level", "rib.lamination": "7mm", "skin.layers": int64(2)},
	} {
		for _, units := range []string{"metric", "imperial"} {
			all := map[string]any{"project.units": units}
			for k, v := range changes {
				all[k] = v
			}
			lines += rework(t, sample.Room(t, all))
		}
	}
	for _, name := range sample.Names(t) {
		lines += rework(t, sample.Ceiling(t, name, nil))
	}
	assert.Greater(t, lines, 1000)
}

var printedNumber = regexp.MustCompile(`^(-?\d+(?:\.(\d+))?)`)

// rework works the printed lines of a ceiling again, and counts them.
func rework(t *testing.T, c *layout.Ceiling) (lines int) {
	for _, f := range result.Of(c, carrying.Search{}, nil).Figures() {
		arithmetic, printed := f.Worked(c.Units)
		if arithmetic == "" {
			assert.NotEmpty(t, f.Method+f.Formula, f.Key)
			continue
		}
		lines++
		m := printedNumber.FindStringSubmatch(printed)
		require.NotNil(t, m, printed)
		want, _ := strconv.ParseFloat(m[1], 64)
		unit := math.Pow(10, -float64(len(m[2])))
		if unit == 1 { // whole digits beyond the six are zeros
			unit = max(1, math.Pow(10, math.Floor(math.Log10(max(want, 1)))-5))
		}
		got := evaluate(t, arithmetic)
		// Half a unit, and what nine digits in the terms make of it where large
		// ones cancel.
		assert.InDelta(t, want, got, 0.6*unit, "%s, %s: %s = %s", c.Project.Title.Get(), f.Key, arithmetic, printed)
	}
	return lines
}

func TestStableKeys(t *testing.T) {
	keys, drawn := map[string]bool{}, result.Of(sample.Room(t, nil), carrying.Search{}, nil).Figures()
	measured := result.Of(sample.Ceiling(t, "print-gallery", nil), carrying.Search{}, nil).Survey().Figures()
	for _, f := range slices.Concat(drawn, measured) {
		assert.False(t, keys[f.Key], "twice: %s", f.Key)
		keys[f.Key] = true
		assert.NotEmpty(t, f.Symbol+f.Name+f.Subject, f.Key)
	}
	for _, key := range []string{
		"vault.radius", "vault.arc-length", "vault.half-angle", "grid.module-around", "grid.module-along", "grid.module-ratio",
		"panel.count", "panel.mass", "panel.length", "panel.width", "panel.height", "skin.radius", "rib.form-radius",
		"climate.shop.moisture", "climate.dry.moisture", "climate.wet.moisture",
	} {
		assert.True(t, keys[key], key)
	}
	for _, r := range catalog.Rules() {
		for _, key := range r.Figures {
			assert.True(t, keys[key], "%s reads %s", r.ID, key)
		}
	}
}

// A figure that hangs on an assumed one is assumed itself.
func TestAssumedCarriesThrough(t *testing.T) {
	c := sample.Ceiling(t, "porch", nil)
	for _, f := range result.Of(c, carrying.Search{}, nil).Figures() {
		switch f.Key {
		case "vault.radius", "grid.module-around":
			assert.False(t, f.Assumed, f.Key)
		case "skin.radius", "grid.module-ratio", "climate.shop.moisture", "panel.mass", "rib.form-radius":
			assert.True(t, f.Assumed, f.Key)
		}
	}
}

func TestCalcsKeepToEightyColumns(t *testing.T) {
	for _, name := range sample.Names(t) {
		for _, units := range []string{"metric", "imperial"} {
			var b bytes.Buffer
			c := sample.Ceiling(t, name, map[string]any{"project.units": units})
			results := result.Of(c, carrying.Search{}, nil)
			require.NoError(t, CalcsText(&b, Calcs{Path: "p", Ceiling: c, Figures: results.Figures(), Tables: results.Tables(), Rules: catalog.Rules()}))
			for _, line := range strings.Split(b.String(), "\n") {
				assert.LessOrEqual(t, len([]rune(line)), 88, line) // one long sum can't be broken
			}
		}
	}
}

func TestCellsNeverBeginAFormula(t *testing.T) {
	for text, want := range map[string]string{
		"=1+2": "'=1+2", "+1": "'+1", "-1": "'-1", "@x": "'@x", "plain": "plain", "": "", "3=4": "3=4",
	} {
		assert.Equal(t, want, show.PlainCell(text))
	}
}
