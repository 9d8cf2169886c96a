package plan

import (
	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
)

// Lines are the members and the seams as seen from below.
func Lines(c *layout.Ceiling, v draft.View) []paper.Item {
	b := draft.Blank("", "", "", draft.Size{})
	d := &planOf{c: c, b: b, near: c.NearGap()}
	d.v = v
	d.members()
	d.seams()
	return b.Finish().Items
}
