//go:build race

package remedy

// specs is how many damaged specs are restored where the race detector makes
// a search ten times as slow.
const specs = 5

// Every so many rules of the catalogue are tried.
const Every = 6
