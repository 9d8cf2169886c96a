package layout

import (
	"dryfit/rules/kernel/cite"
	"dryfit/spec"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// Table is what a table of the spec says by being there.
type Table struct{ stated Flag }

// Given reports whether the spec states the table, or a default does.
func (t Table) Given() bool { return t.stated.Get() }

// Project is the title block.
type Project struct {
	Title, Sheet, Revision         Word
	Owner, Drawn, Approved, Issued Word
	North                          Number // rad, clockwise from the top of the plan
	Engineer                       Word   // of record for the hanging
}

// Room is the room as built.
type Room struct {
	Width, Length Number
	Height        Number // floor to springing
	Above         Number // clear, from the crown's extrados to the framing
	Tolerance     Number // plus or minus, on width and length
	Eye           Number // of one who stands in the entry, above the floor
	Entry, Access Word
	Use           Word // "dwelling" or "public"
	Framing       Framing
	Door          RoomDoor
}

// Framing is what the straps are fixed to.
type Framing struct {
	Table
	Spacing, Offset Number
	Member          Number // width of one member
	Movement        Number
	Runs, Species   Word
	Blocking        Flag
}

// RoomDoor places the room's own door.
type RoomDoor struct {
	Table
	Wall   Word
	Offset Number
}

// Stations are places along an arc as shares of it, from the left in whatever
// order the file lists them: straps and lifts are numbered from the left foot.
type Stations struct {
	record.Value[[]float64]
	table  string
	places []int // of each in the file's list, from 1
}

func stations(c *Ceiling, table string, f spec.Field[[]quantity.Share]) Stations {
	list, places := spec.Ascending(c.rec, f)
	return Stations{list, table, places}
}

// Place is the key of the i-th station from the left, counted from 0, where the
// file lists it.
func (s Stations) Place(i int) string { return spec.Key(s.table, "stations", s.places[i]) }

// Strap is the hanger.
type Strap struct {
	Table
	Stations                             Stations // on the whole arch
	Material                             Word
	Width, Thickness, Lap, Hole, Setting Number
	// Hung is the states that the wood may be in when it is hung, of "shop", "dry"
	// and "wet": the shop's, or that of either season once it has come to the room's
	// air, whose season nobody states. All three where the spec does not say.
	Hung      record.Value[[]string]
	Fixing    Fixing
	Allowable Allowable
	Screws    Screws
}

// Fixing says on which face the strap is screwed.
type Fixing struct{ Top, Bottom Word }

// Allowable is the load that a strap with its fixings may carry.
type Allowable struct {
	Table
	Load   Number
	Source Word
}

// Screws are those at one end of a strap, in one row on its centre line.
type Screws struct {
	Table
	Count                 Count
	Diameter, Penetration Number
	Length                Number // under the head
	Spacing               Number // between neighbours of the row
	Edge                  Number // the least that the spec asks for, from the wood's edge
}

// RailJoint is what holds each end of a rail to its rib.
type RailJoint struct {
	Table
	Kind                       Word // "tenon", "dowel", "screw", "glue"
	Count                      Count
	Thickness, Width, Diameter Number
	Embedment                  Number // in the half rib; of a screw, in the rail
}

// SkinGlue is how the skin is glued to the frame.
type SkinGlue struct {
	Table
	Width, Spacing Number
	Press          Word // "clamps", "staples", "nails", "bag"
}

// Ledger is the wall member under the springing.
type Ledger struct {
	Table
	Projection Number
	Fixed      Word
	Packed     Flag
}

// Edge is the perimeter moulding.
type Edge struct{ Cover Number }

// Close is the order of closing.
type Close struct {
	FirstGap Number
	Last     Word
}

// Finish says which faces are sealed.
type Finish struct{ Sides Word }

// Lift is the hand-cranked lifts.
type Lift struct {
	Table
	Units                   Count
	Capacity, Reach, Stowed Number
	Stations                Stations // on the panel's own arc
	Saddle                  Flag
	Base                    LiftBase
}

// LiftBase is the outline of what a lift stands on, along the vault's axis and across
// its span, and how far its heel, where the mast stands, is from the load centre of
// its forks.
type LiftBase struct {
	Table
	Along, Across, Heel Number
}

// Crew is who carries.
type Crew struct {
	People Count
	Aids   Word
}

// Wrap is the padding while travelling.
type Wrap struct{ Allowance Number }

// Leg is one leg of the route; which keys it has depends on its kind.
type Leg struct {
	Prefix                                                                                      string // its key: "route.2", or "default.route.1" of one that the standards give
	Name                                                                                        Word
	Kind                                                                                        record.Value[spec.LegKind]
	Width, Height, Length, Wall, Before, After, Beside, Onward, Headroom, Rise, Going, Capacity Number
	Risers                                                                                      Count
	Turn, Between, Ends                                                                         Word
	Landing                                                                                     Box
	LandingLeft                                                                                 Number // the flight's left wall from the landing's
	Door                                                                                        Box
	DoorLeft, DoorSill                                                                          Number
	Inside                                                                                      Box
	Tried                                                                                       Trial
}

// Trial is what was tried at a leg.
type Trial struct {
	Table
	Date, By, How, Until Word
}

// Box is a clear floor, opening or inside; what it has no size of is not given.
type Box struct{ Length, Width, Height Number }

// Fitting is something let into a coffer.
type Fitting struct {
	Name, Kind              Word
	Coffer                  record.Value[[]int]
	Diameter, Width, Length Number
	At                      Offset
	Mass                    Number
}

// Offset is measured from the coffer's centre.
type Offset struct {
	Table
	Around, Along Number
}

// Aligned is a window or a door in a side wall, whose middle the coffers are to meet.
type Aligned struct {
	Name Word
	At   Number // from the near end wall
}

// Acceptance is what the spec says of a finding that it accepts.
type Acceptance struct{ Rule, At, Reason, By, Until string }

// si and others are what the spec states at a key.
func si[T ~float64](c *Ceiling, f spec.Field[T]) Number { return spec.SI(c.rec, f) }

func stated[T any](c *Ceiling, f spec.Field[T]) record.Value[T] { return f.Value(c.rec) }

func (c *Ceiling) table(t spec.Table) Table { return Table{t.Stated(c.rec)} }

// takeInputs are the parts of the spec that nothing follows from here.
func (c *Ceiling) takeInputs() {
	s := c.spec
	c.Project = Project{
		Title: stated(c, s.Project.Title), Sheet: stated(c, s.Project.Sheet),
		Revision: stated(c, s.Project.Revision), Engineer: stated(c, s.Project.Engineer),
		Owner: stated(c, s.Project.Owner), Drawn: stated(c, s.Project.Drawn),
		Approved: stated(c, s.Project.Approved), Issued: stated(c, s.Project.Issued),
		North: si(c, s.Project.North),
	}
	c.takeRoom()
	c.takeSurvey()
	c.takeStrap()
	c.Ledger = Ledger{
		Table: c.table(s.Ledger.Table), Projection: si(c, s.Ledger.Projection),
		Fixed: stated(c, s.Ledger.Fixed), Packed: stated(c, s.Ledger.Packed),
	}
	c.Edge = Edge{si(c, s.Edge.Cover)}
	j := s.Rail.Joint
	c.RailJoint = RailJoint{
		Table: c.table(j.Table), Kind: stated(c, j.Kind), Count: stated(c, j.Count),
		Thickness: si(c, j.Thickness), Width: si(c, j.Width), Diameter: si(c, j.Diameter), Embedment: si(c, j.Embedment),
	}
	c.Close = Close{FirstGap: si(c, s.Close.FirstGap), Last: stated(c, s.Close.Last)}
	c.Finish = Finish{stated(c, s.Finish.Sides)}
	c.Lift = Lift{
		Table: c.table(s.Lift.Table), Units: stated(c, s.Lift.Units),
		Capacity: si(c, s.Lift.Capacity), Reach: si(c, s.Lift.Reach), Stowed: si(c, s.Lift.Stowed),
		Stations: stations(c, "lift", s.Lift.Stations), Saddle: stated(c, s.Lift.Saddle),
		Base: LiftBase{Table: c.table(s.Lift.Base.Table), Along: si(c, s.Lift.Base.Along), Across: si(c, s.Lift.Base.Across), Heel: si(c, s.Lift.Base.Heel)},
	}
	c.Crew = Crew{People: stated(c, s.Crew.People), Aids: stated(c, s.Crew.Aids)}
	c.Wrap = Wrap{si(c, s.Wrap.Allowance)}
	c.Route = c.legs()
	c.Fitting = each(c, s.Fitting, c.fitting)
	c.Align = each(c, s.Align, func(a spec.Align) Aligned { return Aligned{stated(c, a.Name), si(c, a.At)} })
	c.Accept = each(c, s.Accept, c.acceptance)
}

// each turns the elements of an array of tables into what is read of them.
func each[S, T any](c *Ceiling, list spec.List[S], f func(S) T) record.Value[[]T] {
	elements := list.Value(c.rec)
	return Derive(c, func() []T {
		of := elements.Get()
		if len(of) == 0 {
			return nil
		}
		out := make([]T, 0, len(of))
		for _, s := range of {
			out = append(out, f(s))
		}
		return out
	})
}

func (c *Ceiling) takeRoom() {
	s, f := c.spec.Room, c.spec.Room.Framing
	c.Room = Room{
		Width: si(c, s.Width), Length: si(c, s.Length), Height: si(c, s.Height),
		Above: si(c, s.Above), Use: stated(c, s.Use), Eye: si(c, s.Eye), Entry: stated(c, s.Entry), Access: stated(c, s.Access),
		Framing: Framing{
			Table: c.table(f.Table), Spacing: si(c, f.Spacing), Offset: si(c, f.Offset), Member: si(c, f.Member),
			Movement: si(c, f.Movement), Runs: stated(c, f.Runs), Species: stated(c, f.Species), Blocking: stated(c, f.Blocking),
		},
		Door: RoomDoor{Table: c.table(s.Door.Table), Wall: stated(c, s.Door.Wall), Offset: si(c, s.Door.Offset)},
	}
	c.Room.Tolerance = c.length(si(c, s.Tolerance), outOfTrue.String(), func() float64 {
		return max(c.Room.Width.Get(), c.Room.Length.Get()) * outOfTrueBy
	})
}

// outOfTrue is how far walls may be out of size and straight, which is a rate:
// the tolerance of a room whose spec has none is that of its longer side.
var outOfTrue = cite.AWS.At("p. 331, 6.1.10: walls straight and of their size to 1/4in in 144in, of the longer side")

const outOfTrueBy = 0.25 / 144

func (c *Ceiling) takeStrap() {
	s := c.spec.Strap
	c.Strap = Strap{
		Table: c.table(s.Table), Stations: stations(c, "strap", s.Stations), Material: stated(c, s.Material),
		Width: si(c, s.Width), Thickness: si(c, s.Thickness), Lap: si(c, s.Lap), Hole: si(c, s.Hole), Setting: si(c, s.Setting),
		Hung:      hung(c, stated(c, s.Hung)),
		Fixing:    Fixing{Top: stated(c, s.Fixing.Top), Bottom: stated(c, s.Fixing.Bottom)},
		Allowable: Allowable{Table: c.table(s.Allowable.Table), Load: si(c, s.Allowable.Load), Source: stated(c, s.Allowable.Source)},
		Screws: Screws{
			Table: c.table(s.Screws.Table), Count: stated(c, s.Screws.Count),
			Diameter: si(c, s.Screws.Diameter), Penetration: si(c, s.Screws.Penetration),
			Length: si(c, s.Screws.Length), Spacing: si(c, s.Screws.Spacing), Edge: si(c, s.Screws.Edge),
		},
	}
}

// hung is the states that strap.hung leaves.
func hung(c *Ceiling, said Word) record.Value[[]string] {
	return Derive(c, func() []string {
		switch said.Get() {
		case "shop":
			return []string{"shop"}
		case "room":
			return []string{"dry", "wet"}
		default:
			return []string{"shop", "dry", "wet"}
		}
	})
}

func (c *Ceiling) fitting(f spec.Fitting) Fitting {
	return Fitting{
		Name: stated(c, f.Name), Kind: stated(c, f.Kind), Coffer: stated(c, f.Coffer),
		Diameter: si(c, f.Size.Diameter), Width: si(c, f.Size.Width), Length: si(c, f.Size.Length),
		At:   Offset{Table: c.table(f.At.Table), Around: si(c, f.At.Around), Along: si(c, f.At.Along)},
		Mass: si(c, f.Mass),
	}
}

func (c *Ceiling) acceptance(a spec.Accepted) Acceptance {
	return Acceptance{
		Rule: stated(c, a.Rule).Get(), At: stated(c, a.At).Get(), Reason: stated(c, a.Reason).Get(),
		By: stated(c, a.By).Get(), Until: stated(c, a.Until).Get(),
	}
}
