package layout_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/sample"
)

// The formulas of Machinery's Handbook, 31st edition, p. 79 and 83, by hand for
// a span of 4200 and a rise of 840: r = (4200² + 4·840²)/(8·840) = 3045,
// a = 4·atan(2·840/4200) = 1.522025, l = r·a = 4634.57.
func TestSegment(t *testing.T) {
	c := sample.Room(t, nil)
	assert.InDelta(t, 3.045, c.Vault.Radius.Get(), 1e-9)
	assert.InDelta(t, 4.63457, c.Vault.Arc.Get(), 1e-5)
	assert.InDelta(t, 1.522025/2, c.Vault.HalfAngle.Get(), 1e-6)
	assert.InDelta(t, 4.63457/6, c.Grid.ModuleAround.Get(), 1e-5)
	assert.InDelta(t, 1.180, c.Grid.ModuleAlong.Get(), 1e-12)
	assert.InDelta(t, 1.180, c.Panel.Length.Get(), 1e-12)
	assert.InDelta(t, 4.200, c.Panel.Width.Get(), 1e-9, "plumb feet: the panel is as wide as the span")
	assert.InDelta(t, 0.900, c.Panel.Height.Get(), 1e-4, "from the springing to the back of the crown")
	assert.Equal(t, 6, c.Panel.Count.Get())
	assert.Equal(t, 16, c.Seam.TenonsInSeam.Get(), "ceil((4634.57 − 150)/300) + 1")
	assert.Equal(t, 80, c.Seam.Tenons.Get())
}

func TestFullEnds(t *testing.T) {
	c := sample.Room(t, map[string]any{"grid.ends": "full"})
	assert.InDelta(t, (7.080-0.090)/6, c.Grid.ModuleAlong.Get(), 1e-12, "the length less one rib")
	assert.InDelta(t, c.Panel.Length.Get()+0.045, c.Panel.EndLength.Get(), 1e-12, "half a rib longer")
	total := 4*c.Panel.Length.Get() + 2*c.Panel.EndLength.Get()
	assert.InDelta(t, 7.080, total, 1e-12)
}

// Architectural Woodwork Standards, p. 331: 1/4in in 144in, which is 3/8in for a
// room 18ft long and 1/4in for one of 12ft, whichever side it is.
func TestRoomToleranceIsARate(t *testing.T) {
	for _, r := range []struct {
		width, length string
		want          float64
	}{
		{"4240mm", "18ft", 0.375 * 0.0254}, {"14ft", "12ft", 168.0 / 576 * 0.0254}, {"4240mm", "7200mm", 0.0125},
	} {
		c := sample.Room(t, map[string]any{"room": map[string]any{"width": r.width, "length": r.length, "height": "2700mm"}})
		assert.InDelta(t, r.want, c.Room.Tolerance.Get(), 1e-12, r.length)
	}
	assert.InDelta(t, 0.004, sample.Room(t, nil).Room.Tolerance.Get(), 1e-12, "what the spec states")
}

// How the feet are cut changes the width over all by geometry: radial feet
// stick out by the thickness times the sine of the slope, level ones by the
// thickness over it.
func TestFeet(t *testing.T) {
	half := sample.Room(t, nil).Vault.HalfAngle.Get()
	for cut, want := range map[string]float64{
		"plumb": 4.2, "radial": 4.2 + 2*0.060*math.Sin(half), "level": 4.2 + 2*0.060/math.Sin(half),
	} {
		c := sample.Room(t, map[string]any{"springing.cut": cut})
		assert.InDelta(t, want, c.Panel.Width.Get(), 1e-4, cut)
	}
	c := sample.Room(t, map[string]any{"vault": map[string]any{"profile": "semicircular", "span": "4200mm", "length": "7080mm"}, "springing": map[string]any{}})
	assert.Equal(t, "level", c.Vault.Cut.Get(), "plumb would feather the foot of a semicircle")
}

// By hand, for a sine of 20/29 at the springing, a rib 60mm deep and a room of
// 4240mm that may be 4mm wider: (4244 − 4200 + 1 + 2·1.11318)/2 = 23.613 to a
// plumb foot, less 60·20/29 = 41.379 to a radial one and 60·29/20 = 87 to a level
// one. Skin over the backs of the ribs bears nothing.
func TestGapToTheSole(t *testing.T) {
	for cut, want := range map[string]float64{"plumb": 0.023613, "radial": 0.023613 - 0.041379, "level": 0.023613 - 0.087} {
		for _, setback := range []string{"51mm", "60mm"} {
			c := sample.Room(t, map[string]any{"springing.cut": cut, "skin.setback": setback})
			assert.InDelta(t, want, c.WidestGap(), 2e-6, "%s, skin set back by %s", cut, setback)
			assert.InDelta(t, 0.030-want, c.LedgerReach(), 2e-6)
		}
	}
	court := sample.Ceiling(t, "court-room", nil)
	assert.InDelta(t, (6.355-6.000)/2-0.080/math.Sin(2*math.Atan(0.3)), court.WidestGap(), 0.003, "but for the form and the panel's tolerance")
}

