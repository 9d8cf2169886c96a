package schema

// raise is the raising plan.
func raise() []field {
	force := func(title, description string) object {
		return listOf(title, description, number("Force", "Force of one edge rib, in N."))
	}
	state := func() []field {
		return []field{
			must("holds", flag("Holds", "Whether the panel is held within the known limits at its greatest weight.")),
			may("why", text("Why", "Why it is not held within the limits.")),
			must("lifts", force("Lifts", "Upward force of each lift, from the left; 0 for a lift that is lowered or lost. Empty if the panel falls.")),
			must("straps", force("Straps", "Tension of each strap, from the left; 0 for a strap that is slack, lost or not yet fixed. Empty if the panel falls.")),
		}
	}
	loss := record("Loss", "Static state after the loss of one support.", append([]field{must("what", text("What", "Support that is lost: \"strap 2\", \"lift 1\"."))}, state()...))
	step := record("Step", "One step of raising. Twice the sum of its forces is the panel's weight.", append([]field{
		must("name", text("Name", "What is done or reached in the step.")),
		must("release", text("Release", "NOT RELEASED if the spec names no engineer of record, else empty. Empty does not mean released.")),
		must("lost", listOf("Lost", "The states after the loss of each support of the step, one at a time.", loss)),
	}, state()...))
	whole := func(title, description string) object {
		return property(title, description, object{"type": []string{"integer", "null"}, "minimum": 1})
	}
	pick := record("Pick", "One panel, or one piece of a split arch.", []field{
		must("panel", count("Panel", "Number of the panel on the plan. Panels are raised in this order.")),
		must("order", listOf("Order", "Order in which its straps are fixed.", count("Strap", "Number of the strap, from 1 at the left foot of the arch."))),
		must("by_balance", flag("By balance", "Whether no pair of straps holds it within the limits, so that the first two are chosen by balance alone.")),
		must("balanced_after", whole("Balanced after", "Number of fixed straps after which it balances without lifts; null if it never does.")),
		must("secure_after", whole("Secure after", "Number of fixed straps after which, without lifts, any one strap may be lost and the others hold within the limits; null if never.")),
		must("pull", maybe("Pull", "Downward force at an end of its underside that tips it on the first two straps alone, in N; null if none does.")),
		must("steps", listOf("Steps", "Steps, in their order. Each lift is lowered alone, in a step of its own; then all lifts are lowered.", step)),
	})
	figure := record("Figure", "Figure of the turning of the panel or of its mass centre.", []field{
		must("key", text("Key", "Key of the figure, the same in all versions.")), must("name", text("Name", "Name of the figure.")),
		must("value", number("Value", "Value, in SI.")), must("unit", text("Unit", "SI unit of the value.")),
		may("formula", text("Formula", "Formula, in symbols.")), may("method", text("Method", "How the value is computed, in words.")),
	})
	referred := record("Referred", "One matter that is referred to others for decision.", []field{must("rule", text("Rule", "Id of the rule.")), must("text", text("Text", "What is referred, and to whom."))})
	return []field{
		pathField(), onField(),
		must("safety", listOf("Safety", "Safety notices, which come first.", text("Sentence", "One notice, in the order of the plan."))),
		must("title", text("Title", "Title of the ceiling.")), must("sheet", text("Sheet", "Number of the drawing sheet.")), must("revision", text("Revision", "Revision of the drawing sheet.")),
		must("verdict", word("Verdict", "Verdict on the spec.", verdicts[:2]...)),
		must("engineer", text("Engineer", "Engineer of record; empty if the spec names none.")),
		must("mass", number("Mass", "Mass of the heaviest panel, in kg. All forces are for this mass.")),
		must("mass_most", number("Most mass", "Greatest mass that it may have, in kg. The limits are judged at this mass.")),
		must("referred", listOf("Referred", "Matters that are referred to others for decision.", referred)),
		must("not_judged", listOf("Not judged", "What the plan does not judge.", text("Sentence", "One matter, and why it is not judged."))),
		must("figures", listOf("Figures", "Figures, with their formulas.", figure)),
		must("frames", listOf("Frames", "Moments in the raising of one panel, as drawn on the raising sheet. It is the second panel of the row, if there are two or more. Forces are of both edge ribs together.", raiseFrame())),
		must("picks", listOf("Picks", "Panels, in the order in which they are raised.", pick)),
	}
}

