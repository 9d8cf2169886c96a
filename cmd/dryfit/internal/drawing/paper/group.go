package paper

import "iter"

// Ungrouped goes through items in their order, through those of a group in its place.
func Ungrouped(items []Item) iter.Seq[Item] {
	return func(yield func(Item) bool) { ungrouped(items, yield) }
}

func ungrouped(items []Item, yield func(Item) bool) bool {
	for _, item := range items {
		if g, ok := item.(Group); ok {
			if !ungrouped(g.Items, yield) {
				return false
			}
		} else if !yield(item) {
			return false
		}
	}
	return true
}
