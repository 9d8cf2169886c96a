package standards

import "dryfit/rules/kernel/cite"

// builtInDefaults is the last layer. What depends on other figures (the depth
// of the rails, the cut of the feet) is not here but in the layout, which
// marks it as assumed in the same way.
func builtInDefaults() []Default {
	practice := cite.CommonPractice().String()
	shop := cite.AWICare.At("zone 2, 30 to 55% relative humidity").String()
	air := func(temperature, humidity string) map[string]any {
		return map[string]any{"temperature": temperature, "humidity": humidity}
	}
	return []Default{
		{Key: "project.units", Value: "metric", Source: practice},

		{Key: "room.use", Value: "public", Source: "the stricter of the two uses"},
		{Key: "room.entry", Value: "end", Source: practice},
		{Key: "room.eye", Value: "1600mm", Source: practice},

		{Key: "grid.ends", Value: "half", Source: practice},

		{Key: "panels.around", Value: int64(1), Source: practice},
		{Key: "panels.tolerance", Value: "1.5mm", Source: practice},
		{Key: "panels.form", Value: "3mm", Source: practice},

		{Key: "rib.cut", Value: "mixed", Source: practice},
		{Key: "rib.construction", Value: "laminated", Source: practice},
		{Key: "rib.lamination", Value: "6mm", Source: practice, Where: "rib.construction", Is: "laminated"},
		{Key: "rib.bending", Value: "steam", Source: practice, Where: "rib.construction", Is: "solid"},
		{Key: "rail.cut", Value: "mixed", Source: practice},

		{Key: "skin.thickness", Value: "9mm", Source: practice},
		{Key: "skin.layers", Value: int64(1), Source: practice},
		{Key: "skin.straight", Value: "along", Source: practice},
		{Key: "skin.sheet", Value: map[string]any{"straight": "1220mm", "bent": "2440mm"}, Source: practice},

		{Key: "seam.tenon", Value: map[string]any{"thickness": "10mm", "width": "24mm", "length": "50mm"}, Source: practice},
		{Key: "seam.spacing", Value: "300mm", Source: practice},
		{Key: "seam.edge", Value: "75mm", Source: practice},
		{Key: "seam.mortise", Value: "one snug, rest wide", Source: practice},
		{Key: "seam.gap", Value: "0.5mm", Source: practice},
		{Key: "seam.tolerance", Value: "0.5mm", Source: practice},

		{Key: "strap.material", Value: "steel", Source: practice, Within: "strap"},
		{Key: "strap.setting", Value: "2mm", Source: practice, Within: "strap"},

		{Key: "close.last", Value: "slide", Source: practice},

		{Key: "climate.shop", Value: air("20C", "42%"), Source: shop},
		{Key: "climate.dry", Value: air("20C", "30%"), Source: shop},
		{Key: "climate.wet", Value: air("24C", "55%"), Source: shop},

		{Key: "finish.sides", Value: "seen", Source: practice},
		{Key: "lift.saddle", Value: false, Source: practice, Within: "lift"},
		{Key: "crew.people", Value: int64(2), Source: practice},
		{Key: "crew.aids", Value: "none", Source: practice},
		{Key: "wrap.allowance", Value: "25mm", Source: practice},
	}
}
