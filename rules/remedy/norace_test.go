//go:build !race

package remedy

// specs is how many damaged specs are restored unless more are asked for.
const specs = 24

// Every so many rules of the catalogue are tried.
const Every = 1
