package drawing

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pdf"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/internal/outside"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
)

// input is the demo with changes.
func input(t testing.TB, changes ...map[string]any) sheet.Input {
	tree := sample.Tree(t, sample.ReadingRoom, nil)
	for _, c := range changes {
		for key, value := range c {
			changed, ok := spec.With(tree, key, value)
			require.True(t, ok, key)
			tree = changed
		}
	}
	in := reviewed(t, tree, standards.BuiltIn())
	in.Assessment.Path = "specs/demo.ceiling.toml"
	return in
}

// ways are those of the legs that the tests draw: most draw the demo's.
var ways = carrying.NewMemory()

// reviewed is what is drawn of a spec without a file, by given standards.
func reviewed(t testing.TB, tree map[string]any, std *standards.Standards) sheet.Input {
	t.Helper()
	assessment, faults := review.Tree(tree, review.Options{Rules: catalog.Rules(), Standards: std, On: "2026-11-25", Search: carrying.Search{Memory: ways}})
	require.Empty(t, faults)
	return sheet.Input{Assessment: assessment, Version: "test", On: "2026-11-25"}
}

// ceiling is what is drawn of one of the ceilings, with changes.
func ceiling(t testing.TB, name string, changes map[string]any) sheet.Input {
	t.Helper()
	return reviewed(t, sample.Tree(t, name, changes), standards.BuiltIn())
}

// profiles are the six, as changes of the demo.
func profiles() map[string]map[string]any { return sample.Profiles() }

// Every sheet can be read: no text meets a line, a text or the sheet's edge,
// and none was left without a place.
func TestNothingOverlaps(t *testing.T) {
	for profile, change := range profiles() {
		for _, units := range []string{"metric", "imperial"} {
			for _, around := range []int64{1, 6, 20} {
				for _, pieces := range []int64{1, 2} {
					if pieces > around || around == 20 && units == "imperial" && pieces == 2 {
						continue
					}
					in := input(t, change, map[string]any{"project.units": units, "grid.around": around, "panels.around": pieces})
					t.Run(fmt.Sprintf("%s/%s/%d-in-%d", profile, units, around, pieces), func(t *testing.T) {
						drawn, undrawn := readable(t, in)
						for _, u := range undrawn { // some arches do not hang
							assert.Regexp(t, "(straps|raising) sheet", u)
						}
						for _, s := range drawn {
							assert.NotContains(t, svg.Body(s.Items), "WITHOUT ROOM", s.Name)
						}
					})
				}
			}
		}
	}
}

func TestEveryCeilingIsDrawn(t *testing.T) {
	for _, name := range sample.Names(t) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s := review.Spec(name, sample.Source(t, name), review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"})
			in := sheet.Input{Assessment: s, Version: "test", On: "2026-11-25"}
			drawn, undrawn := readable(t, in)
			listed(t, in, drawn)
			for _, u := range undrawn {
				assert.Regexp(t, "(straps|route|raising) sheet", u, "for want of straps, of a route or of a plan")
			}
		})
	}
}

// readable draws all sheets of a ceiling that can be, and says why others can't.
func readable(t *testing.T, in sheet.Input) (drawn []paper.Sheet, undrawn []string) {
	drawn, undrawn, err := All(in, sheet.Options{})
	require.NoError(t, err)
	for _, s := range drawn {
		assert.Empty(t, draft.Overlaps(s), s.Name)
		assert.NotContains(t, svg.Body(s.Items), "NaN", s.Name)
	}
	return drawn, undrawn
}

// Hostile and long texts stay text, in their column.
func TestHostileTexts(t *testing.T) {
	in := input(t, map[string]any{
		"project.title": "</title><script>alert(1)</script>\u202e \x1b[31m " + strings.Repeat("long ", 60) + strings.Repeat("x", 300),
		"project.sheet": "<b>&amp;", "route.1.name": "]]><script>\n(paren\\)", "fitting.1.name": strings.Repeat("wide ", 20) + "<x>",
	})
	drawn, _, err := All(in, sheet.Options{})
	require.NoError(t, err)
	for _, s := range drawn {
		assert.Empty(t, draft.Overlaps(s), s.Name)
		var b bytes.Buffer
		require.NoError(t, svg.Write(&b, s))
		assert.NotContains(t, b.String(), "<script")
		assert.NotContains(t, b.String(), "\u202e")
		assert.NotContains(t, b.String(), "\x1b")
		elements(t, b.Bytes())
	}
	var b bytes.Buffer
	require.NoError(t, pdf.Write(&b, pdf.Document{Title: "x)\\(", Creator: "dryfit test", Date: time.Unix(0, 0)}, drawn))
	assert.True(t, bytes.HasPrefix(b.Bytes(), []byte("%PDF-")))
}

