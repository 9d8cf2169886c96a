package main

import (
	"bytes"
	"context"
	"flag"
	"os"
	"runtime/debug"
	"runtime/metrics"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/schema"
)

// longest is how many letters a text of these tests has.
const longest = 100_000

var allLong = flag.Bool("long", false, "run each command with each group of long texts, not a third of them")

// longTexts are one word, letters with marks over them, and many words.
var longTexts = []string{
	strings.Repeat("W", longest), "e" + strings.Repeat("\u0301", longest), strings.Repeat("ab ", longest/3), strings.Repeat("漢", longest/3), strings.Repeat("─", longest/3),
}

// longLines are the commands, each in the formats that show texts in ways of
// their own.
var longLines = []string{
	"check a.ceiling.toml", "check --format json a.ceiling.toml", "check --format sarif a.ceiling.toml", "check --format junit a.ceiling.toml",
	"check --format markdown a.ceiling.toml", "check --format annotations a.ceiling.toml", "calcs a.ceiling.toml", "takeoff --format csv a.ceiling.toml",
	"compare a.ceiling.toml b.ceiling.toml", "compare --format markdown a.ceiling.toml b.ceiling.toml", "standards a.ceiling.toml",
	"remedy --limit 40 a.ceiling.toml", "study a.ceiling.toml --vary grid.along=6", "study a.ceiling.toml --vary grid.along=6 --format html",
	"draw a.ceiling.toml --sheet all --format pdf", "submittal a.ceiling.toml",
}

// long leaves out a test that takes long and in which nothing runs side by side, where
// time is short.
func long(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("long, and nothing in it runs side by side")
	}
}

// longInOwnFolder begins a long test in a folder of its own, without standards from
// farther up, and is the demo's text.
func longInOwnFolder(t *testing.T) []byte {
	t.Helper()
	long(t)
	text := readDemo(t)
	t.Chdir(t.TempDir())
	require.NoError(t, os.Mkdir(".git", 0o755))
	return text
}

// A text of 100,000 letters, at whatever key it stands, makes no command slow or
// large. The limits are far over what it takes, some tenths of a second and 20MB.
func TestLongTexts(t *testing.T) {
	demo := longInOwnFolder(t)
	specs := longKeys(freeTexts(t, schema.SpecSchema()))
	for i, keys := range specs {
		putLong(t, demo, keys, i)
		for j, line := range longLines {
			if (i+j)%3 == 0 || *allLong {
				endsSoon(t, line)
			}
		}
	}
}

func onDate(line string) []string {
	if strings.HasPrefix(line, "calcs") || strings.HasPrefix(line, "takeoff") || strings.HasPrefix(line, "standards") {
		return nil
	}
	return []string{"--on", "2026-11-25"}
}

// longKeys are keys in groups, so that the texts of one are no more than a file may
// have.
func longKeys(keys []string) (out [][]string) {
	const together = 5
	for len(keys) > together {
		out, keys = append(out, keys[:together]), keys[together:]
	}
	return append(out, keys)
}

// putLong writes two specs with long texts at some keys.
func putLong(t *testing.T, demo []byte, keys []string, turn int) {
	n := turn
	text := func() string {
		n++
		return longTexts[n%len(longTexts)]
	}
	var tree map[string]any
	require.NoError(t, toml.Unmarshal(demo, &tree))
	tree["accept"] = []map[string]any{{"rule": "strap.setting", "reason": "agreed", "by": "design team", "until": "2027-06-30"}}
	tree["route"] = tree["route"].([]map[string]any)[:2]
	tree["route"].([]map[string]any)[1]["tried"] = map[string]any{"by": "shop", "how": "mock-up", "date": "2026-06-30", "until": "2027-06-30"}
	tree["route"].([]map[string]any)[1]["width"] = "100mm" // to have a finding there
	for _, key := range keys {
		putText(tree, strings.Split(key, "\n"), text)
	}
	writeTOML(t, "a.ceiling.toml", tree)
	tree["grid"].(map[string]any)["along"] = 5
	writeTOML(t, "b.ceiling.toml", tree)
}

// peak is the most bytes that are on the heap while something runs, garbage of a
// fifth among them.
func peak(do func()) (most uint64) {
	defer debug.SetGCPercent(debug.SetGCPercent(20))
	sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
	done := make(chan struct{})
	ended := make(chan struct{})
	go func() {
		defer close(ended)
		for {
			metrics.Read(sample)
			most = max(most, sample[0].Value.Uint64())
			select {
			case <-done:
				return
			case <-time.After(5 * time.Millisecond):
			}
		}
	}()
	do()
	close(done)
	<-ended
	return most
}

// Nor does one in a standards file: its name, the sources of what it loosens, a
// material and its source.
func TestLongTextsOfStandards(t *testing.T) {
	demo := longInOwnFolder(t)
	for i, text := range longTexts {
		writeTOML(t, "dryfit.toml", map[string]any{
			"dryfit": 1, "name": text,
			"limit":    map[string]any{"bend.lamination.ratio": map[string]any{"value": 20, "source": text}},
			"severity": map[string]any{"strap.setting": "note"},
			"material": []map[string]any{{
				"name": text, "kind": "timber", "source": text, "group": "hardwood", "specific_gravity": 0.9, "modulus": "40GPa", "rupture": "200MPa",
			}},
		})
		for name, along := range map[string]int{"a": 6, "b": 5} {
			var tree map[string]any
			require.NoError(t, toml.Unmarshal(demo, &tree))
			tree["rib"].(map[string]any)["species"] = text
			tree["grid"].(map[string]any)["along"] = along
			writeTOML(t, name+".ceiling.toml", tree)
		}
		for j, line := range longLines {
			if (i+j)%3 == 0 || *allLong {
				endsSoon(t, line)
			}
		}
	}
}

// endsSoon runs a command line in 20s and 200MB, both far over what it takes.
func endsSoon(t *testing.T, line string) {
	t.Helper()
	began := time.Now()
	var out, errs bytes.Buffer
	used := peak(func() {
		run(context.Background(), append(strings.Fields(line), onDate(line)...), console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs})
	})
	assert.Less(t, time.Since(began), 20*time.Second, line)
	assert.Less(t, used, uint64(200<<20), line)
}
