// Package space has places, directions and turns in space, cells of turns, and the
// convex hull and the products of a plane. Lengths are in m, angles in rad.
package space

import (
	"math"
)

// Vec is a place, in m, or a direction in space. Of a body, X runs along its length,
// Y and Z lie in its section.
type Vec struct{ X, Y, Z float64 }

// Add is the sum of two.
func (v Vec) Add(w Vec) Vec { return Vec{v.X + w.X, v.Y + w.Y, v.Z + w.Z} }

// Minus is the vector from w to v.
func (v Vec) Minus(w Vec) Vec { return Vec{v.X - w.X, v.Y - w.Y, v.Z - w.Z} }

// Times is a vector f times as long.
func (v Vec) Times(f float64) Vec { return Vec{f * v.X, f * v.Y, f * v.Z} }

// Dot is the scalar product of two.
func (v Vec) Dot(w Vec) float64 { return v.X*w.X + v.Y*w.Y + v.Z*w.Z }

// Length is that of the vector.
func (v Vec) Length() float64 { return math.Sqrt(v.Dot(v)) }

// Cross is the vector product of two.
func (v Vec) Cross(w Vec) Vec {
	return Vec{v.Y*w.Z - v.Z*w.Y, v.Z*w.X - v.X*w.Z, v.X*w.Y - v.Y*w.X}
}
