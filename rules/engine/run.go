package engine

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result"
	"dryfit/rules/model/standards"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// Pass is one rule at work on one ceiling.
type Pass struct {
	Ceiling   *layout.Ceiling
	Standards *standards.Standards
	Results   *result.Results

	rule    *Rule
	outcome *Outcome
}

// Outcome is what a list of rules found.
type Outcome struct {
	Findings   []Finding
	NotChecked []NotChecked
	Quiet      []NotChecked // those of which nothing is said
	Loosened   []Loosened
	Inputs     Inputs
	Results    *result.Results // what the rules have computed on the way

	ends   []end // by rule, in the order of the run
	like   *Precedent
	differ record.Set // from the ceiling of like
}

// Inputs are the keys of the spec that each rule has read: those that its
// outcome comes from.
type Inputs map[*Rule]record.Set

// Loosened is a built-in figure that the standards make less strict, and that
// a rule has used.
type Loosened struct {
	Name          string // of the limit, or of the rule whose severity it is
	BuiltIn, Used string // as printed
	Source        string
	Origin        standards.Origin
}

// Run runs rules over a ceiling, in their order. A rule whose needed keys are
// absent is not checked.
func Run(list []*Rule, c *layout.Ceiling, std *standards.Standards, m Means) Outcome {
	out := newOutcome(c, m, len(list))
	out.Run(list, c, std)
	return out
}

func newOutcome(c *layout.Ceiling, m Means, rules int) Outcome {
	out := Outcome{Results: result.Of(c, m.Search, m.Frames), Inputs: make(Inputs, rules), ends: make([]end, 0, rules), like: m.Like}
	if m.Like != nil {
		out.differ = c.Differ(m.Like.Ceiling)
		out.Results.Hanging().Take(m.Like.rib, out.differ)
	}
	return out
}

// Run runs further rules over the ceiling that the outcome is of.
func (o *Outcome) Run(list []*Rule, c *layout.Ceiling, std *standards.Standards) {
	for _, r := range list {
		if o.recall(r) {
			continue
		}
		p := &Pass{Ceiling: c, Standards: std, Results: o.Results, rule: r, outcome: o}
		p.noteSeverity()
		o.hasSaid(r, c.Recorded(p.run))
	}
}

// run checks the rule, if the spec has the keys that it needs.
func (p *Pass) run() {
	if key, missing := p.firstMissing(); missing && p.rule.Quiet && key == p.rule.Needs[0] {
		p.outcome.Quiet = append(p.outcome.Quiet, NotChecked{Rule: p.rule, Key: key})
		return
	} else if missing {
		p.Absent(key)
		return
	}
	p.rule.Check(p)
}

func (p *Pass) firstMissing() (string, bool) {
	for _, key := range p.rule.Needs {
		if !p.Ceiling.Has(key) {
			return key, true
		}
	}
	return "", false
}

// Limit is the figure in force for a limit of the rule: the standards' own, or
// else the built-in one. A name that the rule does not list is a mistake in
// this program and panics.
func (p *Pass) Limit(key string) Bound {
	for _, l := range p.rule.Limits {
		if l.Key != key {
			continue
		}
		name := p.rule.Full(key)
		if set, ok := p.Standards.Limit(name); ok {
			if l.Loosens(set.Value.SI) {
				p.loosened(Loosened{
					Name: name, BuiltIn: p.Ceiling.Units.Limit(l.Value), Used: p.Ceiling.Units.Limit(set.Value),
					Source: set.Source, Origin: set.Origin,
				})
			}
			return Bound{Value: set.Value, Name: name, Source: set.Source, Firm: true}
		}
		return Bound{Value: l.Value, Name: name, Source: l.Source.String(), Firm: backs(l.Source.Standing)}
	}
	panic("rules: " + p.rule.ID + " has no limit " + key)
}

// Loosens reports whether a figure in place of the built-in one lets more pass.
func (l Limit) Loosens(v float64) bool {
	return l.Sense == AtMost && v > l.Value.SI || l.Sense == AtLeast && v < l.Value.SI
}

func (p *Pass) loosened(l Loosened) {
	for _, had := range p.outcome.Loosened {
		if had.Name == l.Name {
			return
		}
	}
	p.outcome.Loosened = append(p.outcome.Loosened, l)
}

// most is the most that the rule may say: the standards' word, or its own. What
// is referred no standards can change.
func (p *Pass) most() Severity {
	set, ok := p.Standards.Severity(p.rule.ID)
	if !ok || p.rule.Severity == Refer {
		return p.rule.Severity
	}
	return SeverityOf(set.Word)
}

// SeverityOf is the severity that standards name: note, query or hold; 0 for any
// other word.
func SeverityOf(word string) Severity { return severities[word] }

var severities = map[string]Severity{"note": Note, "query": Query, "hold": Hold}

func (p *Pass) noteSeverity() {
	if most := p.most(); most < p.rule.Severity {
		set, _ := p.Standards.Severity(p.rule.ID)
		p.loosened(Loosened{
			Name: p.rule.ID, BuiltIn: p.rule.Severity.String(), Used: set.Word,
			Source: "severity", Origin: set.Origin,
		})
	}
}

// Known reports whether a limit has a figure at all: some are the standards'
// alone to give.
func (b Bound) Known() bool { return !math.IsNaN(b.SI) }

