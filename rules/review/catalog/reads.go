package catalog

import (
	_ "embed"
	"strings"
	"sync"

	"dryfit/spec"
	"dryfit/spec/record"
)

// reads has a line a rule: its id, and the keys that it was seen to read in all
// cases of all rules and in the examples. The documents' generator writes it.
//
//go:embed reads.txt
var reads string

var readBy = sync.OnceValue(func() map[string]record.Set {
	out := map[string]record.Set{}
	for _, line := range strings.Split(reads, "\n") {
		id, keys, _ := strings.Cut(line, ":")
		var set record.Set
		for _, key := range strings.Fields(keys) {
			if id, ok := spec.ID(key); ok {
				set.Add(id)
			}
		}
		out[id] = set
	}
	return out
})

// Reads are the keys that a rule may read: those that it was seen to read. For
// one spec its assessment knows better.
func Reads(id string) record.Set { return readBy()[id] }

// ReadsText is the list of a number of rules, as Reads has it.
func ReadsText(seen map[string]record.Set) string {
	var b strings.Builder
	for _, r := range Rules() {
		b.WriteString(r.ID + ": " + strings.Join(spec.Names(seen[r.ID]), " ") + "\n")
	}
	return b.String()
}
