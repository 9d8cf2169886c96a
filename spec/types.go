package spec

import "dryfit/spec/quantity"

// Spec is one ceiling as its author wrote it, format version 1, with whatever
// defaults were added to the tree before it was bound. What it says can be had
// only as a record.Value, which notes that it was read.
type Spec struct {
	Dryfit    Field[int]     `toml:"dryfit"`
	Project   Project        `toml:"project"`
	Room      Room           `toml:"room"`
	Vault     Vault          `toml:"vault"`
	Springing Springing      `toml:"springing"`
	Grid      Grid           `toml:"grid"`
	Panels    Panels         `toml:"panels"`
	Rib       Rib            `toml:"rib"`
	Rail      Rail           `toml:"rail"`
	Skin      Skin           `toml:"skin"`
	Seam      Seam           `toml:"seam"`
	Strap     Strap          `toml:"strap"`
	Ledger    Ledger         `toml:"ledger"`
	Edge      Edge           `toml:"edge"`
	Close     Close          `toml:"close"`
	Survey    Survey         `toml:"survey"`
	Climate   Climate        `toml:"climate"`
	Finish    Finish         `toml:"finish"`
	Lift      Lift           `toml:"lift"`
	Crew      Crew           `toml:"crew"`
	Wrap      Wrap           `toml:"wrap"`
	Route     List[Leg]      `toml:"route"`
	Fitting   List[Fitting]  `toml:"fitting"`
	Align     List[Align]    `toml:"align"`
	Accept    List[Accepted] `toml:"accept"`
}

// Project is the title block.
type Project struct {
	Table
	Title    Field[string]         `toml:"title"`
	Sheet    Field[string]         `toml:"sheet"`
	Revision Field[string]         `toml:"revision"`
	Owner    Field[string]         `toml:"owner"`    // of the drawings
	Drawn    Field[string]         `toml:"drawn"`    // by whom
	Approved Field[string]         `toml:"approved"` // by whom
	Issued   Field[string]         `toml:"issued"`   // a date, 2026-11-20
	North    Field[quantity.Angle] `toml:"north"`    // clockwise from the top of the plan
	Units    Field[string]         `toml:"units"`    // "metric" or "imperial"
	Engineer Field[string]         `toml:"engineer"` // of record for the hanging
}

// Room is the room as built.
type Room struct {
	Table
	Width     Field[quantity.Length] `toml:"width"`
	Length    Field[quantity.Length] `toml:"length"`
	Height    Field[quantity.Length] `toml:"height"`    // floor to springing
	Use       Field[string]          `toml:"use"`       // "dwelling", "public"
	Above     Field[quantity.Length] `toml:"above"`     // clear, from the crown's extrados to the framing
	Tolerance Field[quantity.Length] `toml:"tolerance"` // plus or minus, on width and length
	Entry     Field[string]          `toml:"entry"`     // "end", "side"
	Eye       Field[quantity.Length] `toml:"eye"`       // of one who stands in the entry, above the floor
	Access    Field[string]          `toml:"access"`    // "above", "none"
	Framing   Framing                `toml:"framing"`
	Door      RoomDoor               `toml:"door"`
}

// Framing is what the straps are fixed to.
type Framing struct {
	Table
	Spacing  Field[quantity.Length] `toml:"spacing"`
	Runs     Field[string]          `toml:"runs"`   // "across", "along"
	Offset   Field[quantity.Length] `toml:"offset"` // first member from the near end wall or the left side wall
	Member   Field[quantity.Length] `toml:"member"` // width of one member
	Species  Field[string]          `toml:"species"`
	Blocking Field[bool]            `toml:"blocking"`
	Movement Field[quantity.Length] `toml:"movement"`
}

// RoomDoor places the room's own door.
type RoomDoor struct {
	Table
	Wall   Field[string]          `toml:"wall"`
	Offset Field[quantity.Length] `toml:"offset"`
}

