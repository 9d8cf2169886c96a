package layout

import (
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/kernel/timber"
	"dryfit/spec"
	"dryfit/spec/record"
)

// Piece is a kind of piece in one panel.
type Piece struct {
	Kind     PieceKind
	Count    int
	Material string  // of a fitting, its key
	Length   float64 // finished; of a curved piece along its face toward the room, as its feet are cut
	Width    float64
	Depth    float64
	Volume   float64 // of one
	Mass     float64 // of one
	Centre   curve.Point
	At       float64    // along the arc of the intrados: of a rail or a fitting its place, of a rib or a skin its middle
	Share    float64    // of a fitting, what the edge rib that the panel's fittings load more bears of it
	From     record.Set // the keys that it comes from
}

// Most is the mass of one at the upper end of its material's published spread;
// steel is as heavy as it is, and a fitting as it is stated.
func (p Piece) Most() float64 {
	switch p.Kind {
	case SkinSheet:
		return p.Mass * (1 + timber.SheetSpread)
	case Hanger, Let:
		return p.Mass
	default:
		return p.Mass * (1 + timber.SolidSpread)
	}
}

// SteelDensity is in kg/m3 (41.82 lb by square foot and inch of thickness is
// 8039 with its coating; bare steel is 7850, from memory).
const SteelDensity = 7850

// Layer is a share of a rib's width, with the parallels that it lies between:
// a layer of a sawn rib, or the whole of another.
type Layer struct {
	Width, From, To float64
}

// ribLayers are the layers of a sawn rib side by side, or the whole of another.
func (c *Ceiling) ribLayers() []Layer {
	if c.Rib.Construction.Get() != "sawn" || c.Rib.Layers.Get() == 0 {
		return []Layer{{c.Rib.Width.Get(), 0, c.Rib.Depth.Get()}}
	}
	var layers []Layer
	for _, l := range c.Rib.layer.Get() {
		t, _ := timber.Surfaced(c.quarters(l))
		from := si(c, l.Setback).Get()
		layers = append(layers, Layer{Width: t, From: from, To: from + si(c, l.Depth).Get()})
	}
	return layers
}

// quarters are those of a layer's nominal stock, of whose form the schema makes
// sure.
func (c *Ceiling) quarters(l spec.Layer) int {
	n, _ := stated(c, l.Stock).Get().Quarters()
	return n
}

// resolvePanel works out the pieces of the heaviest panel of the vault, piece
// of an arch by piece.
func resolvePanel(c *Ceiling) []Fault {
	var faults []Fault
	if c.Rib.Construction.Get() == "sawn" {
		for i, l := range c.Rib.layer.Get() {
			if _, err := timber.Surfaced(c.quarters(l)); err != nil {
				faults = append(faults, Fault{spec.Key("rib", "layer", i+1, "stock"), err.Error()})
			}
		}
	}
	c.RibLayers = Derive(c, c.ribLayers)
	c.weigh()
	return faults
}

// bays are the modules along in one panel, at least one.
func (c *Ceiling) bays() int { return max(1, int(math.Round(c.Panel.Modules.Get()))) }

// fullRibs and halfRibs count those of the heaviest panel.
func (c *Ceiling) fullRibs() int {
	inner := max(0, int(math.Round(c.Panel.Modules.Get()))-1)
	if c.Grid.HalfEnds.Get() {
		return inner
	}
	return inner + c.VaultEnds()
}

func (c *Ceiling) halfRibs() int {
	if c.Grid.HalfEnds.Get() {
		return 2
	}
	return 2 - c.VaultEnds()
}

// VaultPieces are the pieces of the whole vault: all panels, all seams.
func (c *Ceiling) VaultPieces() []Piece {
	var out []Piece
	for k := range c.Panel.Around.Get() {
		out = append(out, c.ArchPieces(k)...)
	}
	return out
}

// ArchPieces are those of the k-th piece of all arches, counted from 0 at the left, with
// the seams around.
func (c *Ceiling) ArchPieces(k int) []Piece {
	panels, ends := c.Panel.Along.Get(), 0
	full, half := c.RibCount()
	if !c.Grid.HalfEnds.Get() {
		ends = min(2, panels)
	}
	s0, s1 := c.part(k)
	t := drawings.Get().(*stretch).of(c.Vault, s0, s1)
	defer drawings.Put(t)
	out := c.ribPieces(t, full, half)
	out = append(out, c.Rails(s0, s1, c.Grid.Along.Get())...)
	out = append(out, present(
		c.skinPiece(t, c.Panel.Length.Get(), panels-ends),
		c.skinPiece(t, c.Panel.EndLength.Get(), ends),
	)...)
	out = append(out, c.tenonPieces(s0, s1, c.Seam.Count.Get())...)
	return append(out, c.strapPieces(s0, s1, panels)...)
}

