package schema_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/schema"
	"dryfit/spec"
)

// corpus is the files of a kind. The good ones are the repository's ceilings
// too.
func corpus(t testing.TB, kind string) []string {
	files, err := filepath.Glob("testdata/" + kind + "/*.toml")
	require.NoError(t, err)
	if kind == "good" {
		ceilings, err := filepath.Glob("../testdata/specs/*.toml")
		require.NoError(t, err)
		require.NotEmpty(t, ceilings)
		files = append(files, ceilings...)
	}
	require.NotEmpty(t, files)
	return files
}

func parse(t testing.TB, file string) *spec.Document {
	src, err := os.ReadFile(file)
	require.NoError(t, err)
	d, problems := spec.Parse(file, src)
	require.Empty(t, problems, file)
	return d
}

func TestGoodFilesHaveNoProblem(t *testing.T) {
	for _, file := range corpus(t, "good") {
		assert.Empty(t, schema.Check(parse(t, file)), file)
	}
}

// A bad file has one mistake. A comment on the line where it is to be reported
// gives its column, its key and the sentence.
func TestBadFilesHaveOneProblemEach(t *testing.T) {
	expected := regexp.MustCompile(`#: (\d+) (\S+) (.*)$`)
	for _, file := range corpus(t, "bad") {
		t.Run(filepath.Base(file), func(t *testing.T) {
			d := parse(t, file)
			var want string
			for i, line := range strings.Split(string(d.Source), "\n") {
				if m := expected.FindStringSubmatch(line); m != nil {
					column, _ := strconv.Atoi(m[1])
					want += fmt.Sprintf("%d:%d: %s %s\n", i+1, column, m[2], m[3])
				}
			}
			require.Equal(t, 1, strings.Count(want, "\n"))
			assert.Equal(t, want, lines(schema.Check(d)))
		})
	}
}

func lines(problems []spec.Problem) string {
	var b strings.Builder
	for _, p := range problems {
		fmt.Fprintf(&b, "%d:%d: %s %s\n", p.Position.Line, p.Position.Column, p.Key, p.Message)
	}
	return b.String()
}

// Every mistake is reported, in the order of the file and the same each time,
// though the validator and Go's maps keep no order.
func TestMistakesComeInTheOrderOfTheFile(t *testing.T) {
	d, problems := spec.Parse("x", []byte(`dryfit = 1
strange = 1
[room]
width = 3
hight = "2.5m"
[vault]
span = "0mm"
[rib]
species = ""
depth = "5/4"
[[route]]
kind = "door"
onward = { a = 1 }
`))
	require.Empty(t, problems)
	const forms = `"2700mm", "2.7m", "8ft 10 1/4in" or "3/4in"`
	want := `1:1: grid is missing: how the vault divides into coffers
1:1: project is missing: the title block of the drawings
1:1: skin is missing: the bent sheet behind the frame
2:1: strange there is no such key here; is it strap?
3:2: room.length is missing: distance from wall to wall along the vault
4:9: room.width 3 has no unit; write ` + forms + `
5:1: room.hight there is no such key here; is it height?
6:2: vault.length is missing: sum of the lengths of all panels along the axis, without the gaps at the seams
6:2: vault.profile is missing: shape of the intrados
7:8: vault.span "0mm" must be greater than zero
8:2: rib.width is missing: finished width along the axis
9:11: rib.species is empty
10:9: rib.depth "5/4": a nominal stock is not a length; write ` + forms + `
11:3: route.1.height is missing: clear height
11:3: route.1.name is missing: name of the leg, used in findings
11:3: route.1.width is missing: clear width
13:1: route.1.onward does not belong to a leg of kind door
`
	for range 20 {
		require.Equal(t, want, lines(schema.Check(d)))
	}
}

// A file that is no spec at all is not answered with a book.
func TestSoManyMistakesAreCounted(t *testing.T) {
	d, problems := spec.Parse("x", []byte("dryfit = 1\n"+strings.Repeat("[[accept]]\nby = 1\n", 1000)))
	require.Empty(t, problems)
	problems = schema.Check(d)
	require.Len(t, problems, 201)
	// Six tables are missing, and each acceptance has one wrong and three
	// missing keys: 4006, of which 200 are shown.
	assert.Equal(t, "3806 more errors after this line", problems[200].Message)
	assert.GreaterOrEqual(t, problems[200].Range.Start, problems[199].Range.Start)
}

// The typed form has exactly the schema's keys, and takes what the schema lets
// through.
func TestSchemaAndTypesAgree(t *testing.T) {
	var fromSchema []string
	for _, p := range schema.Properties() {
		fromSchema = append(fromSchema, p.Path)
	}
	assert.ElementsMatch(t, fromSchema, spec.Keys())
	for _, file := range corpus(t, "good") {
		_, err := spec.Bind(parse(t, file).Tree)
		assert.NoError(t, err, file)
	}
}

func TestFormatVersionIsTheSchemas(t *testing.T) {
	var s struct {
		Properties struct {
			Dryfit struct {
				Const int `json:"const"`
			} `json:"dryfit"`
		} `json:"properties"`
	}
	require.NoError(t, json.Unmarshal(schema.SpecSchema(), &s))
	assert.Equal(t, spec.FormatVersion, s.Properties.Dryfit.Const)
}

func FuzzCheck(f *testing.F) {
	for _, kind := range []string{"good", "bad"} {
		for _, file := range corpus(f, kind) {
			f.Add(parse(f, file).Source)
		}
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		d, problems := spec.Parse("fuzz", src)
		if len(problems) > 0 {
			return
		}
		problems = schema.Check(d)
		for i, p := range problems {
			if p.Message == "" || strings.Contains(p.Message, "\n") || p.Position.Line < 1 {
				t.Fatalf("not one sentence at a place: %+v", p)
			}
			if i > 0 && p.Range.Start < problems[i-1].Range.Start {
				t.Fatalf("out of order: %+v", problems)
			}
		}
		if _, err := spec.Bind(d.Tree); len(problems) == 0 && err != nil {
			t.Fatalf("the schema lets through what has no typed form: %v", err)
		}
	})
}

func BenchmarkCheck(b *testing.B) {
	d := parse(b, "../testdata/specs/reading-room.ceiling.toml")
	for b.Loop() {
		if p := schema.Check(d); len(p) > 0 {
			b.Fatal(p)
		}
	}
}
