package engine

import (
	"fmt"
	"strings"
)

// Counts is what stands behind a verdict.
type Counts struct {
	Held, Queried, Noted, Referred int
	Accepted                       int
	NotChecked                     int      // rules
	Families                       Families // that have a rule which was not checked
	Uncomputed                     int      // rules whose figure could not be computed
	Assumed                        int      // distinct keys
	Unreadable                     int      // faults of the file
	Before                         Before
}

// Before is what of the counts a baseline had, and that therefore fails nothing.
type Before struct {
	Compared                  bool // whether there is a baseline
	Held, Queried, Uncomputed int
}

// plus adds what was there of another file.
func (b Before) plus(o Before) Before {
	return Before{b.Compared || o.Compared, b.Held + o.Held, b.Queried + o.Queried, b.Uncomputed + o.Uncomputed}
}

// Since are how many of the holds, queries and figures not computed are new, and
// how many the baseline had.
func (c Counts) Since() (fresh, before int) {
	before = c.Before.Held + c.Before.Queried + c.Before.Uncomputed
	return c.Held + c.Queried + c.Uncomputed - before, before
}

// Plus adds the counts of another file.
func (c Counts) Plus(o Counts) Counts {
	return Counts{
		Held: c.Held + o.Held, Queried: c.Queried + o.Queried,
		Noted: c.Noted + o.Noted, Referred: c.Referred + o.Referred,
		Accepted: c.Accepted + o.Accepted, NotChecked: c.NotChecked + o.NotChecked,
		Uncomputed: c.Uncomputed + o.Uncomputed, Assumed: c.Assumed + o.Assumed,
		Unreadable: c.Unreadable + o.Unreadable, Before: c.Before.plus(o.Before),
		Families: c.Families.plus(o.Families),
	}
}

// String lists what was counted, the worst first. What every spec is asked for
// is always named, so that a reader, or a script, finds each total in its place;
// the rest where there is any. Of a file that can't be read nothing was counted.
// With a baseline, what is new of that and what it had come last.
func (c Counts) String() string {
	if c.Unreadable > 0 && c == (Counts{Unreadable: c.Unreadable, Before: c.Before}) {
		return fmt.Sprintf("%d unreadable", c.Unreadable)
	}
	said := strings.Join(c.parts(), ", ")
	if c.Before.Compared {
		fresh, before := c.Since()
		said += fmt.Sprintf("; %d %s, %d %s", fresh, New, before, AlreadyThere)
	}
	return said
}

// parts are the counts in words: what a check is asked for even where it is none.
func (c Counts) parts() (parts []string) {
	for _, p := range []struct {
		n      int
		what   string
		always bool
	}{
		{c.Unreadable, "unreadable", false},
		{c.Held, "held", true},
		{c.Uncomputed, "not computed", false},
		{c.Queried, "queried", true},
		{c.Noted, "noted", false},
		{c.Accepted, "accepted", false},
		{c.Referred, "referred", true},
		{c.NotChecked, "not checked" + c.Families.aside(), true},
		{c.Assumed, "assumed", true},
	} {
		if p.n > 0 || p.always {
			parts = append(parts, fmt.Sprintf("%d %s", p.n, p.what))
		}
	}
	return parts
}