// Stated is a figure that the spec itself gives at a key. Where it came from a
// default, a hold can't rest on it.
func (p *Pass) Stated(key string, v quantity.Value) Bound {
	if a, assumed := p.Ceiling.AssumedAt(key); assumed {
		return Bound{Value: v, Name: key, Source: a.Source, Firm: !a.Origin.BuiltIn()}
	}
	if at, own := p.Standards.Place(key); own {
		return Bound{Value: v, Name: key, Source: at.String(), Firm: true}
	}
	return Bound{Value: v, Name: key, Source: "the spec", Firm: true}
}

// Published is a figure of a table, at the key whose value it was looked up
// for.
func (p *Pass) Published(key string, v quantity.Value, from cite.Source) Bound {
	return Bound{Value: v, Name: key, Source: from.String(), Firm: backs(from.Standing)}
}

// Bench is a figure that the shop has, at a key of the shop's table. A hold can rest
// on one that a standards file sets.
func (p *Pass) Bench(key string, v quantity.Value) Bound {
	b := Bound{Value: v, Name: "shop." + key, Source: cite.CommonPractice().String()}
	if set, ok := p.Ceiling.Bench().Set(key); ok {
		b.Source, b.Firm = set.Source, true
	}
	return b
}

// Textf is fmt.Sprintf with every quantity printed in the units of the spec.
func (p *Pass) Textf(format string, args ...any) string {
	printed := make([]any, len(args))
	for i, a := range args {
		if q, ok := a.(interface{ Value() quantity.Value }); ok {
			a = p.Ceiling.Units.Format(q.Value())
		}
		if v, ok := a.(quantity.Value); ok {
			a = p.Ceiling.Units.Format(v)
		}
		printed[i] = a
	}
	return fmt.Sprintf(format, printed...)
}

// atLimit is the share of a limit by which a figure misses it through round-off
// alone, which differs between processors.
const atLimit = 1e-9

// Report adds a finding. Its severity is the least of the rule's, its own and
// what its bound may support. A figure that stands at its limit passes.
func (p *Pass) Report(f Finding) {
	f.Rule = p.rule
	f.Severity = p.severity(f)
	if f.Severity != Refer && f.Bound.Name != "" && f.Measured.Unit == f.Bound.Unit && math.Abs(f.Measured.SI-f.Bound.SI) <= atLimit*math.Abs(f.Bound.SI) {
		return
	}
	if strings.Contains(f.Text, "{") {
		measured, limit := p.Ceiling.Units.Against(f.Measured, f.Bound.Value)
		f.Text = strings.ReplaceAll(strings.ReplaceAll(f.Text, "{measured}", measured), "{limit}", limit)
	}
	p.outcome.Findings = append(p.outcome.Findings, f)
}

func (p *Pass) severity(f Finding) Severity {
	if f.Severity == Refer || p.rule.Severity == Refer {
		return Refer
	}
	s := p.most()
	if f.Severity != 0 {
		s = min(s, f.Severity)
	}
	if s == Hold && f.Bound.Name != "" && !f.Bound.Firm {
		return Query
	}
	return s
}

// Absent says that the rule is not checked, or not in full, without a key.
func (p *Pass) Absent(key string) {
	p.outcome.NotChecked = append(p.outcome.NotChecked, NotChecked{Rule: p.rule, Key: key})
}

// NotChecked says that the rule has no honest figure, and why: outside the
// range of what is published, say.
func (p *Pass) NotChecked(key, why string) {
	p.outcome.NotChecked = append(p.outcome.NotChecked, NotChecked{Rule: p.rule, Key: key, Why: why})
}

// Lacks says that the rule has no honest figure for an error, at the season that
// is at fault, or else at a key.
func (p *Pass) Lacks(key string, err error) {
	var s *layout.SeasonFault
	if errors.As(err, &s) {
		key = s.Key
	}
	p.NotChecked(key, p.Explain(err))
}

// Ordered reports whether the dry season is the drier one. Where the two are
// swapped it says that the rule, which asks for one of them, is not checked.
func (p *Pass) Ordered() bool {
	if p.Ceiling.Climate.Swapped() {
		p.NotChecked("climate.dry", "the wood is wetter in the dry season than in the wet one")
		return false
	}
	return true
}

// Explain is an error in the units of the spec.
func (p *Pass) Explain(err error) string {
	var r *timber.RangeError
	if errors.As(err, &r) && r.Unit == "m" {
		return p.Textf("%s %v is outside %v to %v, the range of %s", r.What,
			quantity.Length(r.Value), quantity.Length(r.From), quantity.Length(r.To), r.Published)
	}
	return err.Error()
}

// Open says that a question has no answer though its inputs are there, which a
// key of the spec lifts where the standards let it.
func (p *Pass) Open(key, lifts string, why error) {
	p.outcome.NotChecked = append(p.outcome.NotChecked, NotChecked{Rule: p.rule, Key: key, Why: why.Error(), Failed: true, Lifts: lifts})
}

// Failed says that a figure could not be computed though its inputs are there.
func (p *Pass) Failed(key string, err error) {
	p.outcome.NotChecked = append(p.outcome.NotChecked, NotChecked{Rule: p.rule, Key: key, Why: err.Error(), Failed: true})
}
