package editor

import (
	"fmt"
	"strings"

	"dryfit/cmd/dryfit/internal/report/markdown"
	"dryfit/rules/model/standards"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// standardsHelp is all that there is to say of a key of a standards file. What
// is in force is of the files as they are saved.
func (s *server) standardsHelp(d *document, key string) string {
	parts := spec.SplitKey(key)
	if len(parts) < 2 {
		return standardsKeys().meaning(pattern(key))
	}
	if standards.OwnLeg(key + ".") {
		return standardsKeys().meaning(strings.TrimSuffix(pattern(key), ".*"))
	}
	switch parts[0] {
	case "default":
		return s.help(d, defaulted(key))
	case "limit":
		return s.limitHelp(d, pattern(key), parts[1])
	case "severity":
		return s.severityHelp(d, pattern(key), parts[1])
	default:
		return standardsKeys().meaning(strings.TrimSuffix(pattern(key), ".*"))
	}
}

// limitHelp tells of a limit, what is built in and what is in force.
func (s *server) limitHelp(d *document, path, name string) string {
	text := standardsKeys().meaning(path)
	r, l, ok := limitOf(s.Rules, name)
	if !ok {
		return text
	}
	builtIn := inForce(r, l, standards.BuiltIn(), quantity.Metric)
	text += "\nBuilt in: " + builtIn + "\n"
	if now := inForce(r, l, d.standards(), quantity.Metric); now != builtIn {
		text += "\nIn force: " + now + "\n"
	}
	return text + "\n" + aboutRule(r)
}

// severityHelp tells of a rule's severity.
func (s *server) severityHelp(d *document, path, id string) string {
	text := standardsKeys().meaning(path)
	r := ruleOf(s.Rules, id)
	if r == nil {
		return text
	}
	text += "\nBuilt in: " + markdown.Code(r.Severity.String()) + ".\n"
	if set, ok := d.standards().Severity(id); ok {
		text += "\nIn force: " + markdown.Code(set.Word) + " " + markdown.Text(fmt.Sprintf("(%s:%d)", set.Origin.File, set.Origin.Line)) + ".\n"
	}
	return text + "\n" + aboutRule(r)
}
