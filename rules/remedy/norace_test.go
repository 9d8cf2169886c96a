//go:build !race

package remedy

// sample is how many damaged specs are restored unless more are asked for.
const sample = 24
