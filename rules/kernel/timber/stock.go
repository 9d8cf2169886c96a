package timber

import "fmt"

// surfaced is the thickness of hardwood by its quarters, surfaced on two sides,
// in inches. Source: hardwood lumber dimension tables, two pages agree; 6/4,
// 10/4 and 12/4 from memory.
var surfaced = map[int]float64{
	3: 9.0 / 16, 4: 13.0 / 16, 5: 1 + 1.0/16, 6: 1 + 5.0/16, 8: 1.75, 10: 2.25, 12: 2.75, 16: 3.75,
}

// Surfaced is the thickness, in m, that is left of nominal stock, in quarters of an
// inch, once both faces are planed. Stock that the tables do not list is an error
// that lists those that they do: no rule gives what lies between. Source: hardwood
// lumber dimension tables, two pages agree; 6/4, 10/4 and 12/4 from memory.
func Surfaced(quarters int) (float64, error) {
	t, ok := surfaced[quarters]
	if !ok {
		return 0, fmt.Errorf("no surfaced thickness is published for %d/4 stock; there are figures for 3/4, 4/4, 5/4, 6/4, 8/4, 10/4, 12/4 and 16/4", quarters)
	}
	return t * inch, nil
}

// Rough is the thickness, in m, of rough plank by its name in quarters of an inch;
// under an inch counts as one, as board measure has it. Source: NHLA practice, on
// hardwood measure pages.
func Rough(quarters int) float64 { return float64(max(quarters, 4)) / 4 * inch }

// BoardFoot is the volume of 144 cubic inches, in m3.
const BoardFoot = 144 * inch * inch * inch
