package schema

// remedy is the answers of a search.
func remedies() []field {
	rules := func(title, description string) object {
		return listOf(title, description, text("Rule", "Id of the rule."))
	}
	answer := append([]field{
		must("changes", listOf("Changes", "Changes to make together.", record("Change", "Change of one key.", change()))),
		must("size", number("Size", "Size of the changes, for comparison; smaller is better.")),
		must("verdict", word("Verdict", "Verdict on the spec with the changes.", verdicts...)),
		must("counts", counts()),
		must("comments", listOf("Comments", "Comments in the file that are next to a changed value or state the old value.", record("Comment", "One comment. It is not changed.", []field{
			must("line", count("Line", "Line of the comment in the changed file.")), must("text", text("Text", "Text of the comment, with its #.")), must("key", text("Key", "Key that was changed.")),
		}))),
	}, effect()...)
	cure := append(append(change(), must("size", number("Size", "Size of the changes, for comparison; smaller is better.")),
		may("also", listOf("Also", "Further changes that are needed with it.", record("Change", "Change of one key.", change())))), effect()...)
	cured := record("Finding and cures", "One finding and the changes that clear it.", []field{
		must("finding", finding()),
		must("cures", listOf("Cures", "For each key, the nearest value that clears the finding.", record("Cure", "One change and its effect.", cure))),
	})
	return []field{
		must("version", text("Version", "Version of dryfit.")), onField(), pathField(),
		must("verdict", word("Verdict", "Verdict on the spec without changes.", verdicts...)),
		must("strict", flag("Strict", "Whether queries must be cleared too.")),
		must("reviews", count("Reviews", "Number of reviews in the search.")),
		must("limit_reached", flag("Limit reached", "Whether the search ended at its limit.")),
		must("interrupted", flag("Interrupted", "Whether the search was stopped.")),
		must("whole", flag("Whole", "Whether the search tried everything that it can reach.")),
		must("open", findings("Open", "Findings to clear.")),
		must("answers", listOf("Answers", "Answers, the best first.", record("Answer", "Changes with which no finding fails the spec.", answer))),
		must("alone", rules("Alone", "Rules that no permitted change satisfies.")),
		must("against", rules("Against", "Rules that no permitted change satisfies together. Without any one of them the others can be satisfied.")),
		must("tied", listOf("Tied", "Keys on which findings depend and that may not change.", text("Key", "Key of the spec."))),
		must("needed", listOf("Needed", "Changes of keys that may not change, with which there would be an answer.", record("Change", "Change of one key.", change()))),
		must("loosened", loosened()),
		may("each", listOf("Each", "With --each: each finding by itself.", cured)),
	}
}

func change() []field {
	return []field{
		must("key", text("Key", "Key to change.")),
		must("was", value("Was", "Old value, from the spec or a default; null if there is none.", "null")),
		must("assumed", flag("Assumed", "Whether the old value is a default.")),
		must("value", value("Value", "New value, as a spec writes it.")),
	}
}

