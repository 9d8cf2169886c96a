package edit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/spec/edit"
)

func TestRemove(t *testing.T) {
	for _, row := range []struct{ name, src, key, want string }{
		{"a line with its comment", "[vault]\nspan = \"4m\"\nrise = \"1m\" # or so\nlength = \"7m\"\n", "vault.rise", "[vault]\nspan = \"4m\"\nlength = \"7m\"\n"},
		{"the last line without an end", "[vault]\nspan = \"4m\"\nrise = \"1m\"", "vault.rise", "[vault]\nspan = \"4m\"\n"},
		{"carriage returns and a byte order mark", "\xef\xbb\xbf[vault]\r\nspan = \"4m\"\r\nrise = \"1m\"\r\n", "vault.span", "\xef\xbb\xbf[vault]\r\nrise = \"1m\"\r\n"},
		{"a dotted key", "vault.span = \"4m\"\nvault.rise = \"1m\"\n", "vault.rise", "vault.span = \"4m\"\n"},
		{"a list of several lines", "[strap]\nstations = [\n  \"1%\",\n  \"2%\",\n]\nlap = \"60mm\"\n", "strap.stations", "[strap]\nlap = \"60mm\"\n"},
	} {
		out, err := edit.Remove([]byte(row.src), row.key)
		require.NoError(t, err, row.name)
		assert.Equal(t, row.want, string(out), row.name)
	}
	for _, row := range []struct{ src, key, why string }{
		{"vault = { span = \"4m\", rise = \"1m\" }\n", "vault.rise", "vault.rise is not on a line of its own, and can't be taken out in place"},
		{"[vault]\nspan = \"4m\"\n", "vault.rise", "vault.rise is not written in one place"},
		{"[vault\n", "vault.rise", "line 1: "},
	} {
		_, err := edit.Remove([]byte(row.src), row.key)
		require.ErrorContains(t, err, row.why)
	}
}
