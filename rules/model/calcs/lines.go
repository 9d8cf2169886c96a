package calcs

import (
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// Lines are figures of the calculation sheet, under one subject after another.
type Lines struct {
	Subject string
	List    []figure.Figure
	c       *layout.Ceiling
	where   record.Set // the keys that decide whether there are lines at all
}

// New is a list that has no lines yet, under a subject.
func New(c *layout.Ceiling, subject string) *Lines { return &Lines{Subject: subject, c: c} }

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
func Measured(v layout.Number, unit quantity.Unit) figure.Measure {
	return figure.Measure{Key: v.Key(), Value: quantity.Value{SI: v.Get(), Unit: unit}, From: v.From()}
}

// Metres is a length.
func Metres(v layout.Number) figure.Measure { return Measured(v, quantity.Metre) }

// Angle is an angle.
func Angle(v layout.Number) figure.Measure { return Measured(v, quantity.Radian) }

// Ratio is a number without unit.
func Ratio(v layout.Number) figure.Measure { return Measured(v, quantity.One) }

// Whole is a count.
func Whole(v layout.Count) figure.Measure {
	return figure.Measure{Key: v.Key(), Value: quantity.Value{SI: float64(v.Get()), Unit: quantity.One}, From: v.From()}
}

// Solved is a value of which it was recorded what it comes from.
func Solved(c *layout.Ceiling, v quantity.Value, from record.Set) figure.Measure {
	c.Note(from)
	return figure.Measure{Value: v, From: from}
}

// Term is a symbol of a formula.
func Term(symbol string, m figure.Measure) figure.Term {
	return figure.Term{Symbol: symbol, Measure: m}
}
