package picture

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// A person who stands in a view for its scale, in m; common practice.
const (
	personHigh = 1.75
	personAway = 4.5 // from the eye, where the rooms are deep enough
	personOff  = 0.9 // beside the line of sight
)

// figureOf is the right half of a plain figure without its head, from the neck down:
// half its width, and its height above the floor, in parts of the person's height.
var figureOf = [][2]float64{
	{0.030, 0.87},
	{0.038, 0.84},
	{0.112, 0.81},
	{0.128, 0.77},
	{0.136, 0.50},
	{0.106, 0.48},
	{0.098, 0.62},
	{0.092, 0.48},
	{0.072, 0.02},
	{0.084, 0},
	{0.018, 0},
	{0.010, 0.44},
}

// The head, in parts of the person's height.
const (
	headMiddle, headTall, headWide = 0.932, 0.068, 0.050
	headSides                      = 16
)

// person paints a standing person at a distance from the eye, before all else: on the
// side of the line of sight on which there is more room.
func (s *scene) person(away float64) {
	off, floor := s.beside(), -s.c.Room.Height.Get()
	at := func(right, up float64) space { return s.eye.facing(off+right*personHigh, floor+up*personHigh, away) }
	var body, head []space
	for _, p := range figureOf {
		body = append(body, at(p[0], p[1]))
	}
	for i := len(figureOf) - 1; i >= 0; i-- {
		body = append(body, at(-figureOf[i][0], figureOf[i][1]))
	}
	for k := range headSides {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / headSides)
		head = append(head, at(headWide*cos, headMiddle+headTall*sin))
	}
	s.add(body, nil, wallTone, paper.Fine)
	s.add(head, nil, wallTone, paper.Fine)
}

// beside is how far to the right of the line of sight the person stands.
func (s *scene) beside() float64 {
	left, right := s.eye.eye.y, s.c.Vault.Span.Get()-s.eye.eye.y
	if s.eye.turns {
		left, right = s.c.BuiltLength()-s.eye.eye.x, s.eye.eye.x
	}
	if left > right {
		return -min(personOff, left/2)
	}
	return min(personOff, right/2)
}

// facing is the point so far to the right of the camera, so high above the springing,
// and so far away.
func (c camera) facing(right, up, away float64) space {
	if c.turns {
		return space{c.eye.x - right, c.eye.y + away, up}
	}
	return space{c.eye.x + away, c.eye.y + right, up}
}
