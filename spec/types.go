package spec

import "dryfit/spec/quantity"

// Spec is one ceiling as its author wrote it, format version 1, with whatever
// defaults were added to the tree before it was bound. A nil pointer, a nil
// slice and an empty string mean that the key is absent.
type Spec struct {
	Dryfit    int        `toml:"dryfit"`
	Project   Project    `toml:"project"`
	Room      Room       `toml:"room"`
	Vault     Vault      `toml:"vault"`
	Springing Springing  `toml:"springing"`
	Grid      Grid       `toml:"grid"`
	Panels    Panels     `toml:"panels"`
	Rib       Rib        `toml:"rib"`
	Rail      Rail       `toml:"rail"`
	Skin      Skin       `toml:"skin"`
	Seam      Seam       `toml:"seam"`
	Strap     *Strap     `toml:"strap"`
	Ledger    *Ledger    `toml:"ledger"`
	Edge      Edge       `toml:"edge"`
	Close     Close      `toml:"close"`
	Climate   Climate    `toml:"climate"`
	Finish    Finish     `toml:"finish"`
	Lift      *Lift      `toml:"lift"`
	Crew      Crew       `toml:"crew"`
	Wrap      Wrap       `toml:"wrap"`
	Route     []Leg      `toml:"route"`
	Fitting   []Fitting  `toml:"fitting"`
	Accept    []Accepted `toml:"accept"`
}

// Project is the title block.
type Project struct {
	Title    string `toml:"title"`
	Sheet    string `toml:"sheet"`
	Revision string `toml:"revision"`
	Units    string `toml:"units"`    // "metric" or "imperial"
	Engineer string `toml:"engineer"` // of record for the hanging
}

// Room is the room as built.
type Room struct {
	Width     quantity.Length  `toml:"width"`
	Length    quantity.Length  `toml:"length"`
	Height    quantity.Length  `toml:"height"`    // floor to springing
	Above     *quantity.Length `toml:"above"`     // clear, from the crown's extrados to the framing
	Tolerance *quantity.Length `toml:"tolerance"` // plus or minus, on width and length
	Entry     string           `toml:"entry"`     // "end", "side"
	Access    string           `toml:"access"`    // "above", "none"
	Framing   *Framing         `toml:"framing"`
	Door      *RoomDoor        `toml:"door"`
}

// Framing is what the straps are fixed to.
type Framing struct {
	Spacing  *quantity.Length `toml:"spacing"`
	Runs     string           `toml:"runs"`   // "across", "along"
	Offset   *quantity.Length `toml:"offset"` // first member from the near end wall or the left side wall
	Member   *quantity.Length `toml:"member"` // width of one member
	Species  string           `toml:"species"`
	Blocking *bool            `toml:"blocking"`
	Movement *quantity.Length `toml:"movement"`
}

// RoomDoor places the room's own door.
type RoomDoor struct {
	Wall   string          `toml:"wall"`
	Offset quantity.Length `toml:"offset"`
}

// Vault is the curve and its length.
type Vault struct {
	Profile      string           `toml:"profile"`
	Span         quantity.Length  `toml:"span"`
	Rise         *quantity.Length `toml:"rise"`
	Radius       *quantity.Length `toml:"radius"`        // pointed
	CrownRadius  *quantity.Length `toml:"crown_radius"`  // three-centred
	HaunchRadius *quantity.Length `toml:"haunch_radius"` // three-centred
	Length       quantity.Length  `toml:"length"`
}

// Springing says how the panel's feet are cut.
type Springing struct {
	Cut string `toml:"cut"` // "plumb", "radial", "level"
}

// Grid is the coffers.
type Grid struct {
	Around int     `toml:"around"`
	Along  int     `toml:"along"`
	Ends   string  `toml:"ends"` // "half", "full"
	Reveal *Reveal `toml:"reveal"`
}

// Reveal is the shadow groove.
type Reveal struct {
	Width *quantity.Length `toml:"width"`
	Depth *quantity.Length `toml:"depth"`
	At    string           `toml:"at"` // "seam", "sides", "layers"
}