func elements(t *testing.T, src []byte) map[string]int {
	n := map[string]int{}
	d := xml.NewDecoder(bytes.NewReader(src))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return n
		}
		require.NoError(t, err)
		if e, ok := token.(xml.StartElement); ok {
			n[e.Name.Local]++
		}
	}
}

// The SVG's own numbers give back the span, the rise and the radius of the
// layout within 0.1mm of the model at 1:20.
func TestSVGGeometry(t *testing.T) {
	in := input(t)
	s, err := Draw("section", in, sheet.Options{Scale: 20})
	require.NoError(t, err)
	var b bytes.Buffer
	require.NoError(t, svg.Write(&b, s))
	elements(t, b.Bytes())
	m := regexp.MustCompile(`M([\d.]+) ([\d.]+)A([\d.]+) [\d.]+ 0 0 1 ([\d.]+) ([\d.]+)"`).FindStringSubmatch(b.String())
	require.NotNil(t, m, "the intrados is an arc")
	n := make([]float64, 6)
	for i := 1; i < 6; i++ {
		n[i], _ = strconv.ParseFloat(m[i], 64)
	}
	v := in.Ceiling().Vault
	assert.InDelta(t, v.Span.Get()*1000, (n[4]-n[1])*20, 0.1)
	assert.InDelta(t, v.Radius.Get()*1000, n[3]*20, 0.1)
	assert.InDelta(t, n[2], n[5], 0.005)
	// The rise of an arc by its chord: R − √(R² − s²/4), Machinery's Handbook,
	// 31st edition, p. 79.
	chord := n[4] - n[1]
	assert.InDelta(t, v.Rise.Get()*1000, (n[3]-math.Sqrt(n[3]*n[3]-chord*chord/4))*20, 0.1)
}

// The PDF's own operators give back the span at the scale.
func TestPDFScale(t *testing.T) {
	for _, tt := range []struct {
		scale float64
		paper string
	}{{20, "A2"}, {24, "ARCH-C"}, {100, "A4"}} {
		in := input(t)
		s, err := Draw("plan", in, sheet.Options{Scale: tt.scale, Paper: tt.paper})
		require.NoError(t, err)
		var b bytes.Buffer
		require.NoError(t, pdf.Write(&b, pdf.Document{Title: "t", Creator: "dryfit test", Date: time.Unix(0, 0), Plain: true}, []paper.Sheet{s}))
		room := in.Ceiling().Room.Length.Get() * 1000
		want, found := room/tt.scale, false
		for _, m := range regexp.MustCompile(`([\d.]+) ([\d.]+) m ([\d.]+) ([\d.]+) l`).FindAllStringSubmatch(b.String(), -1) {
			x0, _ := strconv.ParseFloat(m[1], 64)
			y0, _ := strconv.ParseFloat(m[2], 64)
			x1, _ := strconv.ParseFloat(m[3], 64)
			y1, _ := strconv.ParseFloat(m[4], 64)
			if y0 == y1 && math.Abs(math.Abs(x1-x0)*25.4/72-want) < 0.1 {
				found = true
			}
		}
		assert.True(t, found, "no line of %.2fmm at 1:%g", want, tt.scale)
	}
}

// An outside program reads the pages' sizes and the texts.
func TestPDFByAnotherProgram(t *testing.T) {
	outside.Program(t, "pdfinfo")
	drawn, _, err := All(input(t), sheet.Options{})
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "d.pdf")
	var b bytes.Buffer
	require.NoError(t, pdf.Write(&b, pdf.Document{Title: "Reading room", Creator: "dryfit test", Date: time.Unix(0, 0)}, drawn))
	require.NoError(t, os.WriteFile(file, b.Bytes(), 0o644))
	info, err := exec.Command("pdfinfo", "-f", "1", "-l", "9", file).CombinedOutput()
	require.NoError(t, err, string(info))
	for i, s := range drawn {
		assert.Regexp(t, fmt.Sprintf(`Page\s+%d size:\s+%s`, i+1, points(s.Width)), string(info))
	}
	fonts, err := exec.Command("pdffonts", file).CombinedOutput()
	require.NoError(t, err)
	assert.Regexp(t, `utf8go .* yes +(no|yes) +yes`, string(fonts), "embedded, with its characters")
	text, err := exec.Command("pdftotext", "-layout", file, "-").CombinedOutput()
	require.NoError(t, err)
	assert.Contains(t, string(text), "span 4200")
}

