package schema

// calcsModel is the frames of the straps, as a frame program takes them.
func calcsModel() object {
	units := record("Units", "Of all figures of the model.", []field{
		must("length", text("Length", "Of coordinates, movements and what a spring is longer by.")),
		must("force", text("Force", "Stiffnesses are forces by lengths, E and G forces by areas.")),
		must("angle", text("Angle", "Of turns.")),
	})
	return record("Model", "The frames that the forces of straps come from: x to the right across the span, y up, turns anticlockwise. Nodes, members and springs are numbered from 1 in their order. Small movements, linear material. Absent where no case of the frame is solved.", []field{
		must("units", units),
		must("frames", listOf("Frames", "The whole arch, the pieces of a split one, the arch with its feet held.", calcsFrame())),
	})
}

func calcsFrame() object {
	return record("Frame", "One frame with its cases.", []field{
		must("key", text("Key", "Stable from version to version.")), must("name", text("Name", "In words.")),
		must("section", record("Section", "Of every member.", []field{
			must("E", number("E", "Modulus of elasticity, free of shear.")), must("G", number("G", "Shear modulus.")),
			must("A", number("A", "Area.")), must("I", number("I", "Second moment of area, in the plane.")),
			must("shear_area", number("Shear area", "The part of the area that counts in shear strain.")),
		})),
		must("nodes", listOf("Nodes", "Of the centre line, from the left foot.", calcsPoint("Node", "Where it is."))),
		must("members", listOf("Members", "Straight, from node to node.", record("Member", "A beam.", []field{
			must("from", count("From", "A node.")), must("to", count("To", "A node.")),
			must("hinge_from", flag("Hinge at from", "Whether that end turns apart from its node.")),
			must("hinge_to", flag("Hinge at to", "Whether that end turns apart from its node.")),
		}))),
		must("supports", listOf("Supports", "Rigid.", record("Support", "One direction of a node.", []field{
			must("node", count("Node", "That is held.")), must("holds", word("Holds", "The direction.", "x", "y", "turn")),
		}))),
		must("springs", listOf("Springs", "Straps, ledgers, lifts; a case has some of them.", record("Spring", "From a node to an anchor that stays.", []field{
			must("name", text("Name", "What it stands for.")), must("node", count("Node", "That it holds.")),
			must("toward", calcsPoint("Toward", "From the node to the anchor, of length 1.")),
			must("stiffness", number("Stiffness", "Force by length.")),
			must("works", word("Works", "In which sense alone; otherwise it is slack.", "tension", "compression", "both")),
		}))),
		must("self_weight", record("Self-weight", "The load of every case.", []field{
			must("nodes", listOf("Nodes", "On nodes: the rails, and couples of what lies beside the centre line.", record("Force", "On a node.", append(loadOn("node"),
				must("couple", number("Couple", "Anticlockwise.")))))),
			must("members", listOf("Members", "Loads along members: all else.", record("Load", "By the member's own length.", loadOn("member")))),
		})),
		must("cases", listOf("Cases", "In the order of the sheet.", calcsCase())),
	})
}

func loadOn(what string) []field {
	return []field{must(what, count("On", "Its number.")), must("x", number("x", "To the right.")), must("y", number("y", "Upward."))}
}

func calcsPoint(title, description string) object {
	return record(title, description, []field{must("x", number("x", "Across, to the right.")), must("y", number("y", "Upward."))})
}

func calcsCase() object {
	return record("Case", "What is in place, and what was found.", []field{
		must("key", text("Key", "As in the keys of figures.")), must("name", text("Name", "In words.")),
		must("springs", listOf("Springs", "Those in place.", record("Spring", "In this case.", []field{
			must("spring", count("Spring", "Its number.")),
			must("longer", number("Longer", "Than what it spans, before any load; shorter where negative.")),
			must("force", number("Force", "Found; tension positive.")),
			must("slack", flag("Slack", "Whether it was found without force because of the sense that it works in.")),
		}))),
		must("supports", listOf("Supports", "The force of each on the frame, found.", number("Force", "Along what it holds."))),
		must("moves", listOf("Moves", "Of each node, found.", record("Move", "Of a node.", []field{
			must("x", number("x", "To the right.")), must("y", number("y", "Upward.")), must("turn", number("Turn", "Anticlockwise.")),
		}))),
	})
}
