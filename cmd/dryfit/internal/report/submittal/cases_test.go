package submittal

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/report/sums"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/result"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/sample"
	"dryfit/rules/review/catalog"
)

// Every figure of the calculation sheet stands on the page once: under its
// subject, or in the table of its cases.
func TestEveryFigureIsShownOnce(t *testing.T) {
	for _, name := range sample.Names(t) {
		c := sample.Ceiling(t, name, nil)
		all := sums.Calcs{Ceiling: c, Figures: result.Of(c, carrying.Search{}, nil).Figures(), Rules: catalog.Rules()}
		listed := map[string]int{}
		cells, inTables := 0, 0
		for _, s := range subjectsOf(all) {
			for _, f := range s.Figures {
				listed[f.Key]++
			}
			for _, table := range s.Cases.Tables {
				assert.LessOrEqual(t, len(table.Head), 1+mostColumns, name)
				for _, row := range table.Rows {
					require.Len(t, row, len(table.Head), name)
					for _, cell := range row[1:] {
						if cell != "" {
							cells++
						}
					}
				}
			}
		}
		for _, f := range all.Figures {
			if listed[f.Key] == 0 {
				inTables++
			} else {
				assert.Equal(t, 1, listed[f.Key], f.Key)
			}
		}
		assert.Equal(t, inTables, cells, name)
	}
}

func TestCasesAreATable(t *testing.T) {
	var all []figure.Figure
	for _, lost := range []string{"1", "2", "3"} {
		for _, strap := range []string{"1", "2"} {
			f := figure.Figure{Key: "hanging.lost-" + lost + ".strap." + strap, Name: "force of strap " + strap, Subject: "hanging: with strap " + lost + " lost", Method: "frame arch, case lost-" + lost}
			if lost == strap {
				f.Method += "; slack"
			}
			all = append(all, f)
		}
	}
	all = append(all, figure.Figure{Key: "hanging.worst", Name: "worst", Subject: "hanging: governing cases", Method: "the greatest"})
	got := subjectsOf(sums.Calcs{Ceiling: sample.Ceiling(t, sample.Names(t)[0], nil), Figures: all})
	require.Len(t, got, 2)
	require.Len(t, got[0].Cases.Tables, 1)
	table := got[0].Cases.Tables[0]
	assert.Equal(t, []string{"case", "force of strap 1", "force of strap 2"}, table.Head)
	require.Len(t, table.Rows, 3)
	assert.Equal(t, "with strap 1 lost", table.Rows[0][0])
	assert.Equal(t, "slack", table.Rows[0][1])
	assert.NotEqual(t, "slack", table.Rows[0][2])
	assert.Equal(t, columnView{Name: "force of strap 1", Key: "hanging.*.strap.1", Follows: "frame arch", Shares: true}, got[0].Cases.Columns[0])
	assert.Equal(t, "hanging: governing cases", got[1].Title)
	assert.True(t, strings.HasPrefix(got[1].Figures[0].Key, "hanging.worst"))
}
