package options

import (
	"bytes"
	"encoding/json"
)

// Differs says in what two parts are not of one study; "" where they are.
func (p *StudyPart) Differs(o *StudyPart) string { return p.head.differs(o.head) }

// DiffersFrom says in what the study that the part is of is another than this one.
func (p *StudyPart) DiffersFrom(s Study) string { return p.head.differs(s.head()) }

func (h jsonStudyHead) differs(o jsonStudyHead) string {
	for _, c := range []struct {
		what string
		a, b any
	}{
		{"its spec", h.Spec, o.Spec},
		{"its standards", h.Standards, o.Standards},
		{"its date", h.On, o.On},
		{"--strict", h.Strict, o.Strict},
		{"--search", h.Search, o.Search},
		{"what is varied", h.Vary, o.Vary},
		{"what is weighed", h.Weighed, o.Weighed},
		{"the rest of its first line", h, o},
	} {
		a, err := json.Marshal(c.a)
		b, fault := json.Marshal(c.b)
		if err != nil || fault != nil || !bytes.Equal(a, b) {
			return c.what
		}
	}
	return ""
}
