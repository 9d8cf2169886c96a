package layout

import (
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/kernel/timber"
	"dryfit/spec"
)

// PieceKind is what a piece is for.
type PieceKind uint8

// The kinds of piece.
const (
	Rib PieceKind = iota + 1
	HalfRib
	Rail
	HalfRail
	SkinSheet
	LooseTenon
	Hanger
)

var pieceNames = [...]string{Rib: "rib", HalfRib: "half rib", Rail: "rail", HalfRail: "half rail", SkinSheet: "skin", LooseTenon: "tenon", Hanger: "strap"}

// String is the kind's name in lists and sentences.
func (k PieceKind) String() string { return pieceNames[k] }

// Piece is a kind of piece in one panel.
type Piece struct {
	Kind     PieceKind
	Count    int
	Material string
	Length   float64 // finished; of a curved piece along its intrados
	Width    float64
	Depth    float64
	Volume   float64 // of one
	Mass     float64 // of one
	Centre   curve.Point
}

// steelDensity is in kg/m3 (41.82 lb by square foot and inch of thickness is
// 8039 with its coating; bare steel is 7850, from memory).
const steelDensity = 7850

// standardGravity is in m/s2, exact by definition.
const standardGravity = 9.80665

// Layer is a share of a rib's width, with the parallels that it lies between:
// a layer of a sawn rib, or the whole of another.
type Layer struct {
	Width, From, To float64
}

// ribLayers are the layers of a sawn rib side by side, or the whole of another.
func (c *Ceiling) ribLayers() ([]Layer, []Fault) {
	if c.Spec.Rib.Construction != "sawn" || len(c.Spec.Rib.Layer) == 0 {
		return []Layer{{c.Rib.Width, 0, c.Rib.Depth}}, nil
	}
	var layers []Layer
	var faults []Fault
	for i, l := range c.Spec.Rib.Layer {
		quarters, _ := l.Stock.Quarters() // the schema has seen to its form
		t, err := timber.Surfaced(quarters)
		if err != nil {
			faults = append(faults, Fault{spec.Key("rib", "layer", i+1, "stock"), err.Error()})
		}
		layer := Layer{Width: t, To: float64(l.Depth)}
		if l.Setback != nil {
			layer.From, layer.To = float64(*l.Setback), layer.To+float64(*l.Setback)
		}
		layers = append(layers, layer)
	}
	return layers, faults
}

// resolvePanel works out the pieces of the heaviest panel of the vault, piece
// of an arch by piece.
func resolvePanel(c *Ceiling) []Fault {
	layers, faults := c.ribLayers()
	if len(faults) > 0 {
		return faults
	}
	c.RibLayers = layers
	for k := range c.Panel.Around {
		one := c.panelPiece(k)
		if one.Mass > c.Panel.Mass {
			one.Along, one.Around, one.Count, one.Modules = c.Panel.Along, c.Panel.Around, c.Panel.Count, c.Panel.Modules
			one.Length, one.EndLength, one.Arc = c.Panel.Length, c.Panel.EndLength, c.Panel.Arc
			one.Tolerance, one.Form = c.Panel.Tolerance, c.Panel.Form
			c.Panel = one
		}
	}
	return nil
}

// panelPiece is the k-th piece of an arch from the left, with its masses.
func (c *Ceiling) panelPiece(k int) Panel {
	v := c.Vault
	s0, s1 := float64(k)*c.Panel.Arc, float64(k+1)*c.Panel.Arc
	if k == c.Panel.Around-1 {
		s1 = v.Arc
	}
	p := Panel{Outline: v.Band(s0, s1, 0, v.Thickness)}
	low, high := p.Outline.Bounds()
	p.Width, p.Height = high.Y-low.Y, high.Z-low.Z
	if c.Panel.Around == 1 && c.Spec.Vault.Profile != "pointed" {
		p.Height = v.Rise + v.Thickness // the outline's corners may miss the crown
	}
	bays := max(1, int(math.Round(c.Panel.Modules)))
	p.Pieces = c.ribPieces(s0, s1, c.fullRibs(), c.halfRibs())
	p.Pieces = append(p.Pieces, c.railPieces(s0, s1, bays)...)
	p.Pieces = append(p.Pieces, c.skinPiece(s0, s1, c.Panel.EndLength, 1))
	p.Pieces = append(p.Pieces, c.hardware(s0, s1, min(1, c.Panel.Along-1), 1)...)
	p.Pieces = merged(p.Pieces)
	for _, piece := range p.Pieces {
		m := piece.Mass * float64(piece.Count)
		p.Mass += m
		p.Centre.Y += m * piece.Centre.Y
		p.Centre.Z += m * piece.Centre.Z
	}
	p.Centre.Y /= p.Mass
	p.Centre.Z /= p.Mass
	return p
}

