package schema

// remedy is the answers of a search.
func remedies() []field {
	rules := func(title, description string) object {
		return listOf(title, description, text("Rule", "Its id."))
	}
	answer := append([]field{
		must("changes", listOf("Changes", "To be made together.", record("Change", "Of one key.", change()))),
		must("size", number("Size", "Of the changes; smaller is better.")),
		must("verdict", word("Verdict", "Of the spec with the changes.", verdicts...)),
		must("counts", counts()),
		must("comments", listOf("Comments", "Of the file, that stand beside a changed value or state the old one.", record("Comment", "That nothing changes.", []field{
			must("line", count("Line", "Where it is, in the changed file.")), must("text", text("Text", "With its mark.")), must("key", text("Key", "That was changed.")),
		}))),
	}, effect()...)
	cure := append(append(change(), must("size", number("Size", "Of the changes; smaller is better.")),
		may("also", listOf("Also", "Changes that it takes besides.", record("Change", "Of one key.", change())))), effect()...)
	cured := record("Finding and cures", "What clears one finding.", []field{
		must("finding", finding()),
		must("cures", listOf("Cures", "The nearest value of each key that does.", record("Cure", "A change and its effect.", cure))),
	})
	return []field{
		must("version", text("Version", "Of the program.")), onField(), pathField(),
		must("verdict", word("Verdict", "Of the spec as it stands.", verdicts...)),
		must("strict", flag("Strict", "Whether queries were to be cleared too.")),
		must("reviews", count("Reviews", "That the search took.")),
		must("limit_reached", flag("Limit reached", "Whether it ended at its limit.")),
		must("interrupted", flag("Interrupted", "Whether it was stopped.")),
		must("whole", flag("Whole", "Whether the search left nothing out that it could reach.")),
		must("open", findings("Open", "What was to be cleared.")),
		must("answers", listOf("Answers", "What a shop would rather do first.", record("Answer", "Changes that leave nothing that fails the spec.", answer))),
		must("alone", rules("Alone", "That nothing that may change satisfies.")),
		must("against", rules("Against", "That can't all be satisfied, though without any one of them the others can.")),
		must("tied", listOf("Tied", "Keys that findings hang on and that may not change.", text("Key", "In the spec."))),
		must("needed", listOf("Needed", "Changes with which there would be an answer, of keys that may not change.", record("Change", "Of one key.", change()))),
		must("loosened", loosened()),
		may("each", listOf("Each", "With --each, the findings one by one.", cured)),
	}
}

func change() []field {
	return []field{
		must("key", text("Key", "To be changed.")),
		must("was", value("Was", "As the spec or a default has it; null where there is none.", "null")),
		must("assumed", flag("Assumed", "Whether what it was is a default.")),
		must("value", value("Value", "As a spec writes it.")),
	}
}

func effect() []field {
	named := func(title, description string) object {
		return listOf(title, description, record("Finding", "In short.", []field{
			must("rule", text("Rule", "Its id.")), must("severity", word("Severity", "Of the finding.", "hold", "query", "note", "refer")),
			must("key", text("Key", "Where it is found.")), must("message", text("Message", "One sentence without a full stop.")),
		}))
	}
	return []field{
		must("clears", named("Clears", "Findings that go.")),
		must("brings", named("Brings", "Findings that come.")),
		must("worse", named("Worse", "Holds and queries that lie further past their limits.")),
		must("stays_clear", listOf("Stays clear", "Rules that may hold, hang on what was changed, and find nothing as before.", text("Rule", "Its id."))),
		must("panel_mass_gained", number("Panel mass gained", "By each panel, kg.")),
		must("panels_more", property("Panels more", "Than before.", object{"type": "integer"})),
	}
}

// studyFigures are the figures of an option.
var studyFigures = [][2]string{
	{"ratio", "Module ratio"},
	{"long-side", "Module along by module around"},
	{"coffers", "Coffers"},
	{"module-around", "Module around"},
	{"module-along", "Module along"},
	{"length", "Panel length"},
	{"width", "Panel width"},
	{"height", "Panel height"},
	{"mass", "Panel mass"},
	{"strap", "Worst strap force"},
	{"share", "Worst strap's share of its allowable"},
	{"sag", "Sag as first hung"},
	{"sheets", "Skin sheets to buy"},
	{"joints", "Field joints"},
	{"margin", "Least margin on the way in"},
	{"gap", "Last gap as designed"},
	{"holds", "Holds"},
	{"queries", "Queries"},
}

