package ruletest

// through are the keys by which others act on a rule, so that those matter where
// these do.
var through = map[string][]string{
	// The curve, said otherwise than by its rise.
	"vault.radius": {"vault.rise"}, "vault.crown_radius": {"vault.rise"}, "vault.haunch_radius": {"vault.rise"},
	// Full ribs at the ends come off the length that the modules divide.
	"grid.ends": {"vault.length"}, "rib.width": {"grid.ends"},
	// What a panel is divided from, and what follows from other parts by default.
	"grid.along": {"panels.along"}, "rail.depth": {"skin.setback"}, "skin.layers": {"skin.thickness"}, "skin.thickness": {"rail.depth", "skin.setback"},
	// The material says how thick the sheets of a named thickness are.
	"skin.material": {"skin.thickness", "rail.depth", "skin.setback"},
	// The vault is as thick as the deeper of both.
	"skin.setback": {"rib.depth"},
	// The layers of a sawn rib make up its depth.
	"rib.construction": {"rib.depth"}, "rib.layer": {"rib.depth"}, "rib.layer.stock": {"rib.depth"}, "rib.layer.depth": {"rib.depth"}, "rib.layer.setback": {"rib.depth"},
	// Tenons are counted by both.
	"seam.edge": {"seam.spacing"},
}

// weighed are the keys that the mass of a panel comes from, beside its shape.
var weighed = []string{
	"room.above", "grid.around", "grid.reveal", "rib", "rail", "skin", "seam", "strap", "climate.shop", "springing.cut", "fitting",
}

// quiet are the keys that rules read without a word of theirs having followed
// them, with the reason.
var quiet = []struct {
	rules, keys []string
	why         string
}{
	{[]string{"accept.in-force"}, []string{"accept", "route", "room", "vault", "grid", "panels", "rib", "rail", "skin"}, "the review speaks for it, when the other rules have spoken"},
	{[]string{"strap.holds", "strap.slack"}, append([]string{"room", "vault", "grid", "panels.tolerance", "panels.form", "ledger", "lift", "climate"}, weighed...), "they say whether, not how much: few sizes make a rib swing, or a strap go slack"},
	{[]string{"raise.secure"}, weighed, "it says whether, not how much, by whichever strap is lost first"},
	{[]string{"raise.mast"}, []string{"survey", "springing.cut", "skin", "rib.depth", "rib.construction"}, "bases stand clear of the walls of every measured room, where these move the panels"},
	{[]string{"raise.mast"}, []string{"climate", "rib"}, "the panels of every ceiling whose lifts have a base are hung as the shop made them"},
	{[]string{"rib.stress", "rib.radial", "strap.load", "strap.balance", "strap.screws", "strap.section"}, []string{"room.width", "room.tolerance", "panels.tolerance", "panels.form", "ledger"}, "ledgers that bear relieve the straps, and another case is worse"},
	{[]string{"rib.stress", "rib.radial", "strap.holds", "strap.load", "strap.balance", "strap.screws", "strap.section"}, []string{"survey", "seam.gap", "close.first_gap"}, "seats that packed ledgers follow are one case more, and in no ceiling the worst that speaks"},
	{[]string{"close.probability", "install.tilt"}, []string{"room.width", "room.length"}, "beside what they follow, the tolerance of a room that states none goes by its longer side"},
	{[]string{"strap.section"}, []string{"room.framing.movement"}, "a season is worse than framing that moves"},
	{[]string{"transit"}, weighed, "of a split arch the heaviest piece travels, and the pieces are alike in shape"},
	{[]string{"transit.corridor", "transit.room"}, []string{"vault.profile", "vault.span", "room.length"}, "another size of the panel or of the room is the tighter"},
	{[]string{"joint.edge", "joint.mortise", "joint.registration"}, []string{"vault", "grid.ends"}, "how long a seam is counts where it is too short for two tenons"},
	{[]string{"strap.framing"}, []string{"room.width", "vault", "grid.ends", "rib.width", "seam.gap"}, "it counts the lines that miss the framing, which few sizes change"},
	{[]string{"strap.place", "strap.through"}, []string{"grid.ends", "panels.along"}, "whether a panel's edge rib is a half, which it is where straps are screwed"},
	{[]string{"strap.mortise"}, []string{"grid.reveal"}, "no reveal moves a mortise to a screw or from it"},
	{[]string{"bend.sheet-joint"}, []string{"panels.along", "panels.around"}, "the sheets of a panel are counted beside what it compares"},
	{[]string{"bend.skin-glue"}, []string{"rib.depth", "skin.setback"}, "they say whether the skin lies behind the ribs, and no ceiling's ribs are narrower than its rails there"},
	{[]string{"moisture.reveal-opens"}, []string{"rib.layer", "seam.gap"}, "no ceiling's reveal lies between layers and opens too far, or closes in its dry season by more than the gap"},
	{[]string{"survey"}, []string{"rib.depth", "skin"}, "the thickness widens no arch whose feet are plumb, as those in every measured room are"},
	{[]string{"install.pass", "install.tilt", "rib.feet"}, []string{"vault.length", "grid.along", "grid.ends", "panels.along", "panels.tolerance", "panels.form", "seam.gap"}, "of a measured room they take the width where the panels stand, and in no ceiling do these move them to where it differs"},
	{[]string{"shop.blank", "shop.clamp"}, []string{"grid.ends"}, "strips are counted beside what they compare"},
	{[]string{"shop.stock"}, []string{"vault", "grid", "springing.cut", "seam.gap", "rib.species", "rail.species", "climate.shop"}, "the rails are counted and weighed beside what it compares"},
	{[]string{"fitting.clear-of-members"}, []string{"seam.tenon.width"}, "it decides which tenons are named"},
}
