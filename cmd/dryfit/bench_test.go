package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/santhosh-tekuri/jsonschema/v5"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
)

const demo = "../../docs/examples/alder-quay/specs/reading-room.ceiling.toml"

func readDemo(b testing.TB) []byte {
	src, err := os.ReadFile(demo)
	require.NoError(b, err)
	return src
}

// BenchmarkCheck is one check in process, and BenchmarkOffers the same with what
// would pass, which costs a run of all rules for each offer; BenchmarkDecode is
// the bare decoding of the same file, to compare with.
func BenchmarkCheck(b *testing.B) { benchmarkCheck(b, false) }

func BenchmarkOffers(b *testing.B) { benchmarkCheck(b, true) }

func benchmarkCheck(b *testing.B, offers bool) {
	benchmarkReviews(b, review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), Offers: offers})
}

// BenchmarkEdited is a review of a spec after one of it with another first gap, as the
// language server does them where a change leaves the frame and the way in as they are,
// and BenchmarkEditedThousandLegs that of a route of a thousand legs.
func BenchmarkEdited(b *testing.B) { benchmarkEdited(b, readDemo(b)) }

func BenchmarkEditedThousandLegs(b *testing.B) { benchmarkEdited(b, []byte(manyLegs(b, 990))) }

func benchmarkEdited(b *testing.B, src []byte) {
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), Offers: true, Frames: new(hanging.Memory)}
	o.Search.Memory = carrying.NewMemory()
	texts := [2][]byte{src, bytes.Replace(src, []byte(`first_gap = "18mm"`), []byte(`first_gap = "19mm"`), 1)}
	require.NotEqual(b, texts[0], texts[1])
	o.Like = review.Spec(demo, texts[1], o).Said
	for n := 0; b.Loop(); n++ {
		o.Search.Memory = o.Search.Memory.Next()
		o.Like = review.Spec(demo, texts[n%2], o).Said
	}
}

func benchmarkReviews(b *testing.B, o review.Options) {
	src := readDemo(b)
	for b.Loop() {
		if s := review.Spec(demo, src, o); len(s.Problems) > 0 {
			b.Fatal(s.Problems)
		}
	}
}

func BenchmarkDecode(b *testing.B) {
	src := string(readDemo(b))
	for b.Loop() {
		var tree map[string]any
		if _, err := toml.Decode(src, &tree); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSchema decodes the same file and holds it against the schema with a
// general-purpose validator, and does nothing else.
func BenchmarkSchema(b *testing.B) {
	src := string(readDemo(b))
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	const id = "https://dryfit.example/bench.json"
	require.NoError(b, c.AddResource(id, bytes.NewReader(schema.SpecSchema())))
	compiled, err := c.Compile(id)
	require.NoError(b, err)
	for b.Loop() {
		var tree map[string]any
		if _, err := toml.Decode(src, &tree); err != nil {
			b.Fatal(err)
		}
		text, err := json.Marshal(tree) // the validator takes what JSON decodes to
		if err != nil {
			b.Fatal(err)
		}
		var document any
		if err := json.Unmarshal(text, &document); err != nil {
			b.Fatal(err)
		}
		if err := compiled.Validate(document); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkThousandFiles is the command on a folder of a thousand specs.
func BenchmarkThousandFiles(b *testing.B) {
	folder := b.TempDir()
	src := readDemo(b)
	for i := range 1000 {
		name := filepath.Join(folder, fmt.Sprintf("%04d.ceiling.toml", i))
		require.NoError(b, os.WriteFile(name, src, 0o644))
	}
	for b.Loop() {
		var out, errs bytes.Buffer
		if status := run(context.Background(), []string{"check", folder}, console.Streams{Out: &out, Err: &errs}); status != 0 {
			b.Fatal(status, errs.String())
		}
	}
}

// BenchmarkThousandLegs is a check of a spec with 990 doors more, all different, few
// of which the panel passes, with what would pass.
func BenchmarkThousandLegs(b *testing.B) {
	text := manyLegs(b, 990)
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), Offers: true}
	for b.Loop() {
		s := review.Spec(demo, []byte(text), o)
		require.Empty(b, s.Problems)
		require.Greater(b, len(s.Findings), 900)
	}
}

// BenchmarkRemedyThousandLegs is remedy on a spec whose route has 997 doors more,
// all too small: the greatest route that there may be.
func BenchmarkRemedyThousandLegs(b *testing.B) {
	name := filepath.Join(b.TempDir(), "legs.ceiling.toml")
	require.NoError(b, os.WriteFile(name, []byte(manyLegs(b, 997)), 0o644))
	for b.Loop() {
		var out, errs bytes.Buffer
		if status := run(context.Background(), []string{"remedy", name}, console.Streams{Out: &out, Err: &errs}); status > 1 {
			b.Fatal(status, errs.String())
		}
	}
}

// manyLegs is the demo with so many doors more, all different, few of which the panel
// passes.
func manyLegs(b *testing.B, n int) string {
	text := strings.Builder{}
	text.Write(readDemo(b))
	for i := range n {
		fmt.Fprintf(&text, "\n[[route]]\nname = \"hatch %d\"\nkind = \"door\"\nwidth = \"%.2fmm\"\nheight = \"%.2fmm\"\nwall = \"200mm\"\nbefore = \"3m\"\nafter = \"3m\"\nbeside = \"3m\"\n",
			i, 500+0.13*float64(i), 600+0.1*float64(i))
	}
	return text.String()
}
