package begin_test

import (
	"fmt"
	"testing"

	"dryfit/rules/begin"
	"dryfit/rules/catalog"
	"dryfit/spec/quantity"
)

func TestLook(t *testing.T) {
	for _, w := range []begin.Wanted{
		{Title: "Reading room", Units: quantity.Metric, Profile: "segmental", Span: "4200mm", Rise: "840mm", Length: "7080mm"},
		{Units: quantity.Imperial, Profile: "segmental", Span: "14ft", Rise: "3ft", Length: "23ft 6in"},
	} {
		d, err := begin.Spec(w, catalog.Rules())
		if err != nil {
			t.Error(err)
			continue
		}
		fmt.Println(string(d.Text))
		fmt.Println(d.Sheet.Verdict, d.Sheet.Counts)
		for _, f := range d.Sheet.Findings {
			fmt.Println(f.Severity, f.Rule.ID, f.At, f.Text)
		}
		for _, f := range d.Sheet.NotChecked {
			fmt.Print(f.Rule.ID, " ", f.Key, " ", f.Why, "; ")
		}
	}
}
