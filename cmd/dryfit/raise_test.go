package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/spec/quantity"
)

// raised runs the command on the demo with texts replaced, each by the one that
// follows it.
func raised(t *testing.T, format string, replacements ...string) (out, errs string, status int) {
	t.Helper()
	src, err := os.ReadFile("../../docs/examples/alder-quay/specs/reading-room.ceiling.toml")
	require.NoError(t, err)
	for i := 0; i < len(replacements); i += 2 {
		require.Contains(t, string(src), replacements[i])
	}
	file := filepath.Join(t.TempDir(), "demo.ceiling.toml")
	require.NoError(t, os.WriteFile(file, []byte(strings.NewReplacer(replacements...).Replace(string(src))), 0o644))
	return printed(t, "dryfit raise --on 2026-11-25 --format "+format+" "+file)
}

// A spec without what a plan rests on has none, in any format, and it is said why.
func TestThereIsNoPlan(t *testing.T) {
	for name, c := range map[string]struct {
		replaced []string
		why      string
	}{
		"without lifts":        {[]string{`stations = ["25%", "75%"]`, ""}, "needs lift.stations"},
		"without an allowable": {[]string{`allowable = { load = "0.9kN", source = "supplier's test report no. 7 (invented)" }`, ""}, "needs strap.allowable.load"},
		"that fails":           {[]string{`load = "0.9kN"`, `load = "0.05kN"`}, "the check fails the spec"},
		"off its lifts":        {[]string{`stations = ["25%", "75%"]`, `stations = ["10%", "20%"]`}, "the check fails the spec"},
	} {
		for _, format := range []string{"text", "csv", "json"} {
			out, errs, status := raised(t, format, c.replaced...)
			assert.Equal(t, exit.Fail, status, name)
			assert.True(t, strings.HasSuffix(errs, "dryfit: there is no raising plan: "+c.why+"\n"), errs)
			assert.NotContains(t, out, "on the lifts", name)
			if format != "text" {
				assert.Empty(t, out, name)
			}
		}
	}
}

// Whoever is named has released nothing.
func TestANameReleasesNothing(t *testing.T) {
	out, errs, status := raised(t, "text", `engineer = ""`, `engineer = "A. Person"`)
	require.Zero(t, status, errs)
	assert.NotContains(t, out, "NOT RELEASED")
	assert.Contains(t, out, "Only a signed release of the engineer of record, A. Person, releases it; this")
	assert.Contains(t, out, "- strap.engineer: ")
}

// A name that turns a terminal does not, in a plan as little as in its refusal.
func TestAPlanShowsNamesSafely(t *testing.T) {
	for format, judge := range map[string]func(*testing.T, string){"text": judgeText, "csv": judgeCSV, "json": judgeJSON} {
		out, errs, status := raised(t, format, `engineer = ""`, `engineer = "=A\u001b[2J\u202eB"`, `title    = "Reading`, `title    = "\u001b[2J=Reading`)
		require.Zero(t, status, errs)
		judge(t, out)
	}
}

// What is not known is said: capacity, a fitting's mass, the rules not checked.
func TestAPlanSaysWhatItDoesNotJudge(t *testing.T) {
	out, errs, status := raised(t, "text", `capacity = "200kg"`, "", `mass   = "0.4kg"`, "", `reach    = "4200mm"`, "")
	require.Zero(t, status, errs)
	assert.Contains(t, out, "- The lifts' capacity is not judged: needs lift.capacity.")
	assert.Contains(t, out, "- The weight does not include a fitting: needs fitting.1.mass.")
	assert.Contains(t, out, "- install.lift-reach is not checked: needs lift.reach")
	assert.Contains(t, out, "- raise.mast is not checked: needs lift.base")
}