// inside reports whether a point of the section lies in one of the pieces of a
// panel, by their definitions: bands by the distance from the circle's centre,
// rails by their own frames.
func insideRib(c *layout.Ceiling, y, z float64) bool {
	r := math.Hypot(y-2.1, z-(0.84-3.045))
	return r >= 3.045 && r <= 3.045+c.Rib.Depth.Get() && y >= 0 && y <= 4.2
}

func insideSkin(c *layout.Ceiling, y, z float64) bool {
	r := math.Hypot(y-2.1, z-(0.84-3.045)) - 3.045
	return r >= c.Skin.Setback.Get() && r <= c.Skin.Setback.Get()+c.Skin.Total() && y >= 0 && y <= 4.2
}

func insideRail(c *layout.Ceiling, y, z float64) bool {
	if y < 0 || y > 4.2 {
		return false
	}
	if r := math.Hypot(y-2.1, z-(0.84-3.045)); r < 3.04 || r > 3.12 {
		return false // far from every rail
	}
	for j := range c.Grid.Around.Get() + 1 {
		s := c.Vault.Arc.Get() * float64(j) / float64(c.Grid.Around.Get())
		at, t := c.Vault.Intrados.Get().At(s), c.Vault.Intrados.Get().Tangent(s)
		a := (y-at.Y)*t.Y + (z-at.Z)*t.Z
		d := -(y-at.Y)*t.Z + (z-at.Z)*t.Y
		low, high := -c.Rail.Width.Get()/2, c.Rail.Width.Get()/2
		if j == 0 {
			low = 0
		}
		if j == c.Grid.Around.Get() {
			high = 0
		}
		if a >= low && a <= high && d >= 0 && d <= c.Rail.Depth.Get() {
			return true
		}
	}
	return false
}

// areaOf counts the cells of a fine grid whose centres are inside.
func areaOf(c *layout.Ceiling, inside func(*layout.Ceiling, float64, float64) bool) float64 {
	const step = 0.001
	n := 0
	for y := -0.05; y < 4.25; y += step {
		for z := -0.1; z < 0.95; z += step {
			if inside(c, y, z) {
				n++
			}
		}
	}
	return float64(n) * step * step
}

// The mass of a panel is that of an independent integration over its section:
// volume by counting cells, density 1000·G·(1 + M) by hand. No reveal, no
// tenons and no straps, so that only the wood is weighed.
func TestMassCloses(t *testing.T) {
	c := sample.Room(t, map[string]any{"grid.reveal": map[string]any{"at": "sides"}, "room": map[string]any{"width": "4240mm", "length": "7144mm", "height": "2700mm"}})
	oak := 1000 * 0.68 * (1 + c.Climate.Shop.Get())
	want := areaOf(c, insideRib)*c.Rib.Width.Get()*oak + areaOf(c, insideRail)*c.Clear()*oak +
		areaOf(c, insideSkin)*c.Clear()*c.Skin.Material.Get().Density
	got := 0.0
	for _, p := range c.Panel.Pieces.Get() {
		if p.Kind != layout.LooseTenon {
			got += p.Mass * float64(p.Count)
		}
	}
	assert.InEpsilon(t, want, got, 0.001)
}

// Grooves that leave nothing of a member are held, and its mass is not taken
// away: there are as many pieces as without, and they weigh as much. By hand, a
// rail of 60 × 51mm with two grooves of 20 × 40mm keeps 60·51 − 2·20·40 =
// 1460mm² of 3060.
func TestAGrooveTakesNoPieceAway(t *testing.T) {
	rails := func(width, depth string) (n int, volume float64) {
		c := sample.Room(t, map[string]any{"rail.width": "60mm", "rail.depth": "51mm", "grid.reveal": map[string]any{"width": width, "depth": depth, "at": "sides"}})
		for _, p := range c.Panel.Pieces.Get() {
			assert.Greater(t, p.Mass, 0.0, p.Kind)
			if p.Kind == layout.Rail {
				n, volume = n+p.Count, volume+p.Volume*float64(p.Count)
			}
		}
		return n, volume
	}
	plain, whole := rails("1mm", "51mm")
	n, left := rails("20mm", "40mm")
	assert.Equal(t, plain, n)
	assert.InEpsilon(t, 1460.0/3060, left/whole, 1e-6)
	for _, size := range [][2]string{{"31mm", "40mm"}, {"50mm", "50mm"}, {"10mm", "60mm"}} {
		n, left = rails(size[0], size[1])
		assert.Equal(t, plain, n, size)
		assert.InEpsilon(t, whole, left, 1e-9, size)
	}
}

