package spec_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/spec"
)

func TestProblemsOfTheFile(t *testing.T) {
	for _, c := range []struct {
		name, src     string
		line, column  int
		rule, message string
	}{
		{"empty", " \n", 1, 1, "file.read", "the file is empty"},
		{"only a byte order mark", "\xef\xbb\xbf", 1, 1, "file.read", "the file is empty"},
		{"too large", strings.Repeat("#", spec.MaxSize+1), 1, 1, "file.read", "the file is larger than 1MiB, the maximum"},
		{"not UTF-8", "a = 1\nb = \"\xff\"", 2, 6, "file.toml", "byte 0xff is not UTF-8; save the file as UTF-8"},
		{"UTF-16 without a mark", "a\x00=\x001\x00", 1, 2, "file.toml", "control character 0x00 is not allowed in TOML; save the file as text in UTF-8"},
		{"a carriage return alone", "a = 1\rb = 2\r\n", 1, 6, "file.toml", "control character 0x0d is not allowed in TOML; save the file as text in UTF-8"},
		{"after a mark", "\xef\xbb\xbfa = \"é\" x\r\n", 1, 9, "file.toml", "not TOML: expected a top-level item to end with a newline, comment, or EOF, but got 'x' instead"},
		{"a key twice", "a = 1\nb = 2\na = 3", 3, 1, "file.toml", "not TOML: key 'a' has already been defined"},
		{"a dotted key twice", "a.b = 1\na.b = 2", 2, 1, "file.toml", "not TOML: key 'a.b' has already been defined"},
		{"a table twice", "[a]\nx = 1\n[a]\n", 3, 2, "file.toml", "not TOML: key 'a' has already been defined"},
		{"a key of an inline table twice", "x = { a = 1, a = 2 }", 1, 14, "file.toml", "not TOML: key 'x.a' has already been defined"},
		{"no value", "[a]\nb =\n", 2, 4, "file.toml", "not TOML: expected value but found '\\n' instead"},
		{"an open header", "[a", 1, 2, "file.toml", "not TOML: expected '.' or ']' to end table name, but got the end of the file instead"},
		{"an open string", "a = \"4200mm\nb = 1\n", 1, 12, "file.toml", "not TOML: strings cannot contain newlines"},
		{"not a number", "[a]\nb = nan\n", 2, 5, "file.shape", "is not a finite number"},
		{"infinite", "a = [1.0, -inf]\n", 1, 11, "file.shape", "is not a finite number"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, problems := spec.Parse("p", []byte(c.src))
			require.Len(t, problems, 1)
			assert.Equal(t, spec.Position{Line: c.line, Column: c.column}, problems[0].Position)
			assert.Equal(t, c.rule, problems[0].Rule)
			assert.Equal(t, c.message, problems[0].Message)
		})
	}
}

func TestAValueWithoutQuotesIsNamedWhole(t *testing.T) {
	for _, c := range []struct {
		src, value, message string
	}{
		{"width = 4200mm # clear", "4200mm", `4200mm has no quotes; write "4200mm"`},
		{"a = 13ft 9in\r\n", "13ft 9in", `13ft 9in has no quotes; write "13ft 9in"`},
		{`a = 13'-9 1/2"`, `13'-9 1/2"`, `13'-9 1/2" has no quotes; write "13'-9 1/2\""`},
		{"a = 3/4in", "3/4in", `3/4in has no quotes; write "3/4in"`},
		{"a = -5mm", "-5mm", `-5mm has no quotes; write "-5mm"`},
		{"a = 1.78e6psi", "1.78e6psi", `1.78e6psi has no quotes; write "1.78e6psi"`},
		{"t = { width = 10mm, depth = 8mm }", "10mm", `10mm has no quotes; write "10mm"`},
		{`s = ["10%", 36%]`, "36%", `36% has no quotes; write "36%"`},
		{"species = white oak", "white oak", `white oak has no quotes; write "white oak"`},
		{"saddle = True", "True", "True is written true"},
	} {
		d, problems := spec.Parse("p", []byte(c.src))
		require.Len(t, problems, 1)
		assert.Equal(t, c.message, problems[0].Message)
		assert.Equal(t, c.value, string(d.Source[problems[0].Range.Start:problems[0].Range.End]))
	}
	for _, src := range []string{
		"a = 07", "a = 2027-06-31", "a = 1e400", "[a b]", "b = 1 c = 2", "x = \"abc\" mm", "a b = 1", "foo", "= 1",
	} {
		_, problems := spec.Parse("p", []byte(src))
		require.Len(t, problems, 1)
		assert.NotContains(t, problems[0].Message, "quotes", src)
	}
}

func TestNestingHasALimit(t *testing.T) {
	for name, src := range map[string]string{
		"lists":         "x = " + strings.Repeat("[", 17) + strings.Repeat("]", 17),
		"inline tables": "x = " + strings.Repeat("{a = ", 17) + "1" + strings.Repeat("}", 17),
		"dotted names":  strings.Repeat("a.", 17) + "a = 1",
		"headers":       "[" + strings.Repeat("a . ", 16) + "a]",
		"over lines":    "x = " + strings.Repeat("[\n# ]\n", 17),
		"after quotes":  `x = ["""a"""", ` + strings.Repeat("[", 16),
		"never closed":  strings.Repeat("[", 100_000),
	} {
		_, problems := spec.Parse("p", []byte(src))
		require.Len(t, problems, 1, name)
		assert.Equal(t, "nested more than 16 deep, the maximum", problems[0].Message, name)
	}
	brackets := strings.Repeat("[{", 50)
	for name, src := range map[string]string{
		"comment":           "x = 1 # " + brackets,
		"string":            `x = "\"` + brackets + `"`,
		"literal string":    `x = '\` + "' # " + brackets,
		"multi-line string": `x = """\"""` + brackets + `"""`,
		"multi-line ends":   "x = '''" + brackets + "'''''",
		"decimals":          "x = [" + strings.Repeat("1.5, ", 50) + "]",
		"lines":             strings.Repeat("[[a.b]]\nc.d = [1.5, 2.5]\n", 50),
		"as deep as may be": "x = " + strings.Repeat("[", 16) + strings.Repeat("]", 16),
	} {
		_, problems := spec.Parse("p", []byte(src))
		assert.Empty(t, problems, name)
	}
}
