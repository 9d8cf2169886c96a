package passage_test

import (
	"math"
	"math/rand/v2"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/car"
	"dryfit/rules/kernel/passage/corner"
	"dryfit/rules/kernel/passage/opening"
	"dryfit/rules/kernel/passage/space"
)

// pair is a random realistic panel before a leg of one kind.
type pair struct {
	profile string
	split   bool
	span    float64
	rise    float64
	thick   float64
	body    *passage.Body
}

func draw(r *rand.Rand, low, high float64) float64 { return low + (high-low)*r.Float64() }

var profiles = []string{"segmental", "semicircular", "three-centred", "pointed", "elliptical", "flat"}

// panel is drawn evenly from spans of 1.5 to 6 m, rises of 0.1 to 0.5 of them,
// lengths of 0.5 to 1.6 m, 45 to 120 mm thick, wraps of 15 to 30 mm, of every
// profile, whole or half; feet plumb, or level where the curve stands upright.
func panel(r *rand.Rand) pair { return panelOf(r, steps) }

func panelOf(r *rand.Rand, steps int) pair {
	for {
		p := pair{profile: profiles[r.IntN(len(profiles))], split: r.IntN(2) == 0, span: draw(r, 1.5, 6)}
		share := draw(r, 0.1, 0.5)
		p.rise = share * p.span
		p.thick = draw(r, 0.045, 0.12)
		length, wrap := draw(r, 0.5, 1.6), draw(r, 0.015, 0.03)
		c, err := profileOf(r, p)
		if err != nil {
			continue
		}
		outline := band(c, p.thick, p.split, steps)
		p.body = passage.NewBody(outline, length, wrap)
		return p
	}
}

func profileOf(r *rand.Rand, p pair) (curve.Curve, error) {
	switch p.profile {
	case "segmental":
		return curve.Segmental(p.span, p.rise)
	case "semicircular":
		return curve.Semicircular(p.span)
	case "three-centred":
		return curve.ThreeCentredByHaunch(p.span, p.rise, p.rise*draw(r, 0.4, 0.8))
	case "pointed":
		// A pointed arch rises half its span or more: this share of it over that.
		return curve.PointedByRise(p.span, p.span*draw(r, 0.5, 0.8))
	case "elliptical":
		return curve.Elliptical(p.span, p.rise)
	default:
		return curve.Flat(p.span)
	}
}

// steps are those in which a curve is drawn.
const steps = 192

// band is the outline between a curve and its parallel, of the whole of it or
// of its left half; its feet cut plumb, or level where the curve is steep.
func band(c curve.Curve, thick float64, half bool, steps int) []space.Point {
	end := c.Length()
	if half {
		end /= 2
	}
	part := c.Between(0, end)
	back, err := part.Offset(thick)
	if err != nil {
		panic(err)
	}
	var out []space.Point
	for _, p := range part.Polyline(steps) {
		out = append(out, space.Point{X: p.Y, Y: p.Z})
	}
	var outer []space.Point
	for _, p := range back.Polyline(steps) {
		outer = append(outer, space.Point{X: p.Y, Y: p.Z})
	}
	for i := range outer {
		out = append(out, outer[len(outer)-1-i])
	}
	span := c.At(c.Length()).Y
	if steep := 75 * math.Pi / 180; c.HalfAngle() > steep {
		return out // square to a curve that stands upright is level
	}
	out = clip(out, func(p space.Point) float64 { return p.X })
	return clip(out, func(p space.Point) float64 { return span - p.X })
}

// clip keeps the part of a polygon where f, which is linear, is not negative.
func clip(points []space.Point, f func(space.Point) float64) []space.Point {
	var out []space.Point
	last := points[len(points)-1]
	for _, p := range points {
		a, b := f(last), f(p)
		if a < 0 != (b < 0) {
			t := a / (a - b)
			out = append(out, space.Point{X: last.X + t*(p.X-last.X), Y: last.Y + t*(p.Y-last.Y)})
		}
		if b >= 0 {
			out = append(out, p)
		}
		last = p
	}
	return out
}

func anyCorner(r *rand.Rand) corner.Corner {
	return corner.Corner{Width: draw(r, 0.9, 2.4), Onward: draw(r, 0.9, 2.4), Height: draw(r, 2.1, 2.7)}
}

func anyDoor(r *rand.Rand) opening.Door {
	return opening.Door{Width: draw(r, 0.7, 1.2), Height: draw(r, 1.95, 2.4), Wall: draw(r, 0.1, 0.35), Floor: true}
}

func anyHatch(r *rand.Rand) opening.Door {
	return opening.Door{Width: draw(r, 0.5, 1.5), Height: draw(r, 0.5, 1.5), Wall: draw(r, 0.1, 0.35)}
}

func anyCorridor(r *rand.Rand) opening.Corridor {
	return opening.Corridor{Width: draw(r, 0.9, 2.4), Height: draw(r, 2.1, 2.7), Length: draw(r, 1, 10)}
}

// anyVehicle has its door where it may be in its end wall: no wider than the inside.
func anyVehicle(r *rand.Rand) car.Car {
	return carOf(r, draw(r, 1.1, 7), draw(r, 1.1, 2.5), draw(r, 1.1, 2.7))
}

func anyElevator(r *rand.Rand) car.Car {
	return carOf(r, draw(r, 1.1, 2.7), draw(r, 1.1, 2.1), draw(r, 2.1, 2.7))
}

func carOf(r *rand.Rand, l, w, h float64) car.Car {
	c := car.Car{Length: l, Width: w, Height: h, DoorWidth: draw(r, 0.8, min(w, 2.4)), DoorHeight: draw(r, 0.8, min(h, 2.4))}
	if h > 2 {
		c.DoorHeight = draw(r, 1.8, min(h, 2.4))
	}
	c.Left = draw(r, 0, w-c.DoorWidth)
	return c
}