// A plan satisfies its published schema, and with any of its fields renamed does
// not; each step carries the panel's weight.
func TestRaiseJSONSatisfiesItsSchema(t *testing.T) {
	judge := publishedSchema(t, "raise", "")
	for _, replaced := range [][]string{nil, {`stations  = ["10%", "36%", "64%", "90%"]`, `stations  = ["10%", "50%", "90%"]`}} {
		out, errs, status := raised(t, "json", replaced...)
		require.Zero(t, status, errs)
		var document map[string]any
		require.NoError(t, json.Unmarshal([]byte(out), &document))
		require.NoError(t, judge.Validate(document))
		picks := document["picks"].([]any)
		require.Len(t, picks, 6)
		pick := picks[5].(map[string]any)
		assert.InDelta(t, 6, pick["panel"], 0)
		assert.Equal(t, replaced != nil, pick["secure_after"] == nil)
		for _, s := range pick["steps"].([]any) {
			step := s.(map[string]any)
			assert.Equal(t, "NOT RELEASED", step["release"])
			sum := 0.0
			for _, f := range append(step["lifts"].([]any), step["straps"].([]any)...) {
				sum += f.(float64)
			}
			assert.InEpsilon(t, document["mass"].(float64)*9.80665, 2*sum, 1e-3, step["name"])
			refusedWhereRenamed(t, judge.Validate, document, step, "why")
		}
		refusedWhereRenamed(t, judge.Validate, document, pick, "")
		refusedWhereRenamed(t, judge.Validate, document, document, "")
	}
}

// refusedWhereRenamed renames each field of a part of a document but one.
func refusedWhereRenamed(t *testing.T, validate func(any) error, document any, part map[string]any, but string) {
	t.Helper()
	for key, value := range part {
		if key == but {
			continue
		}
		delete(part, key)
		part[key+"_"] = value
		assert.Error(t, validate(document), key)
		delete(part, key+"_")
		part[key] = value
	}
}

// Each figure of the frames in JSON stands in its frame of the sheet, as the sheet
// prints it.
func TestTheRaisingSheetHasTheFiguresOfJSON(t *testing.T) {
	out, errs, status := raised(t, "json")
	require.Zero(t, status, errs)
	var document struct {
		Frames []struct {
			Weight, Clear float64
			Carried       []struct{ Force float64 }
			After         []struct{ Carried []struct{ Force float64 } }
			Forks         []struct{ Height float64 }
			Hands         []struct{ Takes int }
			Gap           struct{ Size float64 }
		}
	}
	require.NoError(t, json.Unmarshal([]byte(out), &document))
	require.Len(t, document.Frames, 6)
	page, errs, status := printed(t, "dryfit draw --on 2026-11-25 --format svg --sheet raising ../../docs/examples/alder-quay/specs/reading-room.ceiling.toml")
	require.Zero(t, status, errs)
	parts := strings.Split(page, `data-part="frame-`)
	require.Len(t, parts, 7)
	for i, f := range document.Frames {
		says := strings.Join(strings.Fields(regexp.MustCompile(`<[^>]*>`).ReplaceAllString("<"+parts[i+1], " ")), " ")
		has := func(v quantity.Value) { assert.Contains(t, says, quantity.Metric.Format(v), i+1) }
		has(quantity.Force(f.Weight).Value())
		for _, s := range f.Carried {
			has(quantity.Force(s.Force).Value())
		}
		for _, stage := range f.After {
			sum := 0.0
			for _, s := range stage.Carried {
				has(quantity.Force(s.Force).Value())
				sum += s.Force
			}
			assert.InEpsilon(t, f.Weight, sum, 1e-3)
		}
		for _, k := range f.Forks {
			has(quantity.Length(k.Height).Value())
		}
		for _, h := range f.Hands {
			assert.Contains(t, says, fmt.Sprintf("Hands: %d ", h.Takes))
		}
		has(quantity.Length(f.Clear).Value())
		has(quantity.Length(f.Gap.Size).Value())
		assert.Contains(t, says, "Do not pass until")
	}
}
