package main

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The totals under a drawn option are whole: no figure is cut away.
func TestContactSheetHasAllTotals(t *testing.T) {
	out, _, _ := printed(t, "dryfit study ../../docs/examples/alder-quay/specs/map-gallery.ceiling.toml --vary grid.along=4,5 --format svg --on 2026-11-25")
	text := strings.Join(strings.Fields(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(out, " ")), " ")
	whole := regexp.MustCompile(`(FAIL|PASS WITH NOTES) \d+ held, \d+ queried, (\d+ noted, )?\d+ referred, \d+ not checked( \([a-z, ]+\))?, \d+ assumed`)
	assert.Len(t, whole.FindAllString(text, -1), 2, text)
}
