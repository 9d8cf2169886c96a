package schema

// calcsModel is the frames of the straps, as a frame program takes them.
func calcsModel() object {
	units := record("Units", "Units of all figures of the model.", []field{
		must("length", text("Length", "Unit of coordinates, movements and the excess length of springs.")),
		must("force", text("Force", "Unit of forces. A stiffness is a force per length; E and G are forces per area.")),
		must("angle", text("Angle", "Unit of rotations.")),
	})
	return record("Model", "Frames from which the forces of straps are computed. x is to the right across the span, y is up, rotations are anticlockwise. Nodes, members and springs are numbered from 1 in the order of their lists. Movements are small and the material is linear. Absent if no case of the frame is solved.", []field{
		must("units", units),
		must("frames", listOf("Frames", "Frames: the whole arch, each piece of a split arch, and the arch with its feet held.", calcsFrame())),
	})
}

func calcsFrame() object {
	return record("Frame", "One frame and its load cases.", []field{
		must("key", text("Key", "Key of the frame, the same in all versions.")), must("name", text("Name", "Name of the frame.")),
		must("section", record("Section", "Section of all members.", []field{
			must("E", number("E", "Modulus of elasticity, without shear strain.")), must("G", number("G", "Shear modulus.")),
			must("A", number("A", "Area.")), must("I", number("I", "Second moment of area for bending in the plane of the frame.")),
			must("shear_area", number("Shear area", "Effective area in shear.")),
		})),
		must("nodes", listOf("Nodes", "Nodes of the centre line, from the left foot.", calcsPoint("Node", "Position of the node."))),
		must("members", listOf("Members", "Straight members between nodes.", record("Member", "One beam.", []field{
			must("from", count("From", "Number of the node at its start.")), must("to", count("To", "Number of the node at its end.")),
			must("hinge_from", flag("Hinge at from", "Whether the start is hinged to its node.")),
			must("hinge_to", flag("Hinge at to", "Whether the end is hinged to its node.")),
		}))),
		must("supports", listOf("Supports", "Rigid supports.", record("Support", "Support of a node in one direction.", []field{
			must("node", count("Node", "Number of the node that is held.")), must("holds", word("Holds", "Direction that is held.", "x", "y", "turn")),
		}))),
		must("springs", listOf("Springs", "Springs for straps, ledgers and lifts. Each case has some of them.", record("Spring", "Spring from a node to a fixed anchor.", []field{
			must("name", text("Name", "Strap, ledger or lift that the spring represents.")), must("node", count("Node", "Number of the node that it holds.")),
			must("toward", calcsPoint("Toward", "Unit vector from the node to the anchor.")),
			must("stiffness", number("Stiffness", "Stiffness, as force per length.")),
			must("works", word("Works", "Force that it can carry. Under the opposite force it is slack.", "tension", "compression", "both")),
		}))),
		must("self_weight", record("Self-weight", "Own weight, the load of every case.", []field{
			must("nodes", listOf("Nodes", "Loads on nodes: the rails, and the couples of loads that are off the centre line.", record("Force", "Load on one node.", append(loadOn("node"),
				must("couple", number("Couple", "Couple, anticlockwise.")))))),
			must("members", listOf("Members", "Loads along members: all other weight.", record("Load", "Load per length of the member.", loadOn("member")))),
		})),
		must("cases", listOf("Cases", "Load cases, in the order of the calculation sheet.", calcsCase())),
	})
}

func loadOn(what string) []field {
	return []field{must(what, count("On", "Number of the "+what+".")), must("x", number("x", "Load to the right.")), must("y", number("y", "Load upward."))}
}

func calcsPoint(title, description string) object {
	return record(title, description, []field{must("x", number("x", "Component across the span, to the right.")), must("y", number("y", "Component upward."))})
}

func calcsCase() object {
	return record("Case", "One load case: the springs in place and the computed forces and movements.", []field{
		must("key", text("Key", "Key of the case, as in the keys of figures.")), must("name", text("Name", "Name of the case.")),
		must("springs", listOf("Springs", "Springs in place.", record("Spring", "One spring in this case.", []field{
			must("spring", count("Spring", "Number of the spring.")),
			must("longer", number("Longer", "Its length without load less the distance that it spans; negative if it is shorter.")),
			must("force", number("Force", "Computed force; tension is positive.")),
			must("slack", flag("Slack", "Whether it is slack: its force would be opposite to the force that it can carry.")),
		}))),
		must("supports", listOf("Supports", "Computed force of each support on the frame.", number("Force", "Force in the direction that is held."))),
		must("moves", listOf("Moves", "Computed movement of each node.", record("Move", "Movement of one node.", []field{
			must("x", number("x", "Movement to the right.")), must("y", number("y", "Movement upward.")), must("turn", number("Turn", "Rotation, anticlockwise.")),
		}))),
	})
}
