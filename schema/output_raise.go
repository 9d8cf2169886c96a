package schema

// raise is the raising plan.
func raise() []field {
	force := func(title, description string) object {
		return listOf(title, description, number("Force", "N, of one edge rib."))
	}
	state := func() []field {
		return []field{
			must("holds", flag("Holds", "Within the limits that are known, where the panel weighs the most it may.")),
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
		must("picks", listOf("Picks", "In the order in which they go up.", pick)),
	}
}