// alike is how near the volumes of two pieces are, by themselves, to be of one
// kind: far above round-off, far below what a shop cuts to.
const alike = 1e-6

// merged lists pieces of one kind once; their centre is the mean.
func merged(pieces []Piece) []Piece {
	var out []Piece
next:
	for _, p := range pieces {
		for i := range out {
			had := &out[i]
			if had.Kind == p.Kind && had.Material == p.Material && math.Abs(had.Volume-p.Volume) < alike*p.Volume {
				n := float64(had.Count + p.Count)
				had.Centre.Y = (had.Centre.Y*float64(had.Count) + p.Centre.Y*float64(p.Count)) / n
				had.Centre.Z = (had.Centre.Z*float64(had.Count) + p.Centre.Z*float64(p.Count)) / n
				had.Count += p.Count
				continue next
			}
		}
		out = append(out, p)
	}
	return out
}

// fullRibs and halfRibs count those of the heaviest panel.
func (c *Ceiling) fullRibs() int {
	inner := max(0, int(math.Round(c.Panel.Modules))-1)
	if c.Grid.HalfEnds {
		return inner
	}
	return inner + c.vaultEnds()
}

func (c *Ceiling) halfRibs() int {
	if c.Grid.HalfEnds {
		return 2
	}
	return 2 - c.vaultEnds()
}

// VaultPieces are the pieces of the whole vault: all panels, all seams.
func (c *Ceiling) VaultPieces() []Piece {
	full := c.Panel.Along * max(0, int(math.Round(c.Panel.Modules))-1)
	half := 2 * c.Panel.Along
	ends := 0
	if !c.Grid.HalfEnds {
		full, half = full+2, half-2
		ends = min(2, c.Panel.Along)
	}
	var out []Piece
	for k := range c.Panel.Around {
		s0, s1 := float64(k)*c.Panel.Arc, float64(k+1)*c.Panel.Arc
		if k == c.Panel.Around-1 {
			s1 = c.Vault.Arc
		}
		out = append(out, c.ribPieces(s0, s1, full, half)...)
		out = append(out, c.railPieces(s0, s1, c.Grid.Along)...)
		out = append(out, present(
			c.skinPiece(s0, s1, c.Panel.Length, c.Panel.Along-ends),
			c.skinPiece(s0, s1, c.Panel.EndLength, ends),
		)...)
		out = append(out, c.hardware(s0, s1, c.Seam.Count, c.Panel.Along)...)
	}
	return out
}

func (c *Ceiling) ribPieces(s0, s1 float64, full, halves int) []Piece {
	v := c.Vault
	rib := Piece{
		Kind: Rib, Count: full, Material: c.Rib.Species.Name,
		Length: s1 - s0, Width: c.Rib.Width, Depth: c.Rib.Depth,
	}
	for _, l := range c.RibLayers {
		band := v.Band(s0, s1, l.From, l.To)
		volume, centre := band.Area()*l.Width, band.Centroid()
		rib.Volume += volume
		rib.Centre.Y += volume * centre.Y
		rib.Centre.Z += volume * centre.Z
	}
	rib.Centre.Y /= rib.Volume
	rib.Centre.Z /= rib.Volume
	half := rib
	half.Kind, half.Count, half.Width, half.Volume = HalfRib, halves, rib.Width/2, rib.Volume/2
	if r := c.Grid.Reveal; r != nil && r.At != "layers" {
		groove := v.Band(s0, s1, 0, r.Depth).Area()
		if r.At == "sides" {
			rib.Volume -= 2 * groove * r.Width
			half.Volume -= groove * r.Width
		} else {
			half.Volume -= groove * r.Width / 2
		}
	}
	density := timber.Density(c.Rib.Species.SG12, c.Climate.Shop)
	rib.Mass, half.Mass = rib.Volume*density, half.Volume*density
	return present(rib, half)
}

// present drops the pieces that there are none of.
func present(pieces ...Piece) []Piece {
	var out []Piece
	for _, p := range pieces {
		if p.Count > 0 && p.Volume > 0 {
			out = append(out, p)
		}
	}
	return out
}

// Clear is the length of a rail, between the faces of two ribs.
func (c *Ceiling) Clear() float64 { return c.Grid.ModuleAlong - c.Rib.Width }

