package report

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/rivo/uniseg"
	"github.com/santhosh-tekuri/jsonschema/v5"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/catalog"
	"dryfit/rules/review"
	"dryfit/rules/standards"
	"dryfit/schema"
)

func TestSafe(t *testing.T) {
	for text, want := range map[string]string{
		"plain é 漢 ½″":        "plain é 漢 ½″",
		"\x1b[31mred":         `\x1b[31mred`,
		"a\nb\tc\r":           `a\x0ab\x09c\x0d`,
		"\u202eturned":        `\u202eturned`,
		"zero\u200bwidth":     `zero\u200bwidth`,
		"line\u2028separator": `line\u2028separator`,
		"bad \xff byte":       `bad \xff byte`,
		"\u009bcsi":           `\x9bcsi`,
		"replacement \uFFFD":  "replacement \uFFFD",
	} {
		assert.Equal(t, want, Safe(text))
	}
}

// examples is a report on the demo and on files that can't be read.
func examples(t *testing.T) Report {
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), Offers: true}
	var sheets []*review.Sheet
	for _, name := range []string{"map-gallery", "reading-room"} {
		path := "docs/examples/alder-quay/specs/" + name + ".ceiling.toml"
		src, err := os.ReadFile("../../../../" + path)
		require.NoError(t, err)
		sheets = append(sheets, review.Spec(path, src, o))
	}
	sheets = append(sheets, review.Unreadable("gone.ceiling.toml", "there is no such file", o),
		review.Spec("bad.ceiling.toml", []byte("dryfit = 1\nroom = 3\n"), o))
	return Report{Version: "(devel)", On: "2026-11-25", Runs: []Run{{Sheets: sheets}}}
}

func TestJSONSatisfiesItsSchema(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, JSON(&b, examples(t)))
	var document any
	require.NoError(t, json.Unmarshal(b.Bytes(), &document))
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	require.NoError(t, c.AddResource("https://dryfit.example/schema/check-1.json", bytes.NewReader(schema.OutputSchema())))
	require.NoError(t, c.MustCompile("https://dryfit.example/schema/check-1.json").Validate(document))
}

func TestTextKeepsToEightyColumns(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, Text(&b, examples(t), false))
	for _, line := range strings.Split(b.String(), "\n") {
		assert.LessOrEqual(t, uniseg.StringWidth(line), textWidth, line)
		assert.Equal(t, strings.TrimRight(line, " "), line)
	}
}

func TestNumbersCarryNineDigits(t *testing.T) {
	b, err := json.Marshal(jsonNumber(1.0 / 3))
	require.NoError(t, err)
	assert.Equal(t, "0.333333333", string(b))
}

func TestWrap(t *testing.T) {
	assert.Equal(t, []string{"one two", "three", "a-word-that-is-wider", "four"}, wrap("one two three a-word-that-is-wider four", 9))
	assert.Equal(t, []string{"漢字 漢", "字"}, wrap("漢字 漢 字", 8), "wide letters take two columns")
	assert.Equal(t, []string{""}, wrap("", 9))
}