// Vault is the curve and its length.
type Vault struct {
	Table
	Profile      Field[Profile]         `toml:"profile"`
	Span         Field[quantity.Length] `toml:"span"`
	Rise         Field[quantity.Length] `toml:"rise"`
	Radius       Field[quantity.Length] `toml:"radius"`        // pointed
	CrownRadius  Field[quantity.Length] `toml:"crown_radius"`  // three-centred
	HaunchRadius Field[quantity.Length] `toml:"haunch_radius"` // three-centred
	Length       Field[quantity.Length] `toml:"length"`
}

// Springing says how the panel's feet are cut.
type Springing struct {
	Table
	Cut Field[string] `toml:"cut"` // "plumb", "radial", "level"
}

// Grid is the coffers.
type Grid struct {
	Table
	Around Field[int]    `toml:"around"`
	Along  Field[int]    `toml:"along"`
	Ends   Field[string] `toml:"ends"` // "half", "full"
	Reveal Reveal        `toml:"reveal"`
}

// Reveal is the shadow groove.
type Reveal struct {
	Table
	Width Field[quantity.Length] `toml:"width"`
	Depth Field[quantity.Length] `toml:"depth"`
	At    Field[string]          `toml:"at"` // "seam", "sides", "layers"
}

// Panels is how the vault divides into shop-built units.
type Panels struct {
	Table
	Along     Field[int]             `toml:"along"`
	Around    Field[int]             `toml:"around"`
	Tolerance Field[quantity.Length] `toml:"tolerance"`
	Form      Field[quantity.Length] `toml:"form"`
}

// Rib is the curved member.
type Rib struct {
	Table
	Species      Field[string]          `toml:"species"`
	Cut          Field[string]          `toml:"cut"`          // "vertical", "flat", "mixed"
	Construction Field[string]          `toml:"construction"` // "laminated", "sawn", "solid"
	Width        Field[quantity.Length] `toml:"width"`
	Depth        Field[quantity.Length] `toml:"depth"`
	Bending      Field[string]          `toml:"bending"` // of a solid rib: "strap", "steam", "dry"
	Lamination   Field[quantity.Length] `toml:"lamination"`
	Segments     Field[int]             `toml:"segments"`
	Stagger      Field[quantity.Share]  `toml:"stagger"`
	Layer        List[Layer]            `toml:"layer"`
}

// Layer is one layer of a sawn rib, side by side through the width.
type Layer struct {
	Stock   Field[quantity.Stock]  `toml:"stock"`
	Depth   Field[quantity.Length] `toml:"depth"`
	Setback Field[quantity.Length] `toml:"setback"`
}

// Rail is the straight member.
type Rail struct {
	Table
	Species Field[string]          `toml:"species"`
	Cut     Field[string]          `toml:"cut"`
	Width   Field[quantity.Length] `toml:"width"`
	Depth   Field[quantity.Length] `toml:"depth"`
	Joint   RailJoint              `toml:"joint"`
}

// RailJoint is what holds each end of a rail to its rib.
type RailJoint struct {
	Table
	Kind      Field[string]          `toml:"kind"` // "tenon", "dowel", "screw", "glue"
	Count     Field[int]             `toml:"count"`
	Thickness Field[quantity.Length] `toml:"thickness"`
	Width     Field[quantity.Length] `toml:"width"`
	Diameter  Field[quantity.Length] `toml:"diameter"`
	Embedment Field[quantity.Length] `toml:"embedment"` // in the half rib; of a screw, in the rail
}

// Skin is the bent sheet.
type Skin struct {
	Table
	Material  Field[string]          `toml:"material"`
	Thickness Field[quantity.Length] `toml:"thickness"`
	Layers    Field[int]             `toml:"layers"`
	Straight  Field[string]          `toml:"straight"` // "along", "around"
	Sheet     StockSheet             `toml:"sheet"`
	Setback   Field[quantity.Length] `toml:"setback"`
	Glue      SkinGlue               `toml:"glue"`
}

