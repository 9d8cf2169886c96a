//go:build !race

package remedy

// sample is how many damaged specs are restored unless more are asked for.
const sample = 24

// every so many rules of the catalogue are tried.
const every = 1
