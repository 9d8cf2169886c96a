package study

import (
	"errors"
	"fmt"
	"reflect"

	"dryfit/rules/review"
	"dryfit/spec"
	"dryfit/spec/edit"
)

// Written is the text of the spec with the values of an option, and with what follows:
// the author's own but for these, comments and all. Src is the text that the study is
// of. An error means that the option can't be made, or not be written in place.
func (s *Study) Written(src []byte, index int) ([]byte, error) {
	if index < 1 || index > s.Total {
		return nil, fmt.Errorf("there is no option %d; there are 1 to %d", index, s.Total)
	}
	if o := s.Option(index); o.Fault != nil {
		return nil, fmt.Errorf("option %d can't be made: %s: %s", index, o.Fault.Key, o.Fault.Text)
	}
	want := s.Tree(index)
	out, err := s.edited(src, want)
	if err != nil {
		return nil, err
	}
	if doc, problems := spec.Parse("", out); len(problems) > 0 || !reflect.DeepEqual(doc.Tree, want) {
		return nil, errors.New("the written spec does not read back as the option")
	}
	return out, nil
}

// edited is a text of the base changed in the keys in which another tree differs.
func (s *Study) edited(src []byte, want map[string]any) ([]byte, error) {
	var changes []edit.Change
	for _, key := range s.touched() {
		had, was := spec.Lookup(s.Base.Document.Tree, key)
		v, is := spec.Lookup(want, key)
		switch {
		case was && !is:
			var err error
			if src, err = edit.Remove(src, key); err != nil {
				return nil, err
			}
		case is && !(was && reflect.DeepEqual(v, had)):
			changes = append(changes, edit.Change{Key: key, Value: v})
		}
	}
	return edit.Apply(src, changes)
}

// touched are the keys that options change, or that go because others change.
func (s *Study) touched() []string {
	out := append([]string{}, s.drops...)
	for _, d := range s.Vary {
		out = append(out, d.Key)
	}
	for _, f := range s.follows {
		out = append(out, f.key)
	}
	return out
}

// Review checks a text that an option was written as, by the study's own rules and
// standards. Path is for messages only.
func (s *Study) Review(path string, text []byte) *review.Assessment {
	return review.Spec(path, text, s.options)
}
