package schema

// raise is the raising plan.
func raise() []field {
	force := func(title, description string) object {
		return listOf(title, description, number("Force", "N, of one edge rib."))
	}
	state := func() []field {
		return []field{
			must("holds", flag("Holds", "Within the known limits, with the panel at its greatest weight.")),
			may("why", text("Why", "It does not hold.")),
			must("lifts", force("Lifts", "What each carries, from the left, upward; 0 of one that is lowered or lost. None where the panel falls.")),
			must("straps", force("Straps", "What each carries, from the left, in tension; 0 of one that is slack, lost or not yet fixed. None where the panel falls.")),
		}
	}
	loss := record("Loss", "The state after one support is lost; static.", append([]field{must("what", text("What", "Is lost: \"strap 2\", \"lift 1\"."))}, state()...))
	step := record("Step", "One step of the order. Twice the sum of its forces is the panel's weight.", append([]field{
		must("name", text("Name", "What is done, or holds.")),
		must("release", text("Release", "NOT RELEASED while the spec names no engineer; empty where it does, which releases nothing.")),
		must("lost", listOf("Lost", "Each support that the step rests on, lost by itself.", loss)),
	}, state()...))
	whole := func(title, description string) object {
		return property(title, description, object{"type": []string{"integer", "null"}, "minimum": 1})
	}
	pick := record("Pick", "One panel, or piece of a split arch.", []field{
		must("panel", count("Panel", "Its number, as the plan has it, in the order in which they go up.")),
		must("order", listOf("Order", "In which its straps are fixed.", count("Strap", "Counted from the left foot of the arch, from 1."))),
		must("by_balance", flag("By balance", "Whether no pair of straps holds within the limits, and balance alone chose the first two.")),
		must("balanced_after", whole("Balanced after", "So many straps it balances without lifts; null if never.")),
		must("secure_after", whole("Secure after", "So many straps, the lifts gone, any one may be lost and the rest hold within the limits; null if never.")),
		must("pull", maybe("Pull", "Straight down at an end of its underside, that tips it on the first two straps alone, N; null where none does.")),
		must("steps", listOf("Steps", "In their order; lifts are lowered one alone, each as a step of its own, then all.", step)),
	})
	figure := record("Figure", "Of turning the panel, and of where its mass is.", []field{
		must("key", text("Key", "Stable from version to version.")), must("name", text("Name", "In words.")),
		must("value", number("Value", "In SI.")), must("unit", text("Unit", "In SI.")),
		may("formula", text("Formula", "In symbols.")), may("method", text("Method", "Where no formula says it.")),
	})
	referred := record("Referred", "What is another's to decide.", []field{must("rule", text("Rule", "Its id.")), must("text", text("Text", "What is referred, and to whom."))})
	return []field{
		pathField(), onField(),
		must("safety", listOf("Safety", "What comes before all else.", text("Sentence", "In the order of the plan."))),
		must("title", text("Title", "Of the project.")), must("sheet", text("Sheet", "Of the project.")), must("revision", text("Revision", "Of the project.")),
		must("verdict", word("Verdict", "Of the spec.", verdicts[:2]...)),
		must("engineer", text("Engineer", "Of record, as the spec names one; empty where it does not.")),
		must("mass", number("Mass", "Of the heaviest panel, for which all forces are, kg.")),
		must("mass_most", number("Most mass", "That it may have, for which the limits are judged, kg.")),
		must("referred", listOf("Referred", "All that is.", referred)),
		must("not_judged", listOf("Not judged", "What the plan does not answer for.", text("Sentence", "What, and why."))),
		must("figures", listOf("Figures", "With their formulas.", figure)),
		must("frames", listOf("Frames", "Moments of raising one panel of the row, the second where there are two, as the raising sheet draws them. Forces are of both edge ribs together.", raiseFrame())),
		must("picks", listOf("Picks", "In the order in which they go up.", pick)),
	}
}

// raiseFrame is one moment of raising a panel, or a piece of a split arch.
func raiseFrame() object {
	length := func(key, title, description string) field { return must(key, number(title, "m, "+description)) }
	force := func(title string) object {
		return record(title, "A force and what it is of.", []field{must("what", text("What", "It is of.")), must("force", number("Force", "N."))})
	}
	stage := record("Stage", "A step of the order within a frame.", []field{must("name", text("Name", "What is done.")), must("carried", listOf("Carried", "What carries the weight then.", force("Share")))})
	fork := record("Fork", "Where a lift's forks are.", []field{length("across", "Across", "from the left springing."), length("height", "Height", "above the floor."), length("to_centre", "To centre", "across, to the mass centre.")})
	person := record("Person", "A place in the plan.", []field{length("across", "Across", "from the left springing."), length("along", "Along", "from the near end wall.")})
	base := property("Base", "From its heel, m: the mass centre before and after the slide, and the end of the base; null without lift.base.", object{
		"type": []string{"object", "null"}, "additionalProperties": false, "required": []string{"before", "after", "end"},
		"properties": object{"before": number("Before", "m, the slide."), "after": number("After", "m, the slide."), "end": number("End", "m, of the base.")},
	})
	return record("Frame", "One moment.", []field{
		must("panel", count("Panel", "Its number, as the plan has it.")),
		must("piece", property("Piece", "Of a split arch, from 1; null of a whole one.", object{"type": []string{"integer", "null"}, "minimum": 1})),
		must("name", text("Name", "What is going on.")),
		must("release", text("Release", "NOT RELEASED while the spec names no engineer; empty where it does, which releases nothing.")),
		must("weight", number("Weight", "N, of what is raised.")), must("with", text("With", "Whether its straps are counted.")),
		must("carried", listOf("Carried", "What carries the weight: together it.", force("Share"))),
		must("after", listOf("After", "The steps of a frame that has several.", stage)),
		must("also", listOf("Also", "Forces that carry nothing of the weight.", force("Force"))),
		must("centre", record("Centre", "Of mass.", []field{
			length("across", "Across", "from the left springing."), length("along", "Along", "from the near end wall."),
			length("up", "Up", "above the floor."), length("from_end", "From end", "from the panel's own end."),
		})),
		must("forks", listOf("Forks", "From the left; none before the panel is on them.", fork)), must("base", base),
		must("hands", listOf("Hands", "How many people it takes.", record("Hands", "For one thing.", []field{must("for", text("For", "What.")), must("takes", count("Takes", "People."))}))),
		must("crew", count("Crew", "That the spec has.")),
		must("people", record("People", "Those who are named.", []field{
			must("are", text("Are", "Where they are.")), length("away", "Away", "from the panel."), must("at", listOf("At", "Numbered from the left.", person)),
		})),
		length("clear", "Clear", "around the panel's plan: the height of its top above the floor."),
		must("gap", record("Gap", "The least.", []field{must("what", text("What", "It is between.")), length("size", "Size", "less than 0 where it is short.")})),
		must("unknown", listOf("Unknown", "What the frame does not answer for.", text("Sentence", "What, and why."))),
		must("until", text("Until", "Nobody passes on before that.")),
	})
}
