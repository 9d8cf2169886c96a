package build

import (
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestSaidOfARelease(t *testing.T) {
	was, from := release, built
	t.Cleanup(func() { release, built = was, from })
	release, built = "v1.2.3", "0123456789abcdef0123456789abcdef01234567"
	assert.Equal(t, "v1.2.3, commit "+built, Version()+Said(Commit()))

	asBuilt := []debug.BuildSetting{{Key: "vcs.revision", Value: built}, {Key: "vcs.modified", Value: "false"}}
	assert.Equal(t, ", commit "+built, Said(recorded(asBuilt)))
	asBuilt[1].Value = "true"
	assert.Equal(t, ", commit "+built+" with changes", Said(recorded(asBuilt)))
	assert.Empty(t, Said(recorded(nil)), "built out of a repository")
}
