package making

import (
	"encoding/csv"
	"io"
	"strconv"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/model/result/raising"
	"dryfit/spec/quantity"
)

type jsonRaiseState struct {
	Holds  bool              `json:"holds"`
	Why    string            `json:"why,omitempty"`
	Lifts  []show.JSONNumber `json:"lifts"`
	Straps []show.JSONNumber `json:"straps"`
}

type jsonRaiseLoss struct {
	What string `json:"what"`
	jsonRaiseState
}

type jsonRaiseStep struct {
	Name     string `json:"name"`
	Released string `json:"release"`
	jsonRaiseState
	Lost []jsonRaiseLoss `json:"lost"`
}

type jsonPick struct {
	Panel         int              `json:"panel"`
	Order         []int            `json:"order"`
	ByBalance     bool             `json:"by_balance"`
	BalancedAfter *int             `json:"balanced_after"`
	SecureAfter   *int             `json:"secure_after"`
	Pull          *show.JSONNumber `json:"pull"`
	Steps         []jsonRaiseStep  `json:"steps"`
}

type jsonReferred struct {
	Rule string `json:"rule"`
	Text string `json:"text"`
}

type jsonRaiseFigure struct {
	Key     string          `json:"key"`
	Name    string          `json:"name"`
	Value   show.JSONNumber `json:"value"`
	Unit    string          `json:"unit"`
	Formula string          `json:"formula,omitempty"`
	Method  string          `json:"method,omitempty"`
}

// RaiseJSON writes the plan as one document, in SI.
func RaiseJSON(w io.Writer, r Raise) error {
	p, panel := r.Sheet.Project, r.Sheet.Ceiling.Panel
	out := struct {
		Path      string            `json:"path"`
		On        string            `json:"on"`
		Safety    []string          `json:"safety"`
		Title     string            `json:"title"`
		Sheet     string            `json:"sheet"`
		Revision  string            `json:"revision"`
		Verdict   string            `json:"verdict"`
		Engineer  string            `json:"engineer"`
		Mass      show.JSONNumber   `json:"mass"`
		MassMost  show.JSONNumber   `json:"mass_most"`
		Referred  []jsonReferred    `json:"referred"`
		NotJudged []string          `json:"not_judged"`
		Figures   []jsonRaiseFigure `json:"figures"`
		Picks     []jsonPick        `json:"picks"`
	}{
		Path: r.Sheet.Path, On: r.On, Safety: r.Safety(), Title: p.Title.Get(), Sheet: p.Sheet.Get(), Revision: p.Revision.Get(),
		Verdict: r.Sheet.Verdict.String(), Engineer: r.Engineer(), Mass: show.JSONNumber(panel.Mass.Get()), MassMost: show.JSONNumber(panel.Most.Get()),
		Referred: []jsonReferred{}, NotJudged: append([]string{}, r.notJudged()...), Picks: r.picks(),
	}
	for _, f := range r.referred() {
		out.Referred = append(out.Referred, jsonReferred{f.Rule.ID, f.Text})
	}
	for _, f := range raising.Figures(r.Sheet.Ceiling) {
		out.Figures = append(out.Figures, jsonRaiseFigure{f.Key, f.Name, show.JSONNumber(f.Value.SI), f.Value.Unit.String(), f.Formula, f.Method})
	}
	return show.WriteJSON(w, out)
}

// picks are the panels in the order in which they go up.
func (r Raise) picks() (out []jsonPick) {
	for arch := range r.Sheet.Ceiling.Panel.Along.Get() {
		for k := range r.Pieces {
			out = append(out, r.pick(&r.Pieces[k], r.panels(k)[arch]))
		}
	}
	return out
}

func (r Raise) pick(p *raising.Piece, number int) jsonPick {
	never := func(n int) *int {
		if n == 0 {
			return nil
		}
		return &n
	}
	out := jsonPick{Panel: number, Order: p.Order, ByBalance: p.ByBalance, BalancedAfter: never(p.BalancedAfter), SecureAfter: never(p.SecureAfter)}
	if p.Pull > 0 {
		pull := show.JSONNumber(p.Pull)
		out.Pull = &pull
	}
	for _, s := range p.Steps {
		step := jsonRaiseStep{Name: s.Name, Released: r.released(), jsonRaiseState: raiseState(&s.State), Lost: []jsonRaiseLoss{}}
		for _, l := range s.Lost {
			step.Lost = append(step.Lost, jsonRaiseLoss{l.What, raiseState(&l.State)})
		}
		out.Steps = append(out.Steps, step)
	}
	return out
}

// raiseState has no forces where it falls.
func raiseState(s *raising.State) jsonRaiseState {
	out := jsonRaiseState{Holds: s.Holds(), Why: s.Why, Lifts: []show.JSONNumber{}, Straps: []show.JSONNumber{}}
	if s.Falls {
		return out
	}
	for _, f := range s.State.Lifts {
		out.Lifts = append(out.Lifts, show.JSONNumber(f))
	}
	for _, f := range s.State.Straps {
		out.Straps = append(out.Straps, show.JSONNumber(f))
	}
	return out
}

// RaiseCSV writes the plan as a table: a line for each support of each state, or one
// without a force where the panel falls. Each line says whether it is released.
func RaiseCSV(w io.Writer, r Raise) error {
	c := csv.NewWriter(w)
	c.UseCRLF = true
	newton := show.CSVUnitOf(r.Sheet.Ceiling.Units, quantity.Newton)
	rows := [][]string{{"panel", "step", "name", "lost", "holds", "why", "support", "force of one rib" + newton.Head(), "release", "safety"}}
	for arch := range r.Sheet.Ceiling.Panel.Along.Get() {
		for k := range r.Pieces {
			for i, s := range r.Pieces[k].Steps {
				head := []string{strconv.Itoa(r.panels(k)[arch]), strconv.Itoa(i + 1), s.Name}
				rows = append(rows, r.stateRows(&r.Pieces[k], head, "", &s.State, newton)...)
				for _, l := range s.Lost {
					rows = append(rows, r.stateRows(&r.Pieces[k], head, l.What, &l.State, newton)...)
				}
			}
		}
	}
	if err := c.WriteAll(rows); err != nil {
		return err
	}
	return c.Error()
}

func (r Raise) stateRows(p *raising.Piece, head []string, lost string, s *raising.State, u show.CSVUnit) (out [][]string) {
	holds := map[bool]string{true: "yes", false: "no"}[s.Holds()]
	add := func(support, force string) {
		row := append(append([]string{}, head...), lost, holds, s.Why, support, force, r.released(), LiftsStay)
		out = append(out, row)
	}
	if s.Falls {
		add("", "")
		return out
	}
	for i, f := range s.State.Lifts {
		add("lift "+strconv.Itoa(i+1), u.Number(f))
	}
	for i, f := range s.State.Straps {
		add("strap "+strconv.Itoa(p.Staging.Straps[i]), u.Number(f))
	}
	return out
}