// Splitting the arches changes the mass of the whole vault by the joints alone:
// the same wood, and other tenons.
func TestMassDoesNotDependOnTheSplit(t *testing.T) {
	wood := func(c *layout.Ceiling) float64 {
		sum := 0.0
		for _, p := range c.Panel.Pieces.Get() {
			if p.Kind != layout.LooseTenon && p.Kind != layout.Hanger {
				sum += p.Mass * float64(p.Count)
			}
		}
		return sum * float64(c.Panel.Around.Get())
	}
	whole, halves := sample.Room(t, nil), sample.Room(t, map[string]any{"panels.around": int64(2)})
	assert.InEpsilon(t, wood(whole), wood(halves), 1e-4)
	assert.InDelta(t, 2.1, halves.Panel.Width.Get(), 0.05)
}

// Every profile resolves, with a mass and a box.
func TestProfiles(t *testing.T) {
	for _, v := range []map[string]any{
		{"profile": "flat"},
		{"profile": "segmental", "rise": "840mm"},
		{"profile": "segmental", "rise": "840mm", "radius": "3045mm"},
		{"profile": "semicircular"},
		{"profile": "three-centred", "rise": "1500mm", "haunch_radius": "900mm"},
		{"profile": "three-centred", "rise": "1500mm", "crown_radius": "3000mm"},
		{"profile": "pointed", "rise": "2600mm"},
		{"profile": "pointed", "radius": "4200mm"},
		{"profile": "elliptical", "rise": "1200mm"},
	} {
		v["span"], v["length"] = "4200mm", "7080mm"
		for _, around := range []int64{1, 2} {
			c := sample.Room(t, map[string]any{"vault": v, "springing": map[string]any{}, "panels.around": around})
			assert.Greater(t, c.Panel.Mass.Get(), 5.0, v)
			assert.Greater(t, c.Panel.Height.Get(), 0.05, v)
			assert.False(t, math.IsNaN(c.Panel.Centre.Get().Z), v)
			for _, p := range c.Panel.Pieces.Get() {
				assert.Greater(t, p.Mass, 0.0, "%v %s", v, p.Kind)
			}
		}
	}
}

// pointedRoom has arcs of 3m about centres that lie 0.9m to each side of the
// axis.
func pointedRoom(t *testing.T, around int64) *layout.Ceiling {
	vault := map[string]any{"profile": "pointed", "span": "4200mm", "radius": "3000mm", "length": "7080mm"}
	return sample.Room(t, map[string]any{"vault": vault, "springing": map[string]any{}, "panels.around": around})
}

// A pointed arch has one crown, where both extrados meet: of a radius of 3m, its
// centres 0.9m off the axis, and 60mm of thickness at √(3.06² − 0.9²) =
// 2924.65mm. Square to either arc the extrados would end at 2919.05mm, straight
// up from the intrados at 2921.82mm.
func TestOneCrown(t *testing.T) {
	crown := math.Sqrt(3.06*3.06 - 0.9*0.9)
	for _, around := range []int64{1, 2} {
		c := pointedRoom(t, around)
		assert.InDelta(t, 2.92465, crown, 1e-5)
		assert.InDelta(t, crown, c.Vault.Crown.Get(), 1e-12)
		assert.InDelta(t, crown, c.Panel.Height.Get(), 1e-9, "of %d", around)
		assert.InDelta(t, crown, c.ExtradosHeight(0.5), 1e-12)
		assert.InDelta(t, c.Room.Above.Get(), c.StrapLength(0.5), 1e-12, "a strap at the crown")
		low, high := c.Vault.Band(0, c.Vault.Arc.Get(), 0, 0.060).Bounds()
		assert.InDelta(t, crown, high.Z, 1e-9, "on the section")
		assert.InDelta(t, 2.1, (low.Y+high.Y)/2, 1e-9)
		skin := 3.051 * math.Acos(0.9/3.051)
		assert.InDelta(t, skin*float64(2/around), c.SkinSheets().Developed, 1e-9, "mitred at the crown")
	}
	// Two halves leave no gap between them at the crown.
	c := pointedRoom(t, 2)
	middle := c.Vault.Arc.Get() / 2
	whole := c.Vault.Band(0, 2*middle, 0, 0.060).Area()
	left, right := c.Vault.Band(0, middle, 0, 0.060), c.Vault.Band(middle, 2*middle, 0, 0.060)
	assert.InEpsilon(t, whole, left.Area()+right.Area(), 1e-4, "but for the chords")
	_, high := left.Bounds()
	low, _ := right.Bounds()
	assert.InDelta(t, 2.1, high.Y, 1e-12)
	assert.InDelta(t, 2.1, low.Y, 1e-12)
	// A sector of each arc, from the axis to the springing line.
	sector := func(r float64) float64 { return r*r*math.Acos(0.9/r) - 0.9*math.Sqrt(r*r-0.9*0.9) }
	assert.InEpsilon(t, sector(3.06)-sector(3), whole, 1e-4)
}