// SkinGlue is how the skin is glued to the frame.
type SkinGlue struct {
	Table
	Width   Field[quantity.Length] `toml:"width"`
	Press   Field[string]          `toml:"press"` // "clamps", "staples", "nails", "bag"
	Spacing Field[quantity.Length] `toml:"spacing"`
}

// StockSheet is the stock sheet by which of its edges is bent.
type StockSheet struct {
	Table
	Straight Field[quantity.Length] `toml:"straight"`
	Bent     Field[quantity.Length] `toml:"bent"`
}

// Seam is the field joint.
type Seam struct {
	Table
	Tenon     Tenon                  `toml:"tenon"`
	Spacing   Field[quantity.Length] `toml:"spacing"`
	Edge      Field[quantity.Length] `toml:"edge"`
	Mortise   Field[string]          `toml:"mortise"`
	Gap       Field[quantity.Length] `toml:"gap"`
	Tolerance Field[quantity.Length] `toml:"tolerance"`
}

// Tenon is a loose tenon.
type Tenon struct {
	Table
	Thickness Field[quantity.Length] `toml:"thickness"`
	Width     Field[quantity.Length] `toml:"width"`
	Length    Field[quantity.Length] `toml:"length"`
}

// Strap is the hanger.
type Strap struct {
	Table
	Stations  Field[[]quantity.Share] `toml:"stations"`
	Material  Field[string]           `toml:"material"`
	Width     Field[quantity.Length]  `toml:"width"`
	Thickness Field[quantity.Length]  `toml:"thickness"`
	Lap       Field[quantity.Length]  `toml:"lap"`
	Hole      Field[quantity.Length]  `toml:"hole"`
	Setting   Field[quantity.Length]  `toml:"setting"`
	Hung      Field[string]           `toml:"hung"` // "shop", "room"
	Fixing    Fixing                  `toml:"fixing"`
	Allowable Allowable               `toml:"allowable"`
	Screws    Screws                  `toml:"screws"`
}

// Fixing says on which face the strap is screwed.
type Fixing struct {
	Table
	Top    Field[string] `toml:"top"`    // "side", "underside"
	Bottom Field[string] `toml:"bottom"` // "side", "back", "seam"
}

// Allowable is the load that a strap with its fixings may carry.
type Allowable struct {
	Table
	Load   Field[quantity.Force] `toml:"load"`
	Source Field[string]         `toml:"source"`
}

// Screws are those at one end of a strap.
type Screws struct {
	Table
	Count       Field[int]             `toml:"count"`
	Diameter    Field[quantity.Length] `toml:"diameter"`
	Penetration Field[quantity.Length] `toml:"penetration"`
	Length      Field[quantity.Length] `toml:"length"`  // under the head
	Spacing     Field[quantity.Length] `toml:"spacing"` // between neighbours of the row
	Edge        Field[quantity.Length] `toml:"edge"`    // least, from the wood's edge
}

// Ledger is the wall member under the springing.
type Ledger struct {
	Table
	Projection Field[quantity.Length] `toml:"projection"`
	Fixed      Field[string]          `toml:"fixed"` // "before", "after"
	Packed     Field[bool]            `toml:"packed"`
}

// Edge is the perimeter moulding.
type Edge struct {
	Table
	Cover Field[quantity.Length] `toml:"cover"`
}

// Close is the order of closing.
type Close struct {
	Table
	FirstGap Field[quantity.Length] `toml:"first_gap"`
	Last     Field[string]          `toml:"last"` // "slide", "drop"
}

// Accepted moves a query to a list that is still printed.
type Accepted struct {
	Rule   Field[string] `toml:"rule"`
	At     Field[string] `toml:"at"`
	Reason Field[string] `toml:"reason"`
	By     Field[string] `toml:"by"`
	Until  Field[string] `toml:"until"` // a date, 2027-06-30
}
