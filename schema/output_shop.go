package schema

// benchSettings has the same parts as what is assumed.
func benchSettings() object {
	settings := partOf("assumed")
	settings["title"], settings["description"] = "Shop", "Stock and equipment of the shop, from which strips, forms, lumber and sheets are computed."
	return settings
}

// shopIndex is shop.json of a shop's package.
func shopIndex() []byte {
	digest := func() object {
		return record("Digest", "One file and its SHA-256.", []field{
			must("path", text("Path", "Path from the root of the repository.")), must("sha256", text("SHA-256", "SHA-256 of the file.")),
		})
	}
	figures := property("Figures", "Figures by key. The keys are the same in all versions. Lengths are in m, angles in rad, forces in N, lumber in board feet; a plank is named by its nominal size.",
		object{"type": "object", "additionalProperties": property("Figure", "One figure of the package.", object{"type": []string{"number", "string"}})})
	return written("shop", record("Shop", "What dryfit shop writes as shop.json, version 1; figures in SI.", []field{
		must("package", word("Package", "Kind of package.", "dryfit shop")),
		must("version", text("Version", "Version of dryfit.")), onField(),
		must("strict", flag("Strict", "Whether a query fails the spec.")),
		must("spec", digest()),
		must("standards", listOf("Standards", "Standards files, nearest first.", digest())),
		must("title", text("Title", "Title of the ceiling.")), must("sheet", text("Sheet", "Number of the drawing sheet.")),
		must("revision", text("Revision", "Revision of the drawing sheet.")),
		must("verdict", word("Verdict", "Verdict on the spec.", verdicts...)),
		must("for_cutting", flag("For cutting", "Whether the spec passes the check, so that the pieces may be cut.")),
		may("not_computed", listOf("Not computed", "Lists of the package that are empty because they are not computed, and why.", text("List", "One list, and why."))),
		must("warnings", listOf("Warnings", "Warnings on the files of the package.", text("Warning", "One sentence."))),
		must("figures", figures),
		must("assumed", partOf("assumed")),
		must("shop", benchSettings()),
		must("loosened", loosened()),
		must("files", listOf("Files", "Other files of the package.", text("File", "Name of the file."))),
	}))
}