// raiseFrame is one moment of raising a panel, or a piece of a split arch.
func raiseFrame() object {
	length := func(key, title, description string) field { return must(key, number(title, description+" In m.")) }
	force := func(title string) object {
		return record(title, "A force and what carries or causes it.", []field{must("what", text("What", "What carries or causes the force.")), must("force", number("Force", "Force, in N."))})
	}
	stage := record("Stage", "One step within a frame.", []field{must("name", text("Name", "What is done.")), must("carried", listOf("Carried", "What carries the weight after the step.", force("Share")))})
	fork := record("Fork", "Position of the forks of a lift.", []field{length("across", "Across", "Distance across from the left springing."), length("height", "Height", "Height above the floor."), length("to_centre", "To centre", "Distance across to the mass centre.")})
	person := record("Person", "Position of one person in plan.", []field{length("across", "Across", "Distance across from the left springing."), length("along", "Along", "Distance along from the near end wall.")})
	base := property("Base", "Distances from the heel of the lift's base, in m; null without lift.base.", object{
		"type": []string{"object", "null"}, "additionalProperties": false, "required": []string{"before", "after", "end"},
		"properties": object{"before": number("Before", "Mass centre before the panel slides, in m."), "after": number("After", "Mass centre after the panel slides, in m."), "end": number("End", "End of the base, in m.")},
	})
	return record("Frame", "One moment in the raising of a panel.", []field{
		must("panel", count("Panel", "Number of the panel on the plan.")),
		must("piece", property("Piece", "Number of the piece of a split arch, from 1; null for a whole arch.", object{"type": []string{"integer", "null"}, "minimum": 1})),
		must("name", text("Name", "What happens in the frame.")),
		must("release", text("Release", "NOT RELEASED if the spec names no engineer of record, else empty. Empty does not mean released.")),
		must("weight", number("Weight", "Weight that is raised, in N.")), must("with", text("With", "Whether the weight includes the straps, in words.")),
		must("carried", listOf("Carried", "What carries the weight. The sum of these forces is the weight.", force("Share"))),
		must("after", listOf("After", "Steps of a frame that has more than one.", stage)),
		must("also", listOf("Also", "Forces that carry none of the weight.", force("Force"))),
		must("centre", record("Centre", "Mass centre of the panel.", []field{
			length("across", "Across", "Distance across from the left springing."), length("along", "Along", "Distance along from the near end wall."),
			length("up", "Up", "Height above the floor."), length("from_end", "From end", "Distance along from the end of the panel."),
		})),
		must("forks", listOf("Forks", "Forks, from the left. Empty before the panel is on them.", fork)), must("base", base),
		must("hands", listOf("Hands", "Number of people for each task.", record("Hands", "People for one task.", []field{must("for", text("For", "The task.")), must("takes", count("Takes", "Number of people."))}))),
		must("crew", count("Crew", "Number of people in the spec's crew.")),
		must("people", record("People", "People shown in the frame.", []field{
			must("are", text("Are", "Where they are.")), length("away", "Away", "Distance from the panel."), must("at", listOf("At", "Their positions, numbered from the left.", person)),
		})),
		length("clear", "Clear", "Distance to keep clear around the panel's plan, equal to the height of its top above the floor."),
		must("gap", record("Gap", "The least gap.", []field{must("what", text("What", "What the gap is between.")), length("size", "Size", "Size of the gap; negative if the space is too small.")})),
		must("unknown", listOf("Unknown", "What is not computed, checked or drawn in the frame.", text("Sentence", "One matter, and why."))),
		must("until", text("Until", "Condition that must be met before the next frame.")),
	})
}
