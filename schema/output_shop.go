package schema

// shopIndex is shop.json of a shop's package.
func shopIndex() []byte {
	digest := func() object {
		return record("Digest", "A file by its content.", []field{
			must("path", text("Path", "From the repository's root.")), must("sha256", text("SHA-256", "Of its bytes.")),
		})
	}
	figures := property("Figures", "By their keys; a key stays from version to version. Counts, lengths in m, angles in rad, forces in N, lumber in board feet, and nominal planks by their names.",
		object{"type": "object", "additionalProperties": property("Figure", "Of the package.", object{"type": []string{"number", "string"}})})
	return written("shop", record("Shop", "What dryfit shop writes as shop.json, version 1; figures in SI.", []field{
		must("package", word("Package", "What the folder is.", "dryfit shop")),
		must("version", text("Version", "Of the program.")), onField(),
		must("strict", flag("Strict", "Whether a query failed the spec.")),
		must("spec", digest()),
		must("standards", listOf("Standards", "Nearest first.", digest())),
		must("title", text("Title", "Of the project.")), must("sheet", text("Sheet", "Of the project.")),
		must("revision", text("Revision", "Of the project.")),
		must("verdict", word("Verdict", "Of the spec.", verdicts...)),
		must("for_cutting", flag("For cutting", "Whether the check passes the spec.")),
		may("not_computed", listOf("Not computed", "Lists of the package that are empty, and why.", text("List", "One sentence."))),
		must("warnings", listOf("Warnings", "That the files of the package say.", text("Warning", "One sentence."))),
		must("figures", figures),
		must("assumed", partOf("assumed")),
		must("shop", partOf("assumed")),
		must("loosened", loosened()),
		must("files", listOf("Files", "Of the package, beside this one.", text("File", "Its name."))),
	}))
}