// ribPieces are the ribs and half ribs of a stretch.
func (c *Ceiling) ribPieces(t *stretch, full, halves int) []Piece {
	r := c.ribs()
	return r.pieces(t, full, halves)
}

// Clear is the length of a rail, between the faces of two ribs.
func (c *Ceiling) Clear() float64 { return c.Grid.ModuleAlong.Get() - c.Rib.Width.Get() }

// Rails are those of a number of bays: whole ones inside the arch's piece,
// halves at its feet, its seams and a pointed crown.
func (c *Ceiling) Rails(s0, s1 float64, bays int) []Piece {
	piece := func(at float64, left, right bool) Piece { return c.rail(at, left, right, bays) }
	var out []Piece
	arc, around := c.Vault.Arc.Get(), c.Grid.Around.Get()
	for j := range around + 1 {
		s := arc * float64(j) / float64(around)
		switch inside := spacingSlack * arc; {
		case s < s0-inside || s > s1+inside:
		case s <= s0+inside:
			out = append(out, piece(s0, false, true))
		case s >= s1-inside:
			out = append(out, piece(s1, true, false))
		case c.Vault.Mitred(s):
			out = append(out, piece(s, true, false), piece(s, false, true))
		default:
			out = append(out, piece(s, true, true))
		}
	}
	return present(out...)
}

// rail is that of a number of bays at a place along the arc: whole, or the half on its
// left or on its right.
func (c *Ceiling) rail(at float64, left, right bool, bays int) Piece {
	v, width, species := c.Vault, c.Rail.Width.Get(), c.Rail.Species.Get()
	kind, share, sides := HalfRail, width/2+v.pastMitre(at, c.Rail.Depth.Get()), 1
	if left && right {
		kind, share, sides = Rail, width, 2
	}
	area, centre := v.RailSection(at, c.Rail, left, right).Moments()
	p := Piece{
		Kind: kind, Count: bays, Material: species.Name,
		Length: c.Clear(), Width: share, Depth: c.Rail.Depth.Get(),
		Volume: area * c.Clear(), Centre: centre, At: at,
	}
	if r := c.Grid.Reveal; r.Cuts(c.Rail) && r.At.Get() == "sides" {
		p.Volume -= float64(sides) * r.Width.Get() * r.Depth.Get() * c.Clear()
	}
	p.Mass = p.Volume * timber.Density(species.SG12, c.Climate.Shop.Get())
	return p
}

// skinPiece is the skins of a number of panels of one length.
func (c *Ceiling) skinPiece(t *stretch, along float64, panels int) Piece {
	k := c.skin(along)
	p := k.piece(t, panels)
	p.Length = c.Vault.Along(t.s0, t.s1, c.Skin.Setback.Get())
	return p
}

// tenonPieces are the tenons of a number of seams.
func (c *Ceiling) tenonPieces(s0, s1 float64, seams int) []Piece {
	if seams == 0 {
		return nil
	}
	t, species := c.Seam.Tenon, c.Rib.Species.Get()
	volume := t.Thickness.Get() * t.Width.Get() * t.Length.Get()
	return present(Piece{
		Kind: LooseTenon, Material: species.Name, Centre: c.Vault.Intrados.Get().At((s0 + s1) / 2),
		Count:  c.tenons(s1-s0) * seams,
		Length: t.Length.Get(), Width: t.Width.Get(), Depth: t.Thickness.Get(),
		Volume: volume, Mass: volume * timber.Density(species.SG12, c.Climate.Shop.Get()),
	})
}

// StrapLength is between the fixings of the strap at a station, from the
// extrados to the underside of the framing. It needs room.above.
func (c *Ceiling) StrapLength(station float64) float64 {
	return c.Room.Above.Get() + c.Vault.Crown.Get() - c.ExtradosHeight(station)
}

// ExtradosHeight is that of the back of the ceiling above the springing, square
// to the intrados at a station, and on the mitre of a pointed crown.
func (c *Ceiling) ExtradosHeight(station float64) float64 {
	return c.Vault.Behind(station*c.Vault.Arc.Get(), c.Vault.Thickness.Get()).Z
}

// LayerStock is the nominal thickness of the i-th layer of a sawn rib, in quarters of
// an inch.
func (c *Ceiling) LayerStock(i int) int { return c.quarters(c.Rib.layer.Get()[i]) }

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
	Let // a fitting let into a coffer
)

var pieceNames = [...]string{Rib: "rib", HalfRib: "half rib", Rail: "rail", HalfRail: "half rail", SkinSheet: "skin", LooseTenon: "tenon", Hanger: "strap", Let: "fitting"}

// String is the kind's name in lists and sentences.
func (k PieceKind) String() string { return pieceNames[k] }
