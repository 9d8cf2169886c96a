//go:build race

package remedy

// sample is how many damaged specs are restored where the race detector makes
// a search ten times as slow.
const sample = 5
