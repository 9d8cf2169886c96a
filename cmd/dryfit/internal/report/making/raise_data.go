package making

import (
	"io"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/model/result/raising"
)

// RaiseJSON writes the plan as one document, in SI.
func RaiseJSON(w io.Writer, r Raise) error {
	p, panel := r.Assessment.Project, r.Assessment.Ceiling.Panel
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
		Frames    []jsonFrame       `json:"frames"`
		Picks     []jsonPick        `json:"picks"`
	}{
		Path: r.Assessment.Path, On: r.On, Safety: r.Safety(), Title: p.Title.Get(), Sheet: p.Sheet.Get(), Revision: p.Revision.Get(),
		Verdict: r.Assessment.Verdict.String(), Engineer: r.Engineer(), Mass: show.JSONNumber(panel.Mass.Get()), MassMost: show.JSONNumber(panel.Most.Get()),
		Referred: []jsonReferred{}, NotJudged: append([]string{}, r.notJudged()...), Picks: r.picks(), Frames: frames(r.Frames),
	}
	for _, f := range r.referred() {
		out.Referred = append(out.Referred, jsonReferred{f.Rule.ID, f.Text})
	}
	for _, f := range raising.Figures(r.Assessment.Ceiling) {
		out.Figures = append(out.Figures, jsonRaiseFigure{f.Key, f.Name, show.JSONNumber(f.Value.SI), f.Value.Unit.String(), f.Formula, f.Method})
	}
	return show.WriteJSON(w, out)
}

// picks are the panels in the order in which they go up.
func (r Raise) picks() (out []jsonPick) {
	for arch := range r.Assessment.Ceiling.Panel.Along.Get() {
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
