package timber

import "dryfit/rules/kernel/cite"

// psi is a pound-force by square inch, in Pa.
const psi = 4.4482216152605 / (0.0254 * 0.0254)

var (
	// The strengths were read in a published copy of the table.
	strengthTable = cite.WoodHandbook2021.At("table 5-3b")
	changeTable   = cite.WoodHandbook2010.At("table 13-5")
	shrinkTable   = cite.WoodHandbook2010.At("table 4-3")
	elasticTable  = cite.WoodHandbook2010.At("table 5-1").FromMemory()
	noRatio       = cite.WoodHandbook2010.At("ch. 5: about a sixteenth, where no ratio is listed").FromMemory()
)

// properties gives the strength columns as the handbook prints them: modulus
// in 10⁶ psi, stresses in psi.
func (s Species) properties(green, sg12, moe, mor, along, across, shear float64) Species {
	s.GreenSG, s.SG12, s.Strength = green, sg12, strengthTable
	s.MOE, s.MOR = moe*1e6*psi, mor*psi
	s.CompressionAlong, s.Compression, s.Shear = along*psi, across*psi, shear*psi
	if s.ShearRatio == 0 {
		s.ShearRatio, s.ShearFrom = 1.0/16, noRatio
	}
	return s
}

// movement gives the change coefficients by one percent, as the handbook
// prints them.
func (s Species) movement(radial, tangential float64, from cite.Source) Species {
	s.RadialChange, s.TangentialChange, s.Change = 100*radial, 100*tangential, from
	return s
}

// shrinkage is from green to ovendry, in percent.
func (s Species) shrinkage(radial, tangential float64, from cite.Source) Species {
	s.RadialShrinkage, s.TangentialShrinkage, s.Shrinkage = radial/100, tangential/100, from
	return s
}

// flame gives the flame spread index as the handbook prints it.
func (s Species) flame(index, class string, from cite.Source) Species {
	s.FlameSpread, s.FlameClass, s.FlameFrom = index, class, from
	return s
}

// bends gives the least radius of 1 in stock in inches, held by a strap with
// stops and not, as the bending handbook is recalled.
func (s Species) bends(strap, free float64) Species {
	s.Bends = Bends{Strap: strap, Free: free, From: cite.BendingHandbook.At("limiting radii, 1in, steamed").FromMemory()}
	return s
}

var flameTable = cite.WoodHandbook2010.At("table 18-1")

func wood(g Group, ratio float64, name string, aliases ...string) Species {
	s := Species{Name: name, Aliases: aliases, Group: g, ShearRatio: ratio}
	if ratio != 0 {
		s.ShearFrom = elasticTable
	}
	return s
}

