package seasons

import "dryfit/rules/model/layout"

// FootForTest is the movement of a foot for a strain of the rib's depth.
func FootForTest(c *layout.Ceiling, e float64) float64 { return foot(c, Change{Value: e}).Value }
