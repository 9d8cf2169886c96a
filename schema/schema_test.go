package schema_test

import (
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

func corpus(t testing.TB, kind string) []string {
	files, err := filepath.Glob("testdata/" + kind + "/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	return files
}

func check(t testing.TB, file string) []spec.Problem {
	src, err := os.ReadFile(file)
	require.NoError(t, err)
	d, problems := spec.Parse(file, src)
	require.Empty(t, problems, file)
	return schema.Check(d)
}

func TestGoodFilesHaveNoProblem(t *testing.T) {
	for _, file := range corpus(t, "good") {
		assert.Empty(t, check(t, file), file)
	}
}

// A bad file has one mistake. A comment on the line where it is to be reported
// gives its column, its key and the sentence.
func TestBadFilesHaveOneProblemEach(t *testing.T) {
	expected := regexp.MustCompile(`#: (\d+) (\S+) (.*)$`)
	files := corpus(t, "bad")
	assert.GreaterOrEqual(t, len(files), 25)
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			src, err := os.ReadFile(file)
			require.NoError(t, err)
			var want string
			for i, line := range strings.Split(string(src), "\n") {
				if m := expected.FindStringSubmatch(line); m != nil {
					column, _ := strconv.Atoi(m[1])
					want += fmt.Sprintf("%d:%d: %s %s\n", i+1, column, m[2], m[3])
				}
			}
			var got string
			for _, p := range check(t, file) {
				got += fmt.Sprintf("%d:%d: %s %s\n", p.Position.Line, p.Position.Column, p.Key, p.Message)
			}
			assert.Equal(t, want, got)
		})
	}
}

func TestEveryKeyHasATitleAndADescription(t *testing.T) {
	keys := schema.Properties()
	assert.Greater(t, len(keys), 150)
	for _, k := range keys {
		assert.NotEmpty(t, k.Title, k.Path)
		assert.True(t, strings.HasSuffix(k.Description, "."), "%s: %q", k.Path, k.Description)
	}
}

// The typed form has exactly the schema's keys.
func TestSchemaAndTypesAgree(t *testing.T) {
	var fromSchema []string
	for _, k := range schema.Properties() {
		fromSchema = append(fromSchema, k.Path)
	}
	assert.ElementsMatch(t, fromSchema, spec.Keys())
}

func FuzzCheck(f *testing.F) {
	for _, kind := range []string{"good", "bad"} {
		for _, file := range corpus(f, kind) {
			src, err := os.ReadFile(file)
			require.NoError(f, err)
			f.Add(src)
		}
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		d, problems := spec.Parse("fuzz", src)
		if len(problems) > 0 {
			return
		}
		for _, p := range schema.Check(d) {
			if p.Message == "" || p.Position.Line < 1 {
				t.Fatalf("a problem without words or place: %+v", p)
			}
		}
	})
}

func BenchmarkCheck(b *testing.B) {
	src, err := os.ReadFile("testdata/good/reading-room.ceiling.toml")
	require.NoError(b, err)
	d, problems := spec.Parse("b", src)
	require.Empty(b, problems)
	for b.Loop() {
		if p := schema.Check(d); len(p) > 0 {
			b.Fatal(p)
		}
	}
}