// Panels is how the vault divides into shop-built units.
type Panels struct {
	Along     *int             `toml:"along"`
	Around    *int             `toml:"around"`
	Tolerance *quantity.Length `toml:"tolerance"`
	Form      *quantity.Length `toml:"form"`
}

// Rib is the curved member.
type Rib struct {
	Species      string           `toml:"species"`
	Cut          string           `toml:"cut"`          // "vertical", "flat", "mixed"
	Construction string           `toml:"construction"` // "laminated", "sawn", "solid"
	Width        quantity.Length  `toml:"width"`
	Depth        quantity.Length  `toml:"depth"`
	Lamination   *quantity.Length `toml:"lamination"`
	Segments     *int             `toml:"segments"`
	Stagger      *quantity.Share  `toml:"stagger"`
	Layer        []Layer          `toml:"layer"`
}

// Layer is one layer of a sawn rib, side by side through the width.
type Layer struct {
	Stock   quantity.Stock   `toml:"stock"`
	Depth   quantity.Length  `toml:"depth"`
	Setback *quantity.Length `toml:"setback"`
}

// Rail is the straight member.
type Rail struct {
	Species string           `toml:"species"`
	Cut     string           `toml:"cut"`
	Width   *quantity.Length `toml:"width"`
	Depth   *quantity.Length `toml:"depth"`
}

// Skin is the bent sheet.
type Skin struct {
	Material  string           `toml:"material"`
	Thickness *quantity.Length `toml:"thickness"`
	Layers    *int             `toml:"layers"`
	Straight  string           `toml:"straight"` // "along", "around"
	Sheet     *Sheet           `toml:"sheet"`
	Setback   *quantity.Length `toml:"setback"`
}

// Sheet is the stock sheet by which of its edges is bent.
type Sheet struct {
	Straight quantity.Length `toml:"straight"`
	Bent     quantity.Length `toml:"bent"`
}

// Seam is the field joint.
type Seam struct {
	Tenon     *Tenon           `toml:"tenon"`
	Spacing   *quantity.Length `toml:"spacing"`
	Edge      *quantity.Length `toml:"edge"`
	Mortise   string           `toml:"mortise"`
	Gap       *quantity.Length `toml:"gap"`
	Tolerance *quantity.Length `toml:"tolerance"`
}

// Tenon is a loose tenon.
type Tenon struct {
	Thickness quantity.Length `toml:"thickness"`
	Width     quantity.Length `toml:"width"`
	Length    quantity.Length `toml:"length"`
}

// Strap is the hanger.
type Strap struct {
	Stations  []quantity.Share `toml:"stations"`
	Material  string           `toml:"material"`
	Width     *quantity.Length `toml:"width"`
	Thickness *quantity.Length `toml:"thickness"`
	Lap       *quantity.Length `toml:"lap"`
	Hole      *quantity.Length `toml:"hole"`
	Setting   *quantity.Length `toml:"setting"`
	Fixing    *Fixing          `toml:"fixing"`
	Allowable *Allowable       `toml:"allowable"`
	Screws    *Screws          `toml:"screws"`
}

// Fixing says on which face the strap is screwed.
type Fixing struct {
	Top    string `toml:"top"`    // "side", "underside"
	Bottom string `toml:"bottom"` // "side", "back", "seam"
}

// Allowable is the load that a strap with its fixings may carry.
type Allowable struct {
	Load   quantity.Force `toml:"load"`
	Source string         `toml:"source"`
}

// Screws are those at one end of a strap.
type Screws struct {
	Count       int              `toml:"count"`
	Diameter    quantity.Length  `toml:"diameter"`
	Penetration *quantity.Length `toml:"penetration"`
}

// Ledger is the wall member under the springing.
type Ledger struct {
	Projection *quantity.Length `toml:"projection"`
	Fixed      string           `toml:"fixed"` // "before", "after"
	Packed     bool             `toml:"packed"`
}

// Edge is the perimeter moulding.
type Edge struct {
	Cover *quantity.Length `toml:"cover"`
}