func points(mm float64) string {
	whole := strconv.FormatFloat(math.Floor(mm*72/25.4*10)/10, 'f', -1, 64)
	return regexp.QuoteMeta(strings.SplitN(whole, ".", 2)[0])
}

func TestSameBytesTwice(t *testing.T) {
	make := func() (string, string) {
		drawn, _, err := All(input(t), sheet.Options{})
		require.NoError(t, err)
		var s, p bytes.Buffer
		for _, d := range drawn {
			require.NoError(t, svg.Write(&s, d))
		}
		require.NoError(t, pdf.Write(&p, pdf.Document{Title: "t", Creator: "c", Date: time.Unix(0, 0)}, drawn))
		return s.String(), p.String()
	}
	s1, p1 := make()
	s2, p2 := make()
	assert.Equal(t, s1, s2)
	assert.Equal(t, p1, p2)
}

func TestScales(t *testing.T) {
	for text, want := range map[string]float64{
		"1:20": 20, "1:2.5": 2.5, "1/2in = 1ft": 24, `1/2"=1'`: 24, "1 1/2in=1ft": 8, "3/32in = 1ft": 128, "2:1": 0.5,
	} {
		got, err := draft.ParseScale(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
	}
	for _, text := range []string{"", "20", "1:0", "0:1", "1:-20", "1:nan", "1:1e9", "1/2in", "1in = 0ft", "1:20x", "a:b"} {
		_, err := draft.ParseScale(text)
		assert.Error(t, err, text)
	}
	assert.Equal(t, "1/2in = 1ft", draft.ScaleText(24, true))
	assert.Equal(t, "1:24", draft.ScaleText(24, false))
}

func TestWhatDoesNotFit(t *testing.T) {
	in := input(t)
	_, err := Draw("plan", in, sheet.Options{Scale: 5, Paper: "A4"})
	var fit *sheet.FitError
	require.ErrorAs(t, err, &fit)
	assert.Equal(t, "1:100", fit.Fits)
	_, err = Draw("plan", in, sheet.Options{Scale: 100, Paper: "A4"})
	assert.NoError(t, err)
	_, err = Draw("plan", in, sheet.Options{Paper: "A9"})
	assert.ErrorContains(t, err, "no paper")
	_, err = Draw("plans", in, sheet.Options{})
	assert.ErrorContains(t, err, "no sheet")
}

// A ceiling too large, or of too many coffers, for one sheet has the others.
func TestMoreThanASheetShows(t *testing.T) {
	in := input(t, map[string]any{"vault.span": "4200m", "vault.rise": "840m", "vault.length": "7080m", "seam.spacing": "3m", "grid.around": int64(400), "grid.along": int64(600)})
	drawn, undrawn, err := All(in, sheet.Options{})
	require.NoError(t, err)
	assert.Contains(t, undrawn, "the view sheet would show 240000 coffers, and shows at most 10000")
	assert.Contains(t, undrawn, "the section sheet does not fit A0 at any scale")
	assert.NotEmpty(t, drawn)
	var limit *sheet.LimitError
	_, err = Draw("plan", in, sheet.Options{})
	assert.ErrorAs(t, err, &limit)
}

// Findings are marked where they bite, each on some sheet.
func TestEveryFindingIsMarked(t *testing.T) {
	in := input(t, map[string]any{"rib.lamination": "12mm", "room.above": "20mm", "grid.reveal.depth": "30mm", "lift.reach": "3000mm"})
	drawn, _, err := All(in, sheet.Options{})
	require.NoError(t, err)
	marked := map[int]bool{}
	for _, s := range drawn {
		for n := range s.Marks {
			marked[n] = true
		}
	}
	for i, f := range in.Assessment.Findings {
		assert.True(t, marked[i+1], "%d %s at %s", i+1, f.Rule.ID, f.At)
	}
}
