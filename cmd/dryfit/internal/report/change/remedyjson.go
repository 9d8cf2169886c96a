package change

import (
	"io"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/remedy"
	"dryfit/rules/engine"
)

// RemedyJSON writes a remedy as one document.
func RemedyJSON(w io.Writer, r Remedy) error {
	res := r.Result
	out := jsonRemedy{
		Loosened: report.LoosenedJSON(res.Assessment.Loosened),
		Version:  r.Version, On: r.On, Path: res.Assessment.Path, Verdict: res.Assessment.Verdict.String(), Strict: r.Strict,
		Reviews: res.Reviews, LimitReached: res.LimitReached, Interrupted: res.Interrupted, Whole: res.Whole,
		Open: []report.JSONFinding{}, Answers: []jsonAnswer{}, Alone: ids(res.Alone), Against: ids(res.Against), Tied: append([]string{}, res.Tied...),
		Needed: changesJSON(res.Needed),
	}
	for _, f := range res.Open {
		out.Open = append(out.Open, report.FindingJSON(f))
	}
	for _, a := range res.Answers {
		j := jsonAnswer{
			Size: show.JSONNumber(remedy.Total(a.Changes)), Verdict: a.Assessment.Verdict.String(),
			Counts: report.CountsJSON(a.Assessment.Counts), jsonEffect: effectJSON(a.Effect), Changes: changesJSON(a.Changes),
			Comments: []jsonComment{},
		}
		for _, c := range a.Comments {
			j.Comments = append(j.Comments, jsonComment(c))
		}
		out.Answers = append(out.Answers, j)
	}
	for _, e := range r.Each {
		j := jsonCured{Finding: report.FindingJSON(e.Finding), Cures: []jsonCure{}}
		for _, c := range e.Cures {
			j.Cures = append(j.Cures, jsonCure{changeJSON(c.Change), changesJSON(c.Also), show.JSONNumber(remedy.Total(c.All())), effectJSON(c.Effect)})
		}
		out.Each = append(out.Each, j)
	}
	return show.WriteJSON(w, out)
}

func changesJSON(list []remedy.Change) []jsonChange {
	out := []jsonChange{}
	for _, c := range list {
		out = append(out, changeJSON(c))
	}
	return out
}

func changeJSON(c remedy.Change) jsonChange {
	return jsonChange{Key: c.Key, Was: c.Was, Assumed: c.Assumed, Value: c.Value}
}

func effectJSON(e remedy.Effect) jsonEffect {
	j := jsonEffect{
		Clears: []jsonNamed{}, Brings: []jsonNamed{}, Worse: []jsonNamed{}, Stays: ids(e.Stays),
		Mass: show.JSONNumber(e.Mass), Panels: e.Panels,
	}
	for _, f := range e.Clears {
		j.Clears = append(j.Clears, jsonNamed{f.Rule.ID, f.Severity.String(), f.At, f.Text})
	}
	for _, f := range e.Brings {
		j.Brings = append(j.Brings, jsonNamed{f.Rule.ID, f.Severity.String(), f.At, f.Text})
	}
	for _, f := range e.Worse {
		j.Worse = append(j.Worse, jsonNamed{f.Rule.ID, f.Severity.String(), f.At, f.Text})
	}
	return j
}

func ids(list []*engine.Rule) []string {
	out := []string{}
	for _, r := range list {
		out = append(out, r.ID)
	}
	return out
}
