package layout

import (
	"math"

	"dryfit/rules/kernel/timber"
	"dryfit/spec"
	"dryfit/spec/record"
)

// Member is the section of a rib or a rail.
type Member struct {
	Species record.Value[timber.Species]
	Cut     record.Value[timber.Cut]
	Sawn    Word   // how its boards are cut, in the spec's word
	Width   Number // along the axis for a rib, around the arc for a rail
	Depth   Number // across the curve, from the intrados
}

// RibMember is the curved member.
type RibMember struct {
	Member
	Construction Word   // "laminated", "sawn", "solid"
	Bending      Word   // of a solid rib: "strap", "steam", "dry"
	Lamination   Number // thickness of one strip of a laminated rib, else 0
	Segments     Count  // of a sawn rib, in one panel
	Stagger      Number // share of a segment
	Layers       Count  // that the spec states
	layer        record.Value[[]spec.Layer]
}

// Skin is the bent sheet.
type Skin struct {
	Material  record.Value[timber.SheetMaterial]
	Thickness Number // of one layer
	Layers    Count
	Setback   Number // from the intrados to the near face
	Straight  Word   // which way the straight edge runs
	Sheet     StockSheet
	Glue      SkinGlue
	LongBent  Flag // the sheet's long edge goes around the arc
	Between   Flag // between the ribs, or let into them, and not behind
}

// StockSheet is the stock sheet by which of its edges is bent.
type StockSheet struct{ Straight, Bent Number }

// Around reports whether the straight edge runs around, so that nothing can
// bend.
func (s Skin) Around() bool { return s.Straight.Get() == "around" }

// Actual is the actual thickness of one layer, of which Thickness is the name.
func (s Skin) Actual() float64 { return s.Material.Get().Actual(s.Thickness.Get()) }

// SoldThickness is the actual thickness, in m, of a built-in sheet material that is named
// by a thickness, in m; of another the thickness itself.
func SoldThickness(material string, named float64) float64 {
	if s, err := timber.LookupSheet(material); err == nil {
		return s.Actual(named)
	}
	return named
}

// Total is the actual thickness of all layers.
func (s Skin) Total() float64 { return s.Actual() * float64(s.Layers.Get()) }

// Spread is what all layers may be thicker or thinner than Total, in m, at the
// worst: each layer off the same way; 0 where the material has no figure.
func (s Skin) Spread() float64 { return s.Material.Get().Within * float64(s.Layers.Get()) }

// LeastRadius is the least radius, in m, that the material allows the skin, on the
// face toward the room; errors are those of [timber.SheetMaterial.LeastRadius].
func (s Skin) LeastRadius() (float64, error) {
	return s.Material.Get().LeastRadius(s.Thickness.Get(), s.LongBent.Get())
}

// BentEdge names the edge of the sheet that goes around the arc.
func (s Skin) BentEdge() string {
	if s.LongBent.Get() {
		return "long"
	}
	return "short"
}

const asRib = "common practice: as the rib"

func resolveMembers(c *Ceiling) []Fault {
	rib, rail, skin := c.spec.Rib, c.spec.Rail, c.spec.Skin
	var faults []Fault
	species := func(name Word) record.Value[timber.Species] {
		if _, err := c.standards.Species(name.Get()); err != nil {
			faults = append(faults, Fault{Key: name.Key(), Text: err.Error()})
		}
		return Derive(c, func() timber.Species {
			s, _ := c.standards.Species(name.Get())
			return s
		})
	}
	material := stated(c, skin.Material)
	if _, err := c.standards.SheetMaterial(material.Get()); err != nil {
		faults = append(faults, Fault{Key: "skin.material", Text: err.Error()})
	}
	c.takeRib()
	c.takeSkin(material)
	ribSpecies := stated(c, rib.Species)
	c.Rib.Species = species(ribSpecies)
	c.Rail = Member{
		Species: species(c.text(stated(c, rail.Species), asRib, ribSpecies.Get)),
		Cut:     c.cut(rail.Cut), Sawn: stated(c, rail.Cut),
		Width: c.length(si(c, rail.Width), asRib, c.Rib.Width.Get),
		Depth: c.length(si(c, rail.Depth), "common practice: rib less skin", func() float64 { return c.Rib.Depth.Get() - c.Skin.Total() }),
	}
	if c.Rail.Depth.Get() <= 0 {
		faults = append(faults, Fault{Key: "rib.depth", Text: c.sprintf(
			"the rib is %v deep and the skin %v thick, which leaves no depth for the rail; state rail.depth",
			length(c.Rib.Depth.Get()), length(c.Skin.Total()))})
	}
	c.Skin.Setback = c.length(si(c, skin.Setback), "common practice: the rail's depth", c.Rail.Depth.Get)
	return faults
}

func (c *Ceiling) takeRib() {
	s := c.spec.Rib
	c.Rib = RibMember{
		Member:       Member{Cut: c.cut(s.Cut), Sawn: stated(c, s.Cut), Width: si(c, s.Width), Depth: si(c, s.Depth)},
		Construction: stated(c, s.Construction), Bending: stated(c, s.Bending),
		Segments: stated(c, s.Segments), Stagger: si(c, s.Stagger),
		layer: s.Layer.Value(c.rec),
	}
	c.Rib.Layers = Derive(c, func() int { return len(c.Rib.layer.Get()) })
	strip := si(c, s.Lamination)
	_, assumed := c.AssumedAt(strip.Key())
	c.Rib.Lamination = named(c, strip.Key(), func() float64 {
		switch {
		case c.Rib.Construction.Get() != "laminated":
			return 0
		case assumed: // nobody asked for strips that do not make up the depth
			return c.Rib.Depth.Get() / math.Ceil(c.Rib.Depth.Get()/strip.Get()-spacingSlack)
		default:
			return strip.Get()
		}
	})
	if assumed {
		c.restate(strip.Key(), c.Units.Format(length(c.Rib.Lamination.Get()).Value()), "; no thicker, and the depth in whole strips")
	}
}

func (c *Ceiling) takeSkin(material Word) {
	s := c.spec.Skin
	c.Skin = Skin{
		Material: named(c, material.Key(), func() timber.SheetMaterial {
			sheet, _ := c.standards.SheetMaterial(material.Get())
			return sheet
		}),
		Thickness: si(c, s.Thickness), Layers: stated(c, s.Layers), Straight: stated(c, s.Straight),
		Sheet: StockSheet{Straight: si(c, s.Sheet.Straight), Bent: si(c, s.Sheet.Bent)},
		Glue:  SkinGlue{Table: c.table(s.Glue.Table), Width: si(c, s.Glue.Width), Spacing: si(c, s.Glue.Spacing), Press: stated(c, s.Glue.Press)},
	}
	c.Skin.LongBent = Derive(c, func() bool { return c.Skin.Sheet.Bent.Get() >= c.Skin.Sheet.Straight.Get() })
	c.Skin.Between = Derive(c, func() bool { return c.Skin.Setback.Get() < c.Rib.Depth.Get() })
}

var cuts = map[string]timber.Cut{
	"vertical": timber.VerticalGrain,
	"flat":     timber.FlatGrain,
	"mixed":    timber.MixedGrain,
}

func (c *Ceiling) cut(f spec.Field[string]) record.Value[timber.Cut] {
	word := stated(c, f)
	return named(c, word.Key(), func() timber.Cut { return cuts[word.Get()] })
}
