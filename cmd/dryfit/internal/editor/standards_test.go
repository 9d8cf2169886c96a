package editor

import (
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/catalog"
)

// Standards that can't be taken show on their own file, at their place, until
// they are mended on disk.
func TestBrokenStandards(t *testing.T) {
	const file = "/rooms/dryfit.toml"
	src := "dryfit = 1\nname = \"é𝄞\"\nnonsense = 1\n"
	var broken atomic.Bool
	broken.Store(true)
	o := options()
	o.Standards = func(folder string) Found {
		assert.Equal(t, "/rooms", folder)
		if !broken.Load() {
			return builtIn("")
		}
		_, problems := catalog.ReadStandards(file, []byte(src))
		return Found{Broken: []Broken{{Path: file, Source: []byte(src), Problems: problems}}}
	}
	e := connect(t, o).greet(everything)
	e.open(uri, demo(t))
	found := e.found(uri, 1)
	require.Len(t, found, 1)
	assert.Equal(t, "file.read", found[0].Code)
	assert.Contains(t, found[0].Message, file)
	found = e.found(uriOf(file), 0)
	require.Len(t, found, 1)
	assert.Equal(t, "file.shape", found[0].Code)
	assert.Equal(t, span{position{2, 0}, position{2, 8}}, found[0].Range)
	assert.Contains(t, helpOn(e, demo(t), "[rib]", 2), "`rib`", "help needs no standards")

	// While the file is open, it is judged by its text there.
	e.open(uriOf(file), "dryfit = 1\n")
	found = e.found(uriOf(file), 1)
	require.NotEmpty(t, found)
	assert.Contains(t, found[0].Message, "name")
	e.change(uriOf(file), 2, "dryfit = 1\nname = \"x\"\n")
	assert.Empty(t, e.found(uriOf(file), 2))

	broken.Store(false)
	e.notify("textDocument/didSave", fields{"textDocument": fields{"uri": uriOf(file)}})
	assert.Greater(t, len(e.found(uri, 1)), 3)
	e.notify("textDocument/didClose", fields{"textDocument": fields{"uri": uriOf(file)}})
	assert.Empty(t, e.found(uriOf(file), 0))

	broken.Store(true)
	e.notify("workspace/didChangeWatchedFiles", fields{"changes": []fields{{"uri": uriOf(file), "type": 2}}})
	assert.Len(t, e.found(uriOf(file), 0), 1)
	broken.Store(false)
	e.kept = nil
	e.notify("workspace/didChangeWatchedFiles", fields{"changes": []fields{{"uri": uriOf(file), "type": 2}}})
	assert.Empty(t, e.found(uriOf(file), 0))
	e.leave()
}
