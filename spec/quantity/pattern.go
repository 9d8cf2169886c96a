package quantity

import (
	"regexp"
	"strings"
)

// Allowed is which numbers a quantity may have.
type Allowed uint8

// What a quantity may be. A percentage is from 0% to 100%, a bearing from 0deg to less
// than 360deg.
const (
	Signed Allowed = iota
	NotNegative
	Positive
	Percentage
	Bearing
)

// StockPattern is a regular expression for the name of a nominal stock.
const StockPattern = `^[1-9][0-9]?/4$`

// Pattern is a regular expression for the text of a quantity, for programs that
// know a spec by its JSON Schema only. It is one of ECMA-262 and of Go alike.
//
// It matches all that Parse reads. It matches some texts that are refused, since
// a regular expression compares no numbers: a fraction of one or more after
// whole inches, more digits than are read, a size that is past anything
// physical, a temperature below absolute zero, a percentage that is over 100%
// by its exponent, a full turn by its exponent or in radians.
func Pattern(u Unit, a Allowed) string {
	of := func(n numbers) string { return decimal(n, false) + maybe(exponent) + blanks + unitForm(u) }
	if u == Metre {
		of = lengthForm
	}
	text := `[+−–-]?` + of(anything)
	switch a {
	case Positive:
		text = `\+?` + of(positive)
	case NotNegative:
		text = either(`\+?`+of(anything), minus+of(nought))
	case Percentage:
		most := either(`0*[0-9]{1,2}(?:\.[0-9]+)?`, `0*100(?:\.0+)?`, decimal(anything, false)+exponent)
		text = either(`\+?`+most+blanks+unitForm(u), minus+of(nought))
	case Bearing:
		degrees := `0*(?:[0-9]{1,2}|[12][0-9]{2}|3[0-5][0-9])(?:\.[0-9]+)?` + blanks + `(?:deg|°)`
		text = either(`\+?`+either(degrees, decimal(anything, false)+either(exponent+blanks+unitForm(u), blanks+`rad`)), minus+of(nought))
	}
	return `^` + blanks + text + blanks + `$`
}

// The characters of a pattern are those that Parse reads, and those that it
// takes for them.
const (
	blank    = "[ \u00a0]"
	blanks   = blank + `*`
	minus    = `[−–-]`
	joint    = `(?:` + blank + `+|` + minus + `)` // of whole inches and a fraction
	between  = blanks + minus + `?` + blanks      // between feet and inches
	exponent = `[eE][+−–-]?[0-9]{1,2}`
	footMark = blanks + `(?:ft|['′’])`
	inchMark = blanks + `(?:in|["″”]|'')`
	over     = `[/⁄]0*[1-9][0-9]*` // a fraction of nothing has no value
)

// numbers is a part of the numbers that are not negative.
type numbers uint8

const (
	anything numbers = iota
	positive
	nought
)

// whole is whole numbers, all or those under twelve.
func whole(n numbers, small bool) string {
	switch {
	case n == nought:
		return `0+`
	case n == positive && small:
		return `0*(?:[1-9]|1[01])`
	case n == positive:
		return `0*[1-9][0-9]*`
	case small:
		return `0*(?:[0-9]|1[01])`
	default:
		return `[0-9]+`
	}
}

func decimal(n numbers, small bool) string {
	switch n {
	case nought:
		return `0+(?:\.0+)?`
	case positive:
		return either(whole(n, small)+`(?:\.[0-9]+)?`, `0+\.0*[1-9][0-9]*`)
	default:
		return whole(n, small) + `(?:\.[0-9]+)?`
	}
}

// inchesForm is inches, whole, in decimals or with a fraction.
func inchesForm(n numbers, small bool) string {
	rest := n.rest()
	forms := []string{maybe(whole(rest, small)+joint) + whole(n, false) + over, decimal(n, small)}
	if n == positive {
		forms = append(forms, whole(n, small)+joint+whole(anything, false)+over)
	}
	if n != nought {
		forms = append(forms, maybe(whole(rest, small))+blanks+`[`+numerals+`]`)
	}
	return either(forms...) + inchMark
}

// rest is what one of two numbers may be where the other is one of n: of a sum
// that is nought both are, and of one that is positive only one need be.
func (n numbers) rest() numbers {
	if n == nought {
		return nought
	}
	return anything
}

// lengthForm is a number with its unit, or feet and inches.
func lengthForm(n numbers) string {
	forms := []string{
		decimal(n, false) + maybe(exponent) + blanks + unitForm(Metre),
		inchesForm(n, false),
		decimal(n, false) + footMark + maybe(between+inchesForm(n.rest(), true)),
	}
	if n == positive {
		forms = append(forms, decimal(anything, false)+footMark+between+inchesForm(n, true))
	}
	return either(forms...)
}

// unitForm is the units that a quantity may be written in.
func unitForm(u Unit) string {
	var names []string
	for _, s := range suffixes[u] {
		name := strings.NewReplacer("/", "[/⁄]", "3", "[3³]").Replace(regexp.QuoteMeta(s.name))
		if u == Celsius {
			name = `°?` + name
		}
		names = append(names, name)
	}
	return either(names...)
}

func either(forms ...string) string {
	if len(forms) == 1 {
		return forms[0]
	}
	return `(?:` + strings.Join(forms, `|`) + `)`
}

func maybe(form string) string { return `(?:` + form + `)?` }
