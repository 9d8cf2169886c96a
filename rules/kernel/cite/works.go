package cite

// The works that tables and rules cite, by subject. A comment on a formula names its
// work in words. A test finds a work that nothing cites.
var (
	// Wood.

	WoodHandbook2021 = Work{"Wood Handbook, FPL-GTR-282, USDA Forest Products Laboratory, 2021"}
	WoodHandbook2010 = Work{"Wood Handbook, FPL-GTR-190, USDA Forest Products Laboratory, 2010"}
	ASTMD245         = Work{"ASTM D245, Establishing structural grades for visually graded lumber"}
	NDS              = Work{"National Design Specification for Wood Construction"}
	APAConcreteForm  = Work{"APA, Concrete Forming Design/Construction Guide, V345"}
	FAA4313          = Work{"FAA AC 43.13-1B, 1998"}
	BendingHandbook  = Work{"Stevens and Turner, Wood Bending Handbook"}
	Eurocode5        = Work{"EN 1995-1-1, Eurocode 5"}
	RetailPlywood    = Work{"retail plywood weight charts (three pages agree)"}
	PlywoodSizes     = Work{"retail plywood size charts (two pages agree)"}
	PS1              = Work{"PS 1, Structural Plywood"}
	HardwoodSizes    = Work{"hardwood lumber dimension tables (two pages agree)"}
	AWICare          = Work{"AWI 200, Care and Storage"}
	AWS              = Work{"Architectural Woodwork Standards, 1st edition, 2009"}
	TSCATitleVI      = Work{"TSCA Title VI, Public Law 111-199, 40 CFR 770.10"}

	// Geometry and mechanics.

	CivilFormulas = Work{"Civil Engineering Formulas"}
	Wetzel2000    = Work{"Wetzel, Rectangles in Rectangles, Mathematics Magazine 73(3), 2000"}
	Moretti2002   = Work{"Moretti, Moving a Couch Around a Corner, College Mathematics Journal 33(3), 2002"}
	Scholz1995    = Work{"Scholz, Tolerance Stack Analysis Methods, 1995"}
	AISIS100      = Work{"AISI S100, Cold-formed steel structural members"}
	ASTMA653      = Work{"ASTM A653, Steel sheet, zinc-coated"}

	// Buildings, transport and handling.

	IBC          = Work{"International Building Code"}
	IRC          = Work{"International Residential Code"}
	HSEL23       = Work{"HSE L23, Manual Handling Operations Regulations, guidance"}
	ISO11228     = Work{"ISO 11228-1, Manual handling"}
	NIOSH94110   = Work{"Applications Manual for the Revised NIOSH Lifting Equation, 94-110"}
	NFPA13       = Work{"NFPA 13, Installation of sprinkler systems"}
	NEC          = Work{"National Electrical Code"}
	NavyBuilder  = Work{"US Navy, Builder, training manual, NAVEDTRA 14044"}
	AWCScrews    = Work{"AWC, answers on the NDS: penetration of nails and screws, 2006"}
	DowelThirds  = Work{"workshop note on the size of dowels"}
	DowelDepth   = Work{"workshop note on the depth of dowel holes"}
	BentStrips   = Work{"workshop thread on the springback of bent laminations"}
	LooseTenons  = Work{"workshop note on loose tenons narrower than their mortises"}
	TenonPreview = Work{"workshop note on tenon thickness"}
)
