package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review/catalog"
)

// A sheet says what the standards loosen and the families of what was not checked,
// and nothing of either where there is none.
func TestSheetsNameTheReservesOfAVerdict(t *testing.T) {
	loose, problems := catalog.ReadStandards("house.toml", []byte("dryfit = 1\nname = \"House\"\n[limit]\n\"joint.count.most\" = { value = 400, source = \"agreed\" }\n"))
	require.Empty(t, problems)
	reserves := []string{"LOOSENED BY THE STANDARDS", "loosened", "1 by the standards", "NOT CHECKED", "unchecked", "install, strap"}
	for _, std := range []*standards.Standards{standards.BuiltIn(), standards.With(loose)} {
		in := reviewed(t, sample.Tree(t, sample.ReadingRoom, nil), std)
		in.Assessment.Counts = engine.Counts{}
		if len(std.Files) > 0 {
			in.Assessment.Counts = engine.Counts{NotChecked: 2, Families: engine.FamiliesOf([]*engine.Rule{{ID: "strap.load"}, {ID: "install.saddle"}})}
		}
		for _, name := range Names() {
			drawn, err := Draw(name, in, sheet.Options{})
			require.NoError(t, err, name)
			said := texts(drawn.Items)
			if len(std.Files) > 0 {
				assert.Subset(t, said, reserves, name)
				continue
			}
			for _, r := range reserves {
				assert.NotContains(t, said, r, name)
			}
		}
	}
}
