package schema

// calcs is the calculation sheet.
func calcs() []field {
	unit := text("Unit", "Of the value, in SI; 1 for a plain number.")
	input := record("Input", "A figure that the formula takes.", []field{
		must("symbol", text("Symbol", "As the formula has it.")),
		may("key", text("Key", "Of the figure or in the spec; absent for a constant.")),
		must("value", maybe("Value", "In SI.")),
		must("unit", unit),
	})
	figure := record("Figure", "A figure that follows from the spec.", []field{
		must("key", text("Key", "Stable from version to version.")),
		must("symbol", text("Symbol", "As formulas have it.")),
		must("name", text("Name", "In words.")),
		must("subject", text("Subject", "The heading that it stands under.")),
		must("value", maybe("Value", "In SI; null where there is none, as the radius of a flat ceiling.")),
		must("unit", unit),
		must("printed", text("Printed", "In the spec's units.")),
		may("formula", text("Formula", "In symbols.")),
		may("method", text("Method", "Where no formula says it.")),
		may("worked", text("Worked", "The formula with the numbers put in, in the spec's units.")),
		must("inputs", listOf("Inputs", "What the formula takes.", input)),
		must("assumed", flag("Assumed", "Whether it hangs on a figure that the spec does not state.")),
		must("rules", listOf("Rules", "That read it.", text("Rule", "Its id."))),
	})
	return []field{pathField(), must("figures", listOf("Figures", "In the order of the sheet.", figure)), must("tables", calcsTables()), may("model", calcsModel())}
}

func calcsTables() object {
	cell := record("Value", "One figure.", []field{
		must("value", maybe("Value", "In SI; null where there is none.")),
		must("unit", text("Unit", "In SI; 1 for a plain number, empty where there is no figure.")),
	})
	row := record("Row", "One line.", []field{
		must("label", text("Label", "Its first cell.")),
		must("values", listOf("Values", "The other cells.", cell)),
	})
	return listOf("Tables", "That end a subject.", record("Table", "Figures side by side.", []field{
		must("key", text("Key", "Stable from version to version.")),
		must("title", text("Title", "Over the table.")),
		must("subject", text("Subject", "The heading that it stands under.")),
		must("head", listOf("Head", "Of the columns.", text("Column", "Its head."))),
		must("rows", listOf("Rows", "In their order.", row)),
		may("note", text("Note", "Under the table.")),
	}))
}

// takeoff is the pieces, the stock, the hardware and the weights.
func takeoff() []field {
	return []field{
		pathField(),
		must("pieces", takeoffPieces()), must("lumber", takeoffLumber()), must("sheets", takeoffSheets()), must("hardware", takeoffHardware()),
		must("panel_mass", number("Panel mass", "Of the heaviest panel, kg.")),
		must("panels", count("Panels", "How many there are.")),
		must("mass", number("Mass", "Of all panels, kg.")),
	}
}

func takeoffPieces() object {
	return listOf("Pieces", "What the shop makes.", record("Piece", "Pieces of one kind and size.", []field{
		must("mark", text("Mark", "Of the kind, as the sheet of the panel has it: K1.")),
		must("name", text("Name", "Of its kind.")), must("material", text("Material", "Its species or sheet.")),
		must("count", count("Count", "In the whole ceiling.")),
		must("length", number("Length", "Finished; of a curved piece along its intrados, m.")),
		must("width", number("Width", "Finished, m.")), must("depth", number("Depth", "Finished, m.")),
		may("strips", number("Strips", "In each, of a laminated piece; not whole where they do not make up its depth.")),
		may("halves", count("Halves", "2 of a rib that is mitred at a pointed crown, each half of so many strips.")),
		may("strip_thickness", number("Strip thickness", "Of each strip, m.")),
		must("mass", number("Mass", "Of all of them, kg.")),
	}))
}

func takeoffLumber() object {
	return listOf("Lumber", "To buy.", record("Species", "The lumber of one species.", []field{
		must("species", text("Species", "Its name.")), must("volume", number("Volume", "Of the finished pieces, m3.")),
		must("board_feet", number("Board feet", "To buy, waste included.")),
		must("waste", number("Waste", "What is bought over the finished volume, as a share of it; 0 where some is missing.")),
		may("missing", flag("Missing", "Whether some pieces come out of no plank, or can not be made, and are not in it.")),
	}))
}

func takeoffSheets() object {
	return listOf("Sheets", "To buy.", record("Sheet", "Stock sheets of one material.", []field{
		must("material", text("Material", "Its name.")), must("straight", number("Straight", "The edge that is not bent, m.")),
		must("bent", number("Bent", "The edge that is bent, m.")), must("thickness", number("Thickness", "Of one layer, m.")),
		may("count", count("Count", "To buy; absent where it is not computed.")), must("pieces", count("Pieces", "That all skins are cut into.")),
		may("why", text("Why", "The count is not computed.")),
	}))
}

func takeoffHardware() object {
	return listOf("Hardware", "To buy.", record("Hardware", "Of one kind and size.", []field{
		may("mark", text("Mark", "Of straps that are cut as drawn, as the sheet of the panel has it: K6.")),
		must("name", text("Name", "Of its kind.")), must("count", count("Count", "In the whole ceiling.")),
		may("length", number("Length", "Of one strap; of moulding, all of it, m.")),
		may("mass", number("Mass", "Of all of them, kg; absent where it is not worked out.")),
		may("measured", flag("Measured", "Whether it is cut to the room as measured.")),
	}))
}

// inForce is the standards as they hold.
func inForce() []field {
	return []field{
		must("name", text("Name", "Whose standards they are.")),
		must("files", listOf("Files", "Nearest first; none where only the built-in standards hold.", text("File", "A path."))),
		must("in_force", listOf("In force", "All that specs are checked to.", record("Row", "One limit, severity, default, leg of the route, figure of the shop or group of the order of remedies.", []field{
			must("kind", word("Kind", "What it is; what is fixed no file changes.", "limit", "severity", "default", "route", "shop", "order", "require", "exclude", "fixed")),
			must("name", text("Name", "Of the limit or the rule, or the key of the spec.")),
			must("value", text("Value", "As printed.")),
			may("si", number("Value in SI", "Of a limit.")),
			may("unit", text("Unit", "In SI; 1 for a plain number.")),
			must("source", text("Source", "Where the figure comes from.")),
			may("file", text("File", "That sets it; absent where it is built in.")),
			may("line", count("Line", "In that file.")),
			may("built_in", text("Built in", "What it stands in place of.")),
			may("loosened", flag("Loosened", "Whether it asks less than what is built in.")),
		}))),
	}
}
