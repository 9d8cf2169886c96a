package paper

// Pen is the width of a line, by what it is for.
type Pen uint8

// The pens, from none upward. Their widths are of the series of ISO 128-2.
const (
	None   Pen = iota
	Hair       // 0.13mm: dimensions, leaders, hatching
	Fine       // 0.18mm: what is seen beyond
	Medium     // 0.25mm: edges
	Bold       // 0.35mm: outlines of pieces
	Heavy      // 0.5mm: what is cut, borders
)

// Width of a line drawn with the pen, in mm.
func (p Pen) Width() float64 { return [...]float64{0, 0.13, 0.18, 0.25, 0.35, 0.5}[p] }

// Dash is how a line is broken.
type Dash uint8

// The kinds of lines.
const (
	Solid  Dash = iota
	Hidden      // behind something: short dashes
	Centre      // a centre line: long, short
	Beyond      // what is not part of the work: long, short, short
)

// Lengths are the drawn and the empty stretches of a line in turn, in mm; none
// of a solid one.
func (d Dash) Lengths() []float64 {
	return [...][]float64{nil, {2, 1}, {6, 1, 1, 1}, {6, 1, 1, 1, 1, 1}}[d]
}

// Tone is what a figure is filled with: a share of ink on paper. It is opaque,
// so that what is nearer hides what is farther.
type Tone uint8

// The tones. Between Paper and Ink lie seven shades: Paper+1 is the lightest.
const (
	Clear Tone = iota // not filled
	Paper
	Ink = Paper + 8
)

// Share of ink in the tone, from 0 of paper to 1.
func (t Tone) Share() float64 { return float64(max(t, Paper)-Paper) / 8 }

// Stroke is how a line is drawn. Marked lines stand for a finding.
type Stroke struct {
	Pen    Pen
	Dash   Dash
	Marked bool
}
