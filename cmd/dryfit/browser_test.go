package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/internal/outside"
)

// visit is what a real browser sees of a page: .ci/validators/browse.mjs.
type visit struct {
	Console, Requests []string
	Sideways          map[string]int // pixels that the page is too wide, by the window's width
	Violations        []struct {
		Where, ID, Impact string
		At                []string
	}
	Filtered []int // articles shown: all, one severity off, no word found
	Cut      []string
	Idle     []string // stops of the keyboard at which there is nothing to do
	Plain    int      // articles shown without scripts
	Looks    int      // options drawn without scripts, or blank
	Buttons  int      // shown without scripts
	Printed  int      // buttons on paper
	Pair     *struct {
		Reached                         bool    // by Tab alone
		Apart                           float64 // the widths of the pictures, in pixels
		One, Two, Left, Clicked, Closed pairState
		OnPaper                         []any
		Taken                           []string // still chosen after a second press
	}
}

// pairState is what is chosen, and what the dialog of two options shows.
type pairState struct {
	Open           bool
	Title, Focused string
	Said           string
	Widths         []int // of the pictures, in pixels
	Pressed        []string
}

func browse(t *testing.T, page, pdf string) visit {
	t.Helper()
	const validators = "../../.ci/validators"
	node := outside.Modules(t, validators, "playwright-core", "axe-core")
	chromium := outside.Program(t, "chromium")
	run := exec.Command(node, filepath.Join(validators, "browse.mjs"), chromium, page, pdf)
	var said strings.Builder
	run.Stderr = &said
	out, err := run.Output()
	require.NoError(t, err, said.String())
	var v visit
	require.NoError(t, json.Unmarshal(out, &v))
	return v
}

// sound asserts what holds of every page.
func (v visit) sound(t *testing.T) {
	assert.Empty(t, v.Console, "console")
	assert.Empty(t, v.Requests, "requests")
	assert.Equal(t, map[string]int{"1280": 0, "390": 0}, v.Sideways)
	assert.Empty(t, v.Violations, "axe-core")
	assert.Empty(t, v.Cut, "cut on paper")
	assert.Empty(t, v.Idle, "stops that do nothing")
}

// pageOf runs a command that writes a page, on the demo with some texts changed.
func pageOf(t *testing.T, changes map[string]string, args ...string) string {
	folder := t.TempDir()
	src, err := os.ReadFile("../../docs/examples/alder-quay/specs/reading-room.ceiling.toml")
	require.NoError(t, err)
	text := string(src)
	for from, to := range changes {
		require.Contains(t, text, from)
		text = strings.Replace(text, from, to, 1)
	}
	spec, page := filepath.Join(folder, "room.ceiling.toml"), filepath.Join(folder, "page.html")
	require.NoError(t, os.WriteFile(spec, []byte(text), 0o644))
	run := exec.Command("dryfit", append([]string{args[0], spec, "--on", "2026-11-25", "--output", page}, args[1:]...)...)
	said, err := run.CombinedOutput()
	if exit := (&exec.ExitError{}); err != nil {
		require.ErrorAs(t, err, &exit, string(said))
		require.Equal(t, 1, exit.ExitCode(), string(said))
	}
	return page
}

func TestSubmittalInABrowser(t *testing.T) {
	t.Parallel()
	const script = `<script>document.title='taken'</script><img src=x onerror=alert(1)>`
	for name, changes := range map[string]map[string]string{
		"the demo": nil,
		"held, with hostile texts": {
			`title    = "Reading room, Alder Quay library"`:      "title = '''" + script + " \"quoted\" & " + strings.Repeat("very", 90) + "'''",
			`source = "supplier's test report no. 7 (invented)"`: "source = '''" + script + "</svg>'''",
			`name   = "box van"`:                                 "name = '''" + script + "'''", "lamination   = \"6mm\"": "lamination = \"15mm\"",
		},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			pdf := filepath.Join(t.TempDir(), "page.pdf")
			page := pageOf(t, changes, "submittal")
			v := browse(t, page, pdf)
			v.sound(t)
			require.Len(t, v.Filtered, 3)
			assert.Less(t, v.Filtered[1], v.Filtered[0], "a severity is filtered out")
			assert.Zero(t, v.Filtered[2], "no such words")
			assert.Equal(t, v.Filtered[0], v.Plain, "all show without scripts")
			for _, print := range []string{"", ".lying", ".letter", ".letter.lying"} {
				if pages := eachPageSaysWhatItIsOf(t, pdf+print); name == "the demo" {
					assert.LessOrEqual(t, pages, 18, "pages, print%s", print)
				}
				bars := barsOf(t, pdf+print)
				lettersAreAsHighAsDrawn(t, bars)
				barsAreAsLongAsDrawn(t, page, pdf+print, bars)
				headingsKeep(t, page, pdf+print)
			}
		})
	}
}

func TestStudyInABrowser(t *testing.T) {
	t.Parallel()
	for name, study := range map[string]struct {
		vary         []string
		looks, drawn int
	}{
		"one key":          {[]string{"--vary", "grid.along=4..6"}, 3, 3},
		"two keys":         {[]string{"--vary", "grid.along=4..6", "--vary", "vault.rise=840mm,2500mm"}, 6, 3},
		"one can be drawn": {[]string{"--vary", "vault.rise=840mm,2500mm"}, 1, 1},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			v := browse(t, pageOf(t, nil, append([]string{"study", "--format", "html"}, study.vary...)...), "")
			v.sound(t)
			assert.Equal(t, study.looks, v.Looks, "all show without scripts")
			assert.Zero(t, v.Buttons, "and no button that does nothing")
			assert.Zero(t, v.Printed)
			if study.drawn < 2 {
				assert.Nil(t, v.Pair)
				return
			}
			v.twoSideBySide(t)
		})
	}
}

// twoSideBySide asserts that two options can be chosen and left by the keyboard.
func (v visit) twoSideBySide(t *testing.T) {
	require.NotNil(t, v.Pair)
	p := v.Pair
	assert.True(t, p.Reached)
	assert.Less(t, p.Apart, 0.1, "all pictures are at one scale")
	assert.False(t, p.One.Open)
	assert.Equal(t, []string{"1"}, p.One.Pressed)
	assert.Contains(t, p.One.Said, "Option 1 is chosen")
	assert.True(t, p.Two.Open)
	assert.Regexp(t, `^Options 1 and [35]$`, p.Two.Title)
	require.Len(t, p.Two.Widths, 2)
	assert.Equal(t, p.Two.Widths[0], p.Two.Widths[1])
	assert.Greater(t, p.Two.Widths[0], 550, "of 1280 pixels")
	assert.Equal(t, []any{false, 2.0}, p.OnPaper, "both alone are printed")
	for _, s := range []pairState{p.Left, p.Closed} {
		assert.False(t, s.Open)
		assert.Empty(t, s.Pressed)
		assert.Empty(t, s.Widths)
	}
	assert.Regexp(t, `^Compare option [35]$`, p.Left.Focused, "where one was")
	assert.True(t, p.Clicked.Open)
	assert.Empty(t, p.Taken)
}

func TestComparisonInABrowser(t *testing.T) {
	t.Parallel()
	v := browse(t, pageOf(t, nil, "compare", "../../docs/examples/alder-quay/specs/map-gallery.ceiling.toml", "--format", "html"), "")
	v.sound(t)
}
