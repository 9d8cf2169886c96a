package making

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/report/sums"
	"dryfit/rules/engine"
	"dryfit/rules/model/result/raising"
	"dryfit/rules/review"
	"dryfit/spec/quantity"
)

// Raise is the raising plan of one spec.
type Raise struct {
	Assessment *review.Assessment
	On         string
	raising.Plan
	Frames []raising.Frame
}

const neverSecure = "never secure without its lifts"

// Engineer is the engineer of record; "" while none is named.
func (r Raise) Engineer() string { return r.Assessment.Project.Engineer.Get() }

// released is what stands at each step: that nobody can have released it, or "".
func (r Raise) released() string { return raising.Released(r.Assessment.Ceiling) }

// Safety is what the plan says first.
func (r Raise) Safety() []string { return raising.Safety(r.Assessment.Ceiling) }

// referred are the findings that are another's to decide.
func (r Raise) referred() (out []engine.Finding) {
	for _, f := range r.Assessment.Findings {
		if f.Severity == engine.Refer {
			out = append(out, f)
		}
	}
	return out
}

// notJudged is what the plan does not answer for, with the rules on hanging and
// raising that were not checked.
func (r Raise) notJudged() []string {
	out := r.NotJudged(r.Assessment.Ceiling)
	for _, n := range r.Assessment.NotChecked {
		family, _, _ := strings.Cut(n.Rule.ID, ".")
		if !slices.Contains([]string{"install", "raise", "strap", "rib"}, family) {
			continue
		}
		why := n.Why
		if why == "" {
			why = "needs " + n.Key
		}
		out = append(out, n.Rule.ID+" is not checked: "+why)
	}
	return out
}

// panels are the numbers of those that a piece stands for, as the plan has them.
func (r Raise) panels(piece int) (out []int) {
	around := r.Assessment.Ceiling.Panel.Around.Get()
	for arch := range r.Assessment.Ceiling.Panel.Along.Get() {
		out = append(out, arch*around+piece+1)
	}
	return out
}

// raiseText writes a raising plan.
type raiseText struct{ *show.Texter }

// RaiseText writes the plan for the crew.
func RaiseText(w io.Writer, r Raise) error {
	x := raiseText{show.NewTexter(w, false)}
	p, u := r.Assessment.Project, r.Assessment.Ceiling.Units
	x.Line(show.Shown(r.Assessment.Path))
	x.marked("", "raising plan: "+show.Title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()))
	for _, s := range r.Safety() {
		x.marked("", s)
	}
	panel := r.Assessment.Ceiling.Panel
	x.Line("")
	x.marked("", fmt.Sprintf("Each force is for one of the two edge ribs. Twice the sum of the forces of a step is the weight of the heaviest panel, %s. Limits are judged at its greatest weight, %s.",
		u.Format(quantity.Mass(panel.Mass.Get()).Value()), u.Format(quantity.Mass(panel.Most.Get()).Value())))
	for _, s := range r.notJudged() {
		x.marked("- ", s)
	}
	x.Line("")
	for _, f := range raising.Figures(r.Assessment.Ceiling) {
		sums.WriteFigure(x.Texter, f, u, nil)
	}
	x.frames(r)
	for k := range r.Pieces {
		x.piece(r, k)
	}
	if list := r.referred(); len(list) > 0 {
		x.Line("")
		x.Line("referred")
		for _, f := range list {
			x.marked("- ", f.Rule.ID+": "+f.Text)
		}
	}
	return x.Flush()
}

// marked is a text of several lines, after a mark.
func (t raiseText) marked(mark, text string) {
	for _, l := range show.Wrap(show.Shown(text), show.TextWidth-len(mark)) {
		t.Line(mark + l)
		mark = strings.Repeat(" ", len(mark))
	}
}

// frames are the moments of raising one panel.
func (t raiseText) frames(r Raise) {
	t.Line("")
	t.Rule("─")
	t.marked("", "frames, as the raising sheet draws them; each force is of both edge ribs together")
	for i := range r.Frames {
		f := &r.Frames[i]
		t.Line("")
		t.marked("", f.Title(i+1))
		if f.Release != "" {
			t.Line("   " + f.Release)
		}
		for _, l := range f.Lines(r.Assessment.Ceiling.Units) {
			t.marked("   ", l)
		}
	}
}

// piece is the order and the steps of one piece.
func (t raiseText) piece(r Raise, k int) {
	p, u := &r.Pieces[k], r.Assessment.Ceiling.Units
	t.Line("")
	t.Rule("─")
	name := "panels " + numbers(r.panels(k)) + ", each"
	if p.Piece > 0 {
		name = fmt.Sprintf("panels %s, piece %d of its arch from the left, each", numbers(r.panels(k)), p.Piece)
	}
	t.marked("", name)
	t.marked("", "straps, from the left foot, in the order "+numbers(p.Order)+how(p))
	t.marked("", balanced(p)+"; "+secure(p)+".")
	if p.Pull > 0 && len(p.Order) > 1 {
		t.marked("", fmt.Sprintf("On straps %d and %d alone, a downward pull of %s at an end of its underside tips it.", p.Order[0], p.Order[1], u.Format(quantity.Force(p.Pull).Value())))
	}
	for i, s := range p.Steps {
		t.Line("")
		t.Line(strings.TrimRight(show.Pad(fmt.Sprintf("%d. %s", i+1, s.Name), show.TextWidth-len(raising.NoRelease))+r.released(), " "))
		t.marked("   ", r.carried(p, &s.State))
		for _, l := range s.Lost {
			t.marked("   ", "with "+l.What+" lost: "+r.carried(p, &l.State))
		}
	}
}

func how(p *raising.Piece) string {
	if p.ByBalance {
		return "; no pair of them holds the panel within the limits, so the first two are chosen by balance alone"
	}
	return ""
}

func balanced(p *raising.Piece) string {
	if p.BalancedAfter == 0 {
		return "It never balances without its lifts"
	}
	return fmt.Sprintf("It balances without its lifts after %d straps", p.BalancedAfter)
}

func secure(p *raising.Piece) string {
	if p.SecureAfter == 0 {
		return neverSecure + ": there is always one strap whose loss exceeds the limits"
	}
	return fmt.Sprintf("after %d, any one strap may be lost and the others hold within the limits", p.SecureAfter)
}

// carried is what each support carries that carries anything, and whether it holds.
func (r Raise) carried(p *raising.Piece, s *raising.State) string {
	if s.Falls {
		return "IT FALLS"
	}
	var parts []string
	add := func(what string, number int, force float64) {
		if force > 0 {
			parts = append(parts, fmt.Sprintf("%s %d %s", what, number, r.Assessment.Ceiling.Units.Format(quantity.Value{SI: force, Unit: quantity.Newton})))
		}
	}
	for i, f := range s.State.Lifts {
		add("lift", i+1, f)
	}
	for i, f := range s.State.Straps {
		add("strap", p.Staging.Straps[i], f)
	}
	text := strings.Join(parts, ", ")
	if !s.Holds() {
		text = "NOT WITHIN LIMITS, " + s.Why + ": " + text
	}
	return text
}

func numbers(list []int) string {
	out := make([]string, len(list))
	for i, n := range list {
		out[i] = fmt.Sprint(n)
	}
	return strings.Join(out, ", ")
}
