//go:build !race

package remedy

// sample is how many damaged specs are restored unless more are asked for.
const sample = 24

// Every so many rules of the catalogue are tried.
const Every = 1
