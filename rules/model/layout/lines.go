package layout

import (
	"dryfit/rules/model/figure"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// Lines are figures of the calculation sheet, under one subject after another.
type Lines struct {
	Subject string
	List    []figure.Figure
	c       *Ceiling
	where   record.Set // the keys that decide whether there are lines at all
}

// Lines are none yet, under a subject.
func (c *Ceiling) Lines(subject string) *Lines { return &Lines{Subject: subject, c: c} }

// Add puts a figure on the sheet. What work reads, to find the value, the terms
// and the formula, are the figure's inputs, and it is assumed where one of them
// is.
func (l *Lines) Add(key, symbol, name string, work func(*figure.Figure) figure.Measure) {
	f := figure.Figure{Key: key, Symbol: symbol, Name: name, Subject: l.Subject}
	f.Inputs = l.c.Recorded(func() {
		m := work(&f)
		f.Value, f.From = m.Value, m.From
	})
	f.Inputs = f.Inputs.Or(l.where)
	f.Assumed = l.c.AssumedIn(f.Inputs)
	l.List = append(l.List, f)
}

// Where adds lines if something holds. What that reads is an input of each.
func (l *Lines) Where(holds func() bool, add func()) {
	var ok bool
	read := l.c.Recorded(func() { ok = holds() })
	if !ok {
		return
	}
	outer := l.where
	l.where = outer.Or(read)
	add()
	l.where = outer
}

// Measured is a number in an SI unit.
func Measured(v Number, unit quantity.Unit) figure.Measure {
	return figure.Measure{Key: v.Key(), Value: quantity.Value{SI: v.Get(), Unit: unit}, From: v.From()}
}

// Metres is a length.
func Metres(v Number) figure.Measure { return Measured(v, quantity.Metre) }

// Angle is an angle.
func Angle(v Number) figure.Measure { return Measured(v, quantity.Radian) }

// Ratio is a number without unit.
func Ratio(v Number) figure.Measure { return Measured(v, quantity.One) }

// Whole is a count.
func Whole(v Count) figure.Measure {
	return figure.Measure{Key: v.Key(), Value: quantity.Value{SI: float64(v.Get()), Unit: quantity.One}, From: v.From()}
}

// Solved is a value of which it was recorded what it comes from.
func (c *Ceiling) Solved(v quantity.Value, from record.Set) figure.Measure {
	c.rec.NoteAll(from)
	return figure.Measure{Value: v, From: from}
}

// Term is a symbol of a formula.
func Term(symbol string, m figure.Measure) figure.Term {
	return figure.Term{Symbol: symbol, Measure: m}
}

// Number is one that f works out of others, with the key that it has as a
// figure.
func (c *Ceiling) Number(key string, f func() float64) Number { return record.Named(c.rec, key, f) }

// Count is such a count.
func (c *Ceiling) Count(key string, f func() int) Count { return record.Named(c.rec, key, f) }
