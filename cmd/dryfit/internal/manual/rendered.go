//go:build pages

package manual

import (
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/cobra/doc"
)

// Write renders the pages that the program ships: it is that of the program
// which go generate runs, so that the renderer is in no other.
func Write(root *cobra.Command, folder string) error {
	root.DisableAutoGenTag = true
	day := time.Unix(0, 0).UTC()
	return doc.GenManTree(root, &doc.GenManHeader{
		Title: "DRYFIT", Section: "1", Date: &day, Source: "dryfit VERSION", Manual: "dryfit manual",
	}, folder)
}