// The rail at a pointed crown is two halves, each square to its side, that meet on
// the axis: beside a rectangle of its width and depth they are a triangle each, of
// the depth and of the depth times the slope of the side, 0.9/√(3² − 0.9²).
func TestTheRailAtAPointedCrownIsMitred(t *testing.T) {
	c := pointedRoom(t, 1)
	w, d, slope := c.Rail.Width.Get(), c.Rail.Depth.Get(), 0.3/math.Sqrt(1-0.3*0.3)
	crown := c.Vault.Arc.Get() / 2
	whole := c.Vault.RailSection(crown, c.Rail, true, true)
	assert.InDelta(t, w*d+d*d*slope, whole.Area(), 1e-12)
	assert.InDelta(t, 2.1, whole.Centroid().Y, 1e-12)
	left, right := c.Vault.RailSection(crown, c.Rail, true, false), c.Vault.RailSection(crown, c.Rail, false, true)
	assert.InDelta(t, whole.Area()/2, left.Area(), 1e-12)
	assert.InDelta(t, whole.Area()/2, right.Area(), 1e-12)
	_, high := left.Bounds()
	low, _ := right.Bounds()
	assert.InDelta(t, 2.1, high.Y, 1e-12)
	assert.InDelta(t, 2.1, low.Y, 1e-12)

	assert.InDelta(t, 2.1, c.Panel.Centre.Get().Y, 1e-9)
	halves := 0
	for _, p := range c.Panel.Pieces.Get() {
		if p.Kind == layout.HalfRail && math.Abs(p.Width-(w/2+d*slope)) < 1e-9 {
			halves += p.Count
			assert.InDelta(t, whole.Area()/2*c.Clear(), p.Volume, 1e-12)
		}
	}
	assert.Equal(t, 2*int(c.Panel.Modules.Get()), halves)
}

// A form that is not true keeps the angle of a mitre. By hand: arcs of 3m that
// leave the crown at κ, sin κ = 0.9/3, and turn by θ = acos 0.3. With every
// curvature multiplied by 1 + e the radius is 3/(1 + e), the angle θ(1 + e), and
// the rise 3/(1 + e)·(cos κ − cos(κ + θ(1 + e))).
func TestFormErrorKeepsTheMitre(t *testing.T) {
	c := pointedRoom(t, 1)
	kink, turn := math.Asin(0.3), math.Acos(0.3)
	rise := func(e float64) float64 { return 3 / (1 + e) * (math.Cos(kink) - math.Cos(kink+turn*(1+e))) }
	half := func(e float64) float64 { return 3 / (1 + e) * (math.Sin(kink+turn*(1+e)) - math.Sin(kink)) }
	for _, e := range []float64{0.02, -0.01} {
		assert.InDelta(t, rise(e)-rise(0), c.RiseBy(e), 1e-9)
	}
	const e = 1e-4
	assert.InDelta(t, 2*(half(-e)-half(0))/(rise(0)-rise(-e)), c.Vault.Spread.Get(), 1e-4)
}

// The ribs stand a module apart, with the gap of each seam between; the last is
// at the far end of what is built, and the seams are those that are counted.
func TestRibsAlong(t *testing.T) {
	for _, tt := range []struct {
		panels int64
		ends   string
	}{{6, "half"}, {3, "half"}, {6, "full"}, {2, "full"}, {1, "half"}} {
		c := sample.Room(t, map[string]any{"panels.along": tt.panels, "grid.ends": tt.ends})
		seams := 0
		for i := range c.Grid.Along.Get() {
			apart := c.Grid.ModuleAlong.Get()
			for _, rib := range []int{i, i + 1} {
				if c.SeamAt(rib) {
					apart += c.Seam.Gap.Get() / 2
				}
			}
			assert.InDelta(t, apart, c.RibAt(i+1)-c.RibAt(i), 1e-12, "%+v rib %d", tt, i)
			if c.SeamAt(i) {
				seams++
				assert.InDelta(t, c.SeamLine(seams), c.RibAt(i), 1e-12, "%+v", tt)
			}
		}
		assert.Equal(t, c.Seam.Count.Get(), seams, "%+v", tt)
		end := c.RibAt(c.Grid.Along.Get())
		if !c.Grid.HalfEnds.Get() {
			end += c.Rib.Width.Get() / 2
		}
		assert.InDelta(t, c.BuiltLength(), end, 1e-12, "%+v", tt)
		// What the room has beyond the first gap, the panels and the seams.
		assert.InDelta(t, 7.144-0.018-7.080-float64(c.Seam.Count.Get())*0.0004, c.NearGap(), 1e-12)
	}
}