// Shear ratios are the lesser of G_LR/E_L and G_LT/E_L.
var species = []Species{
	wood(Hardwood, 0.086, "white oak", "oak, white", "oak").
		properties(0.60, 0.68, 1.78, 15200, 7440, 1070, 2000).
		bends(2.5, 13).
		movement(0.00180, 0.00365, changeTable).shrinkage(5.6, 10.5, shrinkTable).flame("100", "class C", flameTable.FromMemory()),
	wood(Hardwood, 0.081, "red oak", "northern red oak", "oak, red").
		properties(0.56, 0.63, 1.82, 14300, 6760, 1010, 1780).
		bends(2.5, 13).
		movement(0.00158, 0.00369, changeTable).shrinkage(4.0, 8.6, shrinkTable.FromMemory()).flame("100", "class C", flameTable),
	wood(Hardwood, 0.062, "black walnut", "walnut", "walnut, black").
		properties(0.51, 0.55, 1.68, 14600, 7580, 1010, 1370).
		movement(0.00190, 0.00274, changeTable).shrinkage(5.5, 7.8, shrinkTable),
	wood(Hardwood, 0.069, "yellow-poplar", "yellow poplar", "poplar, yellow", "tulipwood").
		properties(0.40, 0.42, 1.58, 10100, 5540, 500, 1190).
		movement(0.00158, 0.00289, changeTable.FromMemory()).shrinkage(4.6, 8.2, shrinkTable).flame("170 to 185", "class C", flameTable.FromMemory()),
	wood(Hardwood, 0.063, "sugar maple", "hard maple", "maple, sugar").
		properties(0.56, 0.63, 1.83, 15800, 7830, 1470, 2330).
		movement(0.00165, 0.00353, changeTable).shrinkage(4.8, 9.9, shrinkTable.FromMemory()),
	wood(Hardwood, 0.097, "black cherry", "cherry", "cherry, black").
		properties(0.47, 0.50, 1.49, 12300, 7110, 690, 1700).
		movement(0.00126, 0.00248, changeTable).shrinkage(3.7, 7.1, shrinkTable),
	wood(Hardwood, 0.077, "white ash", "ash", "ash, white").
		properties(0.55, 0.60, 1.74, 15400, 7410, 1160, 1910).
		bends(4.5, 13).
		movement(0.00169, 0.00274, changeTable.FromMemory()).shrinkage(4.9, 7.8, shrinkTable.FromMemory()),
	wood(Hardwood, 0, "American beech", "beech", "beech, American").
		properties(0.56, 0.64, 1.72, 14900, 7300, 1010, 2010).
		bends(2.5, 13).
		movement(0.00190, 0.00431, changeTable.FromMemory()).shrinkage(5.5, 11.9, shrinkTable.FromMemory()),
	wood(Hardwood, 0, "red alder", "alder", "alder, red").
		properties(0.37, 0.41, 1.38, 9800, 5820, 440, 1080).
		movement(0.00151, 0.00256, changeTable.FromMemory()).shrinkage(4.4, 7.3, shrinkTable.FromMemory()),
	wood(Hardwood, 0.046, "American basswood", "basswood", "basswood, American").
		properties(0.32, 0.37, 1.46, 8700, 4730, 370, 990).
		movement(0.00230, 0.00330, changeTable.FromMemory()).shrinkage(6.6, 9.3, shrinkTable.FromMemory()),
	wood(Softwood, 0.064, "Douglas-fir", "Douglas-fir, coast", "coast Douglas-fir", "Douglas fir").
		properties(0.45, 0.48, 1.95, 12400, 7230, 800, 1130).
		movement(0.00165, 0.00267, changeTable.FromMemory()).shrinkage(4.8, 7.6, shrinkTable).flame("70 to 100", "class B or C", flameTable),
	wood(Softwood, 0.086, "western redcedar", "western red cedar", "redcedar, western").
		properties(0.31, 0.32, 1.11, 7500, 4560, 460, 990).
		movement(0.00111, 0.00234, changeTable.FromMemory()).shrinkage(2.4, 5.0, shrinkTable).flame("70", "class B", flameTable.FromMemory()),
	wood(Softwood, 0, "eastern white pine", "white pine", "pine, eastern white").
		properties(0.34, 0.35, 1.24, 8600, 4800, 440, 900).
		movement(0.00071, 0.00212, changeTable).shrinkage(2.1, 6.1, shrinkTable.FromMemory()).flame("85", "class C", flameTable.FromMemory()),
	wood(Softwood, 0.115, "ponderosa pine", "pine, ponderosa").
		properties(0.38, 0.40, 1.29, 9400, 5320, 580, 1130).
		movement(0.00133, 0.00216, changeTable.FromMemory()).shrinkage(3.9, 6.2, shrinkTable.FromMemory()),
	wood(Softwood, 0.061, "Sitka spruce", "spruce, Sitka").
		properties(0.37, 0.40, 1.57, 10200, 5610, 580, 1150).
		movement(0.00148, 0.00263, changeTable.FromMemory()).shrinkage(4.3, 7.5, shrinkTable.FromMemory()),
	// "Spruce" alone, of framing, is the lightest of those usually framed with.
	wood(Softwood, 0, "white spruce", "spruce", "spruce, white").
		properties(0.33, 0.36, 1.43, 9400, 5180, 430, 970).
		shrinkage(4.7, 8.2, shrinkTable.FromMemory()),
}
