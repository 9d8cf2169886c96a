package layout

import (
	"reflect"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/kernel/timber"
)

// Lump is a mass and its centre.
type Lump struct {
	Mass   float64
	Centre curve.Point
}

// Weighing is all that the weight of the ribs and the skin between two places along
// the arc comes from, of the heaviest panel.
type Weighing struct {
	shape      shape
	ribs       ribs
	full, half int // ribs
	skin       skin
}

// Weighing is that of the ceiling.
func (c *Ceiling) Weighing() Weighing {
	return Weighing{c.Vault.shape(), c.ribs(), c.fullRibs(), c.halfRibs(), c.skin(c.Panel.EndLength.Get())}
}

// Equal reports whether two weighings come from equal numbers.
func (w *Weighing) Equal(o *Weighing) bool { return reflect.DeepEqual(w, o) }

// Stretches is what each stretch between two neighbours of some places weighs: less
// or more where the foot is cut.
func (w *Weighing) Stretches(at []float64) []Lump {
	out := make([]Lump, len(at)-1)
	t := &stretch{shape: w.shape, brief: true}
	for i := range out {
		t.move(at[i], at[i+1])
		out[i] = w.lump(t)
	}
	return out
}

func (w *Weighing) lump(t *stretch) (l Lump) {
	rib, half, centre := w.ribs.volumes(t)
	l.add((rib*float64(w.full)+half*float64(w.half))*w.ribs.density, centre)
	area, centre := w.skin.section(t)
	l.add(area*w.skin.along*w.skin.density, centre)
	if l.Mass > 0 {
		l.Centre.Y /= l.Mass
		l.Centre.Z /= l.Mass
	}
	return l
}

// add adds a mass, and to the centre its moment.
func (l *Lump) add(mass float64, at curve.Point) {
	l.Mass += mass
	l.Centre.Y += mass * at.Y
	l.Centre.Z += mass * at.Z
}

// Stretch is what the ribs and the skin of the heaviest panel weigh between two
// places along the arc: less or more where the foot is cut.
func (c *Ceiling) Stretch(s0, s1 float64) Lump {
	w := c.Weighing()
	return w.Stretches([]float64{s0, s1})[0]
}

// ribs are the figures of a rib, whatever stretch of the arch it is of.
type ribs struct {
	width, depth float64
	species      string
	density      float64
	layers       []Layer
	groove       groove
}

// groove is that of a reveal; it has no width where none is cut.
type groove struct {
	width, depth float64
	sides        bool // of each rib, where else each seam has one
}

func (c *Ceiling) ribs() ribs {
	species := c.Rib.Species.Get()
	r := ribs{
		width: c.Rib.Width.Get(), depth: c.Rib.Depth.Get(), layers: c.RibLayers.Get(),
		species: species.Name, density: timber.Density(species.SG12, c.Climate.Shop.Get()),
	}
	if v := c.Grid.Reveal; v.Cuts(c.Rib.Member) {
		r.groove = groove{v.Width.Get(), v.Depth.Get(), v.At.Get() == "sides"}
	}
	return r
}

// pieces are the ribs and the half ribs of a stretch.
func (r *ribs) pieces(t *stretch, full, halves int) []Piece {
	rib := Piece{
		Kind: Rib, Count: full, Material: r.species, At: (t.s0 + t.s1) / 2,
		Length: t.s1 - t.s0, Width: r.width, Depth: r.depth,
	}
	half := rib
	half.Kind, half.Count, half.Width = HalfRib, halves, r.width/2
	rib.Volume, half.Volume, rib.Centre = r.volumes(t)
	half.Centre = rib.Centre
	rib.Mass, half.Mass = rib.Volume*r.density, half.Volume*r.density
	return present(rib, half)
}

// volumes are those of a rib and of half a rib in a stretch, and their centre, which a
// groove leaves where it is.
func (r *ribs) volumes(t *stretch) (rib, half float64, centre curve.Point) {
	for _, l := range r.layers {
		area, at := t.moments(l.From, l.To)
		volume := area * l.Width
		rib += volume
		centre.Y += volume * at.Y
		centre.Z += volume * at.Z
	}
	centre.Y /= rib
	centre.Z /= rib
	half = rib / 2
	if g := r.groove; g.width > 0 {
		area, _ := t.moments(0, g.depth)
		if g.sides {
			rib -= 2 * area * g.width
			half -= area * g.width
		} else {
			half -= area * g.width / 2
		}
	}
	return rib, half, centre
}

// skin is the figures of the skin, likewise.
type skin struct {
	setback, thickness float64
	along              float64 // of the panel
	material           string
	density            float64
}

// skin is that of a panel of some length.
func (c *Ceiling) skin(along float64) skin {
	if c.Skin.Between.Get() {
		along = c.Clear() * c.Panel.Modules.Get()
	}
	material := c.Skin.Material.Get()
	return skin{c.Skin.Setback.Get(), c.Skin.Total(), along, material.Name, material.Density}
}

// piece is the skins of a number of panels in a stretch, without their length.
func (k *skin) piece(t *stretch, panels int) Piece {
	area, centre := k.section(t)
	volume := area * k.along
	return Piece{
		Kind: SkinSheet, Count: panels, Material: k.material, At: (t.s0 + t.s1) / 2, Width: k.along, Depth: k.thickness,
		Volume: volume, Mass: volume * k.density, Centre: centre,
	}
}

// section is the area of the skin in a stretch, and its centre.
func (k *skin) section(t *stretch) (float64, curve.Point) {
	return t.moments(k.setback, k.setback+k.thickness)
}
