package checking

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/fsnotify/fsnotify"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The folders that a check passes over are not watched.
func TestWatchesNoFolderAside(t *testing.T) {
	root := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(root, ".hidden"), 0o755))
	require.NoError(t, os.MkdirAll(filepath.Join(root, "node_modules", "many"), 0o755))
	notify, err := fsnotify.NewWatcher()
	require.NoError(t, err)
	defer notify.Close()
	require.NoError(t, (&watching{notify: notify}).below(root))
	assert.Equal(t, []string{root}, notify.WatchList())
}