func effect() []field {
	named := func(title, description string) object {
		return listOf(title, description, record("Finding", "Short form of a finding.", []field{
			must("rule", text("Rule", "Id of the rule.")), must("severity", word("Severity", "Severity of the finding.", "hold", "query", "note", "refer")),
			must("key", text("Key", "Key of the finding.")), must("message", text("Message", "Message of one sentence, without a full stop.")),
		}))
	}
	return []field{
		must("clears", named("Clears", "Findings that are cleared.")),
		must("brings", named("Brings", "Findings that are new or more severe.")),
		must("worse", named("Worse", "Holds and queries that are further past their limits.")),
		must("stays_clear", listOf("Stays clear", "Rules that can fail the spec and depend on the changed keys, but still have no finding.", text("Rule", "Id of the rule."))),
		must("panel_mass_gained", number("Panel mass gained", "Mass that each panel gains, in kg.")),
		must("panels_more", property("Panels more", "Number of additional panels; negative if there are fewer.", object{"type": "integer"})),
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
	{"margin", "Least margin on the route"},
	{"gap", "Last gap as designed"},
	{"holds", "Holds"},
	{"queries", "Queries"},
}

func studyOption() object {
	var figures []field
	for _, f := range studyFigures {
		figures = append(figures, must(f[0], maybe(f[1], "In SI; null if the option has no value.")))
	}
	all := record("Figures", "Figures of an option that can be made.", figures)
	all["additionalProperties"] = maybe("Figure", "Figure of the calculation sheet, under its key; null if the option has no value.")
	values := property("Values", "Values of the varied keys.", object{
		"type": "object", "additionalProperties": value("Value", "Value, as a spec writes it."), "minProperties": 1,
	})
	return record("Option", "The ceiling with one combination of values.", []field{
		must("option", count("Option", "Number of the option, from 1.")), must("values", values),
		may("figures", all),
		must("verdict", word("Verdict", "Verdict on the option.", append([]string{"CAN'T BE MADE"}, verdicts...)...)),
		may("counts", counts()),
		may("held_by", listOf("Held by", "Rules with a hold.", text("Rule", "Id of the rule."))),
		may("queried_by", listOf("Queried by", "Rules with a query and no hold.", text("Rule", "Id of the rule."))),
		may("key", text("Key", "Key because of which the option can't be made.")), may("reason", text("Reason", "Why the option can't be made.")),
		may("unbeaten", flag("Unbeaten", "Whether no other option that passes is at least as good in all aims and better in one.")),
		may("loses", text("Loses", "Figures in which it is worse than an option that beats it.")),
	})
}

func studyHead() []field {
	dimension := record("Key", "One varied key.", []field{
		must("key", text("Key", "Key of the spec.")),
		must("values", listOf("Values", "Its values, in the given order.", value("Value", "Value, as a spec writes it."))),
		must("text", text("Text", "The argument KEY=VALUES, as given.")),
	})
	file := func(title, description string) object {
		return record(title, description, []field{must("path", text("Path", "Path of the file, as given.")), must("sha256", text("SHA-256", "SHA-256 of the file."))})
	}
	column := record("Column", "One figure of all options.", []field{
		must("key", text("Key", "Key of the figure, as for --sort and --weigh.")), must("name", text("Name", "Name of the figure.")),
		must("unit", text("Unit", "SI unit; 1 for a plain number.")),
		may("better", word("Better", "Which values are better. Absent if neither is.", "lower", "higher")),
	})
	return []field{
		pathField(), onField(),
		must("strict", flag("Strict", "Whether a query fails an option.")), must("search", flag("Search", "Whether each option's route is searched as in check.")),
		must("spec", file("Spec", "Spec that is varied.")), must("standards", listOf("Standards", "Standards files, nearest first.", file("File", "One standards file."))),
		must("vary", listOf("Vary", "Varied keys. The last one changes fastest.", dimension)),
		must("follows", listOf("Follows", "Changes of other keys that the varied keys require.", text("Change", "Description of one change."))),
		must("columns", listOf("Columns", "Figures of each option.", column)),
		may("chosen", listOf("Chosen", "Figures that were chosen for the table. Absent if none was chosen.", text("Figure", "Key of the figure."))),
		must("weighed", listOf("Weighed", "Aims by which options are compared, as given.", text("Aim", "FIGURE, for its better direction, or FIGURE=WISH."))),
	}
}

func studySpan() []field {
	return []field{
		must("total", count("Total", "Number of options of the whole study.")),
		may("part", text("Part", "Part K/N. Absent if the study has no parts.")),
		must("first", count("First", "Number of the first option of this part.")), must("last", count("Last", "Number of the last option of this part.")),
	}
}

func studyOutcome() []field {
	reason := record("Reason", "One key because of which options can't be made.", []field{
		must("key", text("Key", "Key of the spec.")), must("count", count("Count", "Number of these options.")),
		must("first", count("First", "Number of the first of these options.")), must("text", text("Text", "Why the first of them can't be made.")),
	})
	return append(studySpan(),
		must("done", count("Done", "Number of options that were checked.")), may("interrupted", flag("Interrupted", "Whether the study was stopped.")),
		must("passed", count("Passed", "Number of options with refer findings only.")), must("passed_with_notes", count("Passed with notes", "Number of options with notes, queries or rules not checked.")),
		must("failed", count("Failed", "Number of options that fail.")), must("invalid", count("Invalid", "Number of options that can't be made.")),
		must("reasons", listOf("Reasons", "Why options can't be made, by key.", reason)),
		must("unbeaten", listOf("Unbeaten", "Options that no other beats.", count("Option", "Number of the option."))),
		may("unbeaten_overfull", flag("Overfull", "Whether there are too many unbeaten options to keep.")),
		must("loosened", loosened()))
}

// publishedStudy has, beside the whole document, the three kinds of line of
// --format jsonl.
func publishedStudy() []byte {
	options := must("options", listOf("Options", "Options, in the requested order.", studyOption()))
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