// Close is the order of closing.
type Close struct {
	FirstGap *quantity.Length `toml:"first_gap"`
	Last     string           `toml:"last"` // "slide", "drop"
}

// Climate is the air that the wood lives in.
type Climate struct {
	Shop  *Air       `toml:"shop"`
	Dry   *Air       `toml:"dry"`
	Wet   *Air       `toml:"wet"`
	Above *RoofSpace `toml:"above"`
}

// Air is a temperature and a relative humidity.
type Air struct {
	Temperature quantity.Temperature `toml:"temperature"`
	Humidity    quantity.Share       `toml:"humidity"`
}

// RoofSpace is the air behind the ceiling.
type RoofSpace struct {
	Dry *Air `toml:"dry"`
	Wet *Air `toml:"wet"`
}

// Finish says which faces are sealed.
type Finish struct {
	Sides string `toml:"sides"` // "all", "seen"
}

// Lift is the hand-cranked lifts.
type Lift struct {
	Units    int              `toml:"units"`
	Capacity *quantity.Mass   `toml:"capacity"`
	Reach    *quantity.Length `toml:"reach"`
	Stowed   *quantity.Length `toml:"stowed"`
	Stations []quantity.Share `toml:"stations"`
	Saddle   *bool            `toml:"saddle"`
}

// Crew is who carries.
type Crew struct {
	People *int   `toml:"people"`
	Aids   string `toml:"aids"` // "none", "dollies"
}

// Wrap is the padding while travelling.
type Wrap struct {
	Allowance *quantity.Length `toml:"allowance"`
}

// Leg is one leg of the route; which keys it has depends on its kind.
type Leg struct {
	Name     string           `toml:"name"`
	Kind     string           `toml:"kind"` // "vehicle", "door", "corridor", "corner", "stair", "elevator"
	Width    *quantity.Length `toml:"width"`
	Height   *quantity.Length `toml:"height"`
	Length   *quantity.Length `toml:"length"`
	Wall     *quantity.Length `toml:"wall"`
	Before   *quantity.Length `toml:"before"`
	After    *quantity.Length `toml:"after"`
	Onward   *quantity.Length `toml:"onward"`
	Headroom *quantity.Length `toml:"headroom"`
	Rise     *quantity.Length `toml:"rise"`
	Going    *quantity.Length `toml:"going"`
	Landing  *Plan            `toml:"landing"`
	Door     *Opening         `toml:"door"`
	Inside   *Box             `toml:"inside"`
	Capacity *quantity.Mass   `toml:"capacity"`
}

// Plan is a floor.
type Plan struct {
	Width  quantity.Length `toml:"width"`
	Length quantity.Length `toml:"length"`
}

// Opening is a clear opening.
type Opening struct {
	Width  quantity.Length `toml:"width"`
	Height quantity.Length `toml:"height"`
}

// Box is a clear inside.
type Box struct {
	Length quantity.Length `toml:"length"`
	Width  quantity.Length `toml:"width"`
	Height quantity.Length `toml:"height"`
}

// Fitting is something let into a coffer.
type Fitting struct {
	Name   string      `toml:"name"`
	Kind   string      `toml:"kind"` // "luminaire", "sprinkler", "diffuser", "other"
	Coffer []int       `toml:"coffer"`
	Size   FittingSize `toml:"size"`
	At     *Offset     `toml:"at"`
}

// FittingSize is a diameter, or a width around the arc and a length along the
// axis.
type FittingSize struct {
	Diameter *quantity.Length `toml:"diameter"`
	Width    *quantity.Length `toml:"width"`
	Length   *quantity.Length `toml:"length"`
}

// Offset is measured from the coffer's centre; either may be negative.
type Offset struct {
	Around quantity.Length `toml:"around"`
	Along  quantity.Length `toml:"along"`
}

// Accepted moves a query to a list that is still printed.
type Accepted struct {
	Rule   string `toml:"rule"`
	At     string `toml:"at"`
	Reason string `toml:"reason"`
	By     string `toml:"by"`
	Until  string `toml:"until"` // a date, 2027-06-30
}
