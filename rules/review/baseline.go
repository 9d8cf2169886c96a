package review

import "dryfit/rules/engine"

// Against marks what an earlier revision of the spec had, and judges again: what
// it had does not fail the spec. The earlier assessment is one to the same standards;
// nil where there was no such spec. A file that can't be checked stays that.
func (s *Assessment) Against(earlier *Assessment, o Options) {
	s.compared = true
	if earlier == nil {
		earlier = &Assessment{}
	}
	had := map[string]engine.Finding{}
	for _, f := range earlier.Findings {
		had[f.Fingerprint] = f
	}
	for i := range s.Findings {
		f := &s.Findings[i]
		f.Baseline = engine.New
		if e, ok := had[f.Fingerprint]; ok {
			f.Baseline = f.Since(e)
		}
	}
	type figure struct {
		rule *engine.Rule
		key  string
	}
	failed := map[figure]bool{}
	for _, n := range earlier.NotChecked {
		failed[figure{n.Rule, n.Key}] = n.Failed || failed[figure{n.Rule, n.Key}]
	}
	for i := range s.NotChecked {
		n := &s.NotChecked[i]
		n.Before = n.Failed && failed[figure{n.Rule, n.Key}]
	}
	s.judge(o)
}