func studyOption() object {
	var figures []field
	for _, f := range studyFigures {
		figures = append(figures, must(f[0], maybe(f[1], "In SI; null where the option has none.")))
	}
	all := record("Figures", "Of an option that can be made.", figures)
	all["additionalProperties"] = maybe("Figure", "Of the calculation sheet, by its key; null where the option has none.")
	values := property("Values", "Of the keys that are varied.", object{
		"type": "object", "additionalProperties": value("Value", "As a spec writes it."), "minProperties": 1,
	})
	return record("Option", "The ceiling with one combination of values.", []field{
		must("option", count("Option", "Its number, from 1.")), must("values", values),
		may("figures", all),
		must("verdict", word("Verdict", "The outcome.", append([]string{"CAN'T BE MADE"}, verdicts...)...)),
		may("counts", counts()),
		may("held_by", listOf("Held by", "Rules that hold it.", text("Rule", "Its id."))),
		may("queried_by", listOf("Queried by", "Rules that query it and do not hold it.", text("Rule", "Its id."))),
		may("key", text("Key", "Of what can't be made.")), may("reason", text("Reason", "Why it can't be made.")),
		may("unbeaten", flag("Unbeaten", "Whether no other is as near to all aims and nearer to one.")),
		may("loses", text("Loses", "What it loses against one that beats it.")),
	})
}

func studyHead() []field {
	dimension := record("Key", "And its values.", []field{
		must("key", text("Key", "In the spec.")),
		must("values", listOf("Values", "In their order.", value("Value", "As a spec writes it."))),
		must("text", text("Text", "KEY=VALUES, as it was given.")),
	})
	file := func(title, description string) object {
		return record(title, description, []field{must("path", text("Path", "As it was named.")), must("sha256", text("SHA-256", "Of its content."))})
	}
	column := record("Column", "A figure of each option.", []field{
		must("key", text("Key", "As --sort and --weigh name it.")), must("name", text("Name", "In words.")),
		must("unit", text("Unit", "In SI; 1 for a plain number.")),
		may("better", word("Better", "Which way; absent where neither is.", "lower", "higher")),
	})
	return []field{
		pathField(), onField(),
		must("strict", flag("Strict", "Whether a query fails an option.")), must("search", flag("Search", "Whether a way in is searched for as check does.")),
		must("spec", file("Spec", "That was varied.")), must("standards", listOf("Standards", "Their files, the nearest first.", file("File", "Of the standards."))),
		must("vary", listOf("Vary", "The keys that are varied; of several the last changes fastest.", dimension)),
		must("follows", listOf("Follows", "Changes that had to follow.", text("Change", "In words."))),
		must("columns", listOf("Columns", "The figures of each option.", column)),
		may("chosen", listOf("Chosen", "The figures that the table has, where they were chosen.", text("Figure", "Its key."))),
		must("weighed", listOf("Weighed", "Aims by which an option must be beaten, as they were written.", text("Aim", "A figure at its better end, or FIGURE=WISH."))),
	}
}

func studySpan() []field {
	return []field{
		must("total", count("Total", "Options of the whole study.")),
		may("part", text("Part", "K/N, where only a part was made.")),
		must("first", count("First", "Option of this part.")), must("last", count("Last", "Option of this part.")),
	}
}

func studyOutcome() []field {
	reason := record("Reason", "Why options can't be made.", []field{
		must("key", text("Key", "That stands in the way.")), must("count", count("Count", "Of the options.")),
		must("first", count("First", "Of these options.")), must("text", text("Text", "In words, of the first.")),
	})
	return append(studySpan(),
		must("done", count("Done", "Options made.")), may("interrupted", flag("Interrupted", "Whether it was stopped.")),
		must("passed", count("Passed", "Options with nothing but referred items.")), must("passed_with_notes", count("Passed with notes", "Options with notes, queries, or rules not checked.")),
		must("failed", count("Failed", "Options that fail.")), must("invalid", count("Invalid", "Options that can't be made.")),
		must("reasons", listOf("Reasons", "Why, by key.", reason)),
		must("unbeaten", listOf("Unbeaten", "Options that no other beats.", count("Option", "Its number."))),
		may("unbeaten_overfull", flag("Overfull", "Whether there are more than are kept.")),
		must("loosened", loosened()))
}

// publishedStudy has, beside the whole document, the three kinds of line of
// --format jsonl.
func publishedStudy() []byte {
	options := must("options", listOf("Options", "In the order asked for.", studyOption()))
	root := record("Study", "What dryfit study --format json writes, version 1; figures in SI. Each line of --format jsonl is $defs/line.",
		append(append(studyHead(), studyOutcome()...), options))
	line := func(key, title, description string, fields []field) object {
		return record(title, description, []field{must(key, record(title, description, fields))})
	}
	root["$defs"] = object{"line": object{
		"title": "Line", "description": "The study, one option, or the outcome.",
		"anyOf": []object{
			line("study", "Study", "The first line.", append(studyHead(), studySpan()...)),
			studyOption(),
			line("outcome", "Outcome", "The last line.", studyOutcome()),
		},
	}}
	return written("study", root)
}
