package nearest_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/spec/nearest"
)

func TestWord(t *testing.T) {
	known := []string{"width", "depth", "lamination", "species"}
	for _, c := range []struct {
		word, want string
		found      bool
	}{
		{"widht", "width", true}, // neighbours swapped
		{"laminations", "lamination", true},
		{"speces", "species", true},
		{"colour", "", false},
		{"", "", false},
	} {
		got, found := nearest.Word(c.word, known)
		assert.Equal(t, c.want, got, c.word)
		assert.Equal(t, c.found, found, c.word)
	}
}
