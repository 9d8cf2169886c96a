package review

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
)

// tried lifts what is not decided of the way in where the spec states a trial
// and the standards let it count. Each such trial is listed with what the
// standards loosen.
func tried(c *layout.Ceiling, outcome engine.Outcome, o Options) engine.Outcome {
	at, may := o.Standards.MayTry()
	if !may {
		return outcome
	}
	outcome.NotChecked = slices.Clone(outcome.NotChecked)
	for i := range outcome.NotChecked {
		n := &outcome.NotChecked[i]
		var trial layout.Trial
		lifted := false
		outcome.Inputs[n.Rule] = outcome.Inputs[n.Rule].Or(c.Recorded(func() { trial, lifted = lifts(c, *n, o.On) }))
		if !lifted {
			continue
		}
		if days, most := tooLong(trial, o); days > 0 {
			n.Why += fmt.Sprintf("; its trial counts until %s, %d days after the day of the check; the maximum is %.0f, so it does not count yet", trial.Until.Get(), days, most)
			continue
		}
		n.Failed = false
		n.Why += fmt.Sprintf("; tried on %s by %s, %s, which counts until %s", trial.Date.Get(), trial.By.Get(), trial.How.Get(), trial.Until.Get())
		outcome.Loosened = append(outcome.Loosened, engine.Loosened{
			Name: n.Lifts, BuiltIn: "not decided", Used: "tried on " + trial.Date.Get(),
			Source: "by " + trial.By.Get() + ", " + trial.How.Get(), Origin: at,
		})
	}
	return outcome
}

// lifts is the trial stated where something failed to be decided, and whether it counts
// on a day.
func lifts(c *layout.Ceiling, n engine.NotChecked, on string) (layout.Trial, bool) {
	trial, stated := trialAt(c, n.Lifts)
	return trial, n.Failed && stated && counts(trial, on)
}

// counts reports whether a trial counts on a day: it was made, somebody answers
// for it, and it has not run out.
func counts(t layout.Trial, on string) bool {
	return on != "" && t.Date.Get() <= on && on <= t.Until.Get() &&
		strings.TrimSpace(t.By.Get()) != "" && strings.TrimSpace(t.How.Get()) != ""
}

// tooLong is by how many days from the check a trial would count, where that is more
// than an acceptance may; else 0.
func tooLong(t layout.Trial, o Options) (days int64, most float64) {
	i := slices.IndexFunc(o.Rules, func(r *engine.Rule) bool { return r.ID == acceptedBy })
	if i < 0 {
		return 0, 0
	}
	most = longestTerm(o.Rules[i], o.Standards)
	if days, ok := daysUntil(o.On, t.Until.Get()); ok && float64(days) > most {
		return days, most
	}
	return 0, most
}

func trialAt(c *layout.Ceiling, key string) (layout.Trial, bool) {
	if key == "" {
		return layout.Trial{}, false
	}
	for _, l := range c.Route.Get() {
		if l.Prefix+".tried" == key && l.Tried.Given() {
			return l.Tried, true
		}
	}
	return layout.Trial{}, false
}
