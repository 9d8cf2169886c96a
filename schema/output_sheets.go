package schema

// calcs is the calculation sheet.
func calcs() []field {
	unit := text("Unit", "SI unit of the value; 1 for a plain number.")
	input := record("Input", "One input of the formula.", []field{
		must("symbol", text("Symbol", "Symbol in the formula.")),
		may("key", text("Key", "Key of the figure or of the spec. Absent for a constant.")),
		must("value", maybe("Value", "Value, in SI.")),
		must("unit", unit),
	})
	figure := record("Figure", "A figure that is computed from the spec.", []field{
		must("key", text("Key", "Key of the figure, the same in all versions.")),
		must("symbol", text("Symbol", "Symbol in formulas.")),
		must("name", text("Name", "Name of the figure.")),
		must("subject", text("Subject", "Heading in the calculation sheet.")),
		must("value", maybe("Value", "Value, in SI; null if there is none, such as the radius of a flat ceiling.")),
		must("unit", unit),
		must("printed", text("Printed", "Value as printed, in the spec's units.")),
		may("formula", text("Formula", "Formula, in symbols.")),
		may("method", text("Method", "How the value is computed, in words.")),
		may("worked", text("Worked", "Formula with the numbers inserted, in the spec's units.")),
		must("inputs", listOf("Inputs", "Inputs of the formula.", input)),
		must("assumed", flag("Assumed", "Whether the figure depends on an assumed value.")),
		must("rules", listOf("Rules", "Rules that use the figure.", text("Rule", "Id of the rule."))),
	})
	return []field{pathField(), must("figures", listOf("Figures", "Figures, in the order of the calculation sheet.", figure)), must("tables", calcsTables()), may("model", calcsModel())}
}

func calcsTables() object {
	cell := record("Value", "One cell.", []field{
		must("value", maybe("Value", "Value, in SI; null if there is none.")),
		must("unit", text("Unit", "SI unit; 1 for a plain number, empty if there is no value.")),
	})
	row := record("Row", "One row.", []field{
		must("label", text("Label", "First cell of the row.")),
		must("values", listOf("Values", "Other cells of the row.", cell)),
	})
	return listOf("Tables", "Tables of the calculation sheet.", record("Table", "One table.", []field{
		must("key", text("Key", "Key of the table, the same in all versions.")),
		must("title", text("Title", "Title of the table.")),
		must("subject", text("Subject", "Heading in the calculation sheet.")),
		must("head", listOf("Head", "Headings of the columns.", text("Column", "Heading of one column."))),
		must("rows", listOf("Rows", "Rows, in their order.", row)),
		may("note", text("Note", "Note below the table.")),
	}))
}

// takeoff is the pieces, the stock, the hardware and the weights.
func takeoff() []field {
	return []field{
		pathField(),
		must("pieces", takeoffPieces()), must("lumber", takeoffLumber()), must("sheets", takeoffSheets()), must("hardware", takeoffHardware()),
		must("panel_mass", number("Panel mass", "Mass of the heaviest panel, in kg.")),
		must("panels", count("Panels", "Number of panels.")),
		must("mass", number("Mass", "Mass of all panels, in kg.")),
	}
}

func takeoffPieces() object {
	return listOf("Pieces", "Pieces that the shop makes.", record("Piece", "Pieces of one kind and size.", []field{
		must("mark", text("Mark", "Mark of these pieces on the panel sheet: K1.")),
		must("name", text("Name", "Kind of piece.")), must("material", text("Material", "Species or sheet material.")),
		must("count", count("Count", "Number in the whole ceiling.")),
		must("length", number("Length", "Finished length, in m; for a curved piece, along its intrados.")),
		must("width", number("Width", "Finished width, in m.")), must("depth", number("Depth", "Finished depth, in m.")),
		may("strips", number("Strips", "Number of strips in a laminated piece; a fraction if whole strips do not make up its depth.")),
		may("halves", count("Halves", "2 for a rib that is mitred at a pointed crown; each half has the stated number of strips.")),
		may("strip_thickness", number("Strip thickness", "Thickness of one strip, in m.")),
		must("mass", number("Mass", "Mass of all these pieces, in kg.")),
	}))
}

func takeoffLumber() object {
	return listOf("Lumber", "Lumber to buy.", record("Species", "The lumber of one species.", []field{
		must("species", text("Species", "Name of the species.")), must("volume", number("Volume", "Volume of the finished pieces, in m3.")),
		must("board_feet", number("Board feet", "Board feet to buy, with waste.")),
		must("waste", number("Waste", "Volume bought in excess of the finished volume, as a share of the finished volume; 0 if pieces are missing.")),
		may("missing", flag("Missing", "Whether some pieces can't be cut from any plank, or can't be made, and are not included.")),
	}))
}

func takeoffSheets() object {
	return listOf("Sheets", "Sheets to buy.", record("Sheet", "Stock sheets of one material.", []field{
		must("material", text("Material", "Name of the material.")), must("straight", number("Straight", "Length of the edge that is not bent, in m.")),
		must("bent", number("Bent", "Length of the edge that is bent, in m.")), must("thickness", number("Thickness", "Thickness of one layer, in m.")),
		may("count", count("Count", "Number of sheets to buy. Absent if it is not computed.")), must("pieces", count("Pieces", "Number of pieces in all skins.")),
		may("why", text("Why", "Why the count is not computed.")),
	}))
}

func takeoffHardware() object {
	return listOf("Hardware", "Hardware to buy.", record("Hardware", "Hardware of one kind and size.", []field{
		may("mark", text("Mark", "Mark on the panel sheet, for straps that are cut as drawn: K6.")),
		must("name", text("Name", "Kind of hardware.")), must("count", count("Count", "Number in the whole ceiling.")),
		may("length", number("Length", "Length of one strap, or total length of the moulding, in m.")),
		may("mass", number("Mass", "Mass of all of them, in kg. Absent if it is not computed.")),
		may("measured", flag("Measured", "Whether the straps are cut to the room as measured.")),
	}))
}

// inForce is the standards as they hold.
func inForce() []field {
	return []field{
		must("name", text("Name", "Name of the standards.")),
		must("files", listOf("Files", "Paths of the standards files, nearest first. Empty if only the built-in standards apply.", text("File", "Path of a standards file."))),
		must("in_force", listOf("In force", "Everything that specs are checked to.", record("Row", "One limit, severity, default, leg of the route, shop setting, group of the remedy order, required or excluded pattern, or fixed property.", []field{
			must("kind", word("Kind", "Kind of row. No file can change a fixed row.", "limit", "severity", "default", "route", "shop", "order", "require", "exclude", "fixed")),
			must("name", text("Name", "Name of the limit, id of the rule, or key of the spec.")),
			must("value", text("Value", "Value, as printed.")),
			may("si", number("Value in SI", "Value of a limit, in SI.")),
			may("unit", text("Unit", "SI unit; 1 for a plain number.")),
			must("source", text("Source", "Source of the value.")),
			may("file", text("File", "Standards file that sets the value. Absent if the value is built in.")),
			may("line", count("Line", "Line in that file.")),
			may("built_in", text("Built in", "Built-in value that it replaces.")),
			may("loosened", flag("Loosened", "Whether it is less strict than the built-in value.")),
		}))),
	}
}