// railPieces are those of a number of bays: whole ones inside the arch's piece,
// halves at its feet and seams.
func (c *Ceiling) railPieces(s0, s1 float64, bays int) []Piece {
	v := c.Vault
	density := timber.Density(c.Rail.Species.SG12, c.Climate.Shop)
	piece := func(kind PieceKind, section Region, width float64, sides int) Piece {
		p := Piece{
			Kind: kind, Count: bays, Material: c.Rail.Species.Name,
			Length: c.Clear(), Width: width, Depth: c.Rail.Depth,
			Volume: section.Area() * c.Clear(), Centre: section.Centroid(),
		}
		if r := c.Grid.Reveal; r != nil && r.At == "sides" {
			p.Volume -= float64(sides) * r.Width * r.Depth * c.Clear()
		}
		p.Mass = p.Volume * density
		return p
	}
	var out []Piece
	for j := range c.Grid.Around + 1 {
		s := v.Arc * float64(j) / float64(c.Grid.Around)
		switch inside := spacingSlack * v.Arc; {
		case s < s0-inside || s > s1+inside:
		case s <= s0+inside:
			out = append(out, piece(HalfRail, v.RailSection(s0, c.Rail, false, true), c.Rail.Width/2, 1))
		case s >= s1-inside:
			out = append(out, piece(HalfRail, v.RailSection(s1, c.Rail, true, false), c.Rail.Width/2, 1))
		default:
			out = append(out, piece(Rail, v.RailSection(s, c.Rail, true, true), c.Rail.Width, 2))
		}
	}
	return present(out...)
}

// skinPiece is the skins of a number of panels of one length.
func (c *Ceiling) skinPiece(s0, s1, along float64, panels int) Piece {
	band := c.Vault.Band(s0, s1, c.Skin.Setback, c.Skin.Setback+c.Skin.Total())
	if c.Skin.Between {
		along = c.Clear() * c.Panel.Modules
	}
	outer, err := c.Vault.Intrados.Between(s0, s1).Offset(c.Skin.Setback)
	if err != nil {
		panic(err) // outward never folds
	}
	volume := band.Area() * along
	return Piece{
		Kind: SkinSheet, Count: panels, Material: c.Skin.Material.Name,
		Length: outer.Length(), Width: along, Depth: c.Skin.Total(),
		Volume: volume, Mass: volume * c.Skin.Material.Density, Centre: band.Centroid(),
	}
}

// hardware is the tenons of a number of seams and the straps of a number of
// panels, as far as the spec describes them.
func (c *Ceiling) hardware(s0, s1 float64, seams, panels int) []Piece {
	var out []Piece
	t := c.Spec.Seam.Tenon
	mid := c.Vault.Intrados.At((s0 + s1) / 2)
	volume := float64(t.Thickness * t.Width * t.Length)
	out = append(out, present(Piece{
		Kind: LooseTenon, Material: c.Rib.Species.Name, Centre: mid,
		Count:  tenons(s1-s0, Seam{Edge: float64(*c.Spec.Seam.Edge), Spacing: float64(*c.Spec.Seam.Spacing)}) * seams,
		Length: float64(t.Length), Width: float64(t.Width), Depth: float64(t.Thickness),
		Volume: volume, Mass: volume * timber.Density(c.Rib.Species.SG12, c.Climate.Shop),
	})...)
	st := c.Spec.Strap
	if st == nil || st.Width == nil || st.Thickness == nil || st.Lap == nil || c.Spec.Room.Above == nil {
		return out
	}
	for _, station := range st.Stations {
		s := float64(station) * c.Vault.Arc
		if s < s0 || s > s1 {
			continue
		}
		l := c.StrapLength(float64(station)) + 2*float64(*st.Lap)
		v := l * float64(*st.Width**st.Thickness)
		out = append(out, Piece{
			Kind: Hanger, Count: 2 * panels, Material: st.Material, Centre: c.Vault.Intrados.At(s),
			Length: l, Width: float64(*st.Width), Depth: float64(*st.Thickness), Volume: v, Mass: v * steelDensity,
		})
	}
	return out
}

// StrapLength is between the fixings of the strap at a station, from the
// extrados to the underside of the framing. It needs room.above.
func (c *Ceiling) StrapLength(station float64) float64 {
	crown := c.Vault.Rise + c.Vault.Thickness
	return float64(*c.Spec.Room.Above) + crown - c.ExtradosHeight(station)
}

// ExtradosHeight is that of the back of the ceiling above the springing, square
// to the intrados at a station.
func (c *Ceiling) ExtradosHeight(station float64) float64 {
	s := station * c.Vault.Arc
	n := curve.Normal(c.Vault.Intrados.Tangent(s))
	return c.Vault.Intrados.At(s).Z + n.Z*c.Vault.Thickness
}
