package begin

import (
	"math"
	"reflect"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
	"dryfit/schema"
	"dryfit/spec"
)

// Survey is a room as measured: a file with the table [survey] of the format.
type Survey struct {
	// Document is the file, in which a key that is impossible has its place.
	Document *spec.Document
	text     string // as the spec carries it: the file without its version
}

// ReadSurvey reads a file that has [survey], and beside it the version of the format
// at most. The path is for the problems alone.
func ReadSurvey(path string, src []byte) (*Survey, []spec.Problem) {
	doc, problems := spec.Parse(path, src)
	if len(problems) > 0 {
		return nil, problems
	}
	s := &Survey{Document: doc, text: unversioned(doc)}
	for key := range doc.Tree {
		if key != "survey" && key != "dryfit" {
			problems = append(problems, doc.KeyProblem("spec.key", key, "the file of a survey must have only the table [survey]"))
		}
	}
	if _, ok := doc.Tree["survey"]; !ok {
		return nil, append(problems, doc.Problem("spec.key", "survey", "there is no [survey] in the file"))
	}
	for _, p := range schema.Check(doc) {
		if p.Key == "survey" || strings.HasPrefix(p.Key, "survey.") {
			problems = append(problems, p)
		}
	}
	// What stands before the first table, as survey.accuracy = "1mm", is of another
	// table in a spec.
	inside, wrong := spec.Parse(path, []byte("[room]\n"+s.text))
	if len(problems) == 0 && (len(wrong) > 0 || !reflect.DeepEqual(inside.Tree["survey"], doc.Tree["survey"])) {
		problems = append(problems, doc.KeyProblem("spec.key", "survey", "write the survey as tables, [survey] and [[survey.station]]"))
	}
	if len(problems) > 0 {
		return nil, problems
	}
	return s, nil
}

// Written is the first reading across the room, as it is written.
func (s *Survey) Written() string {
	v, _ := spec.Lookup(s.Document.Tree, "survey.station.1.left")
	text, _ := v.(string)
	return text
}

// unversioned is the text of a survey without the line that names its version.
func unversioned(doc *spec.Document) string {
	text := strings.TrimPrefix(string(doc.Source), "\ufeff")
	if at, ok := doc.KeyRange("dryfit"); ok {
		n := doc.Position(at.Start).Line
		list := strings.Split(text, "\n")
		text = strings.Join(append(list[:n-1:n-1], list[n:]...), "\n")
	}
	return strings.TrimSpace(strings.ReplaceAll(text, "\r\n", "\n")) + "\n"
}

// surveyed is the room that was measured, and lets the drafter take its tolerance.
// Its width and length are halfway between the least and the greatest reading; the
// tolerance has all of them, with their accuracy.
func (d *drafter) surveyed(r Room) (Room, error) {
	v, err := d.readings()
	if err != nil {
		return r, err
	}
	var widths []float64
	for _, s := range v.Station.Get() {
		widths = append(widths, s.Left.Get()+s.Right.Get())
	}
	lengths := []float64{v.Far.Left.Get() - v.Near.Left.Get(), v.Far.Right.Get() - v.Near.Right.Get()}
	width, off := halfway(widths, d.sizes.step)
	length, out := halfway(lengths, d.sizes.step)
	d.sizes.loose = up(max(off, out)+v.Accuracy.Get(), d.sizes.step)
	if v.Springing.Given() && len(v.Framing.Get()) > 0 {
		var under []float64
		for _, p := range v.Framing.Get() {
			under = append(under, p.Y-v.Springing.Get())
		}
		middle, _ := halfway(under, d.sizes.step)
		d.framing = &middle
	}
	return Room{Width: d.sizes.written(width), Length: d.sizes.written(length), Height: r.Height}, nil
}

// halfway is the middle of the least and the greatest of a list, on a step, and how
// far the list is off it.
func halfway(list []float64, step float64) (middle, off float64) {
	least, most := math.Inf(1), math.Inf(-1)
	for _, v := range list {
		least, most = min(least, v), max(most, v)
	}
	middle = math.Round((least+most)/2/step) * step
	return middle, max(most-middle, middle-least)
}

// readings is the survey, read with a row of panels that is small enough for any
// room, so that what can't be read is the survey's fault.
func (d *drafter) readings() (layout.Survey, error) {
	flat := *d
	least := d.sizes.written(leastModule)
	flat.wanted = Wanted{Profile: string(spec.Flat), Units: d.wanted.Units, Span: least, Length: least, Survey: d.wanted.Survey}
	flat.span, flat.length = leastModule, leastModule
	tree := flat.tree(flat.provisional(choice{around: 1, along: 1}))
	delete(tree, "close") // or else the row is set out, and the axis of so short a row says nothing
	c, faults := layout.Resolve(tree, standards.BuiltIn(), nil)
	if len(faults) > 0 {
		return layout.Survey{}, &ImpossibleError{Key: faults[0].Key, Text: faults[0].Text}
	}
	return c.Survey, nil
}

// under takes the clear height over the crown from the framing as measured; false
// where that changes nothing.
func (d *drafter) under(c *choice, ceiling *layout.Ceiling) bool {
	if d.framing == nil {
		return false
	}
	above := down(*d.framing-ceiling.Vault.Crown.Get(), d.sizes.step)
	if above <= 0 || math.Abs(above-c.above) < d.sizes.step/2 {
		return false
	}
	c.above = above
	return true
}

// longerOrCovered mends what is found at the end walls.
func longerOrCovered(d *drafter, c *choice, f engine.Finding) bool {
	if f.At == "edge.cover" {
		return widerCover(d, c, f)
	}
	return longerRoom(d, c, f)
}
