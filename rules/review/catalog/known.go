package catalog

import (
	"sync"

	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/schema"
	"dryfit/spec"
)

// Known is what a standards file may speak of.
func Known() schema.Known {
	var k schema.Known
	for _, r := range Rules() {
		k.Rules = append(k.Rules, schema.KnownRule{ID: r.ID, Title: r.Title, Refers: r.Severity == engine.Refer})
		for _, l := range r.Limits {
			k.Limits = append(k.Limits, schema.KnownLimit{Name: r.Full(l.Key), Title: l.Title, Unit: l.Value.Unit})
		}
	}
	return k
}

// StandardsShape checks standards files. It is compiled once: that takes far
// longer than to check a file.
var StandardsShape = sync.OnceValue(func() *schema.Shape { return schema.StandardsShape(Known()) })

// ReadStandards reads the bytes of a standards file. Path is for messages and
// for the origin of what the file sets.
func ReadStandards(path string, src []byte) (*standards.Layer, []spec.Problem) {
	doc, problems := spec.Parse(path, src)
	if len(problems) > 0 {
		return nil, problems
	}
	if _, problem := spec.Format(doc); problem != nil {
		return nil, []spec.Problem{*problem}
	}
	if problems := StandardsShape().Check(doc); len(problems) > 0 {
		return nil, problems
	}
	return standards.Read(doc, ranges(), ids())
}

func ids() (out []string) {
	for _, r := range Rules() {
		out = append(out, r.ID)
	}
	return out
}

func ranges() map[string]standards.Range {
	out := map[string]standards.Range{}
	for _, r := range Rules() {
		for _, l := range r.Limits {
			out[r.Full(l.Key)] = standards.Range{Unit: l.Value.Unit, Lowest: l.Lowest, Most: l.Most}
		}
	}
	return out
}
