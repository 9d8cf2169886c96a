package schema

import (
	"math"
	"unicode/utf8"

	"dryfit/spec"
)

// answer is what a sketch says of a value. Unsure is no answer: the validator
// gives one.
type answer uint8

const (
	unsure answer = iota
	yes
	no
)

// and is whether both hold.
func (a answer) and(b answer) answer {
	switch {
	case a == no || b == no:
		return no
	case a == unsure || b == unsure:
		return unsure
	default:
		return yes
	}
}

func is(holds bool) answer {
	if holds {
		return yes
	}
	return no
}

// sketch is a schema as far as it takes to say of most sound files that they
// are, without compiling it for the validator, which costs more than all else
// that is done with one file. It knows a closed set of keywords; with any other
// it is unsure of everything.
type sketch struct {
	unsure    bool
	never     bool   // nothing is sound
	kind      string // of "type"
	words     []any  // of "enum", or the one of "const"
	check     func(string) error
	numbers   []limit // of values that are numbers
	sizes     []limit // of texts and lists
	parts     map[string]*sketch
	closed    bool // no other parts
	required  []string
	items     *sketch
	all       []*sketch
	condition *sketch
	then      *sketch
	otherwise *sketch
}

// limit is one bound, included or not.
type limit struct {
	at       float64
	most     bool
	excluded bool
}

func (l limit) holds(x float64) bool {
	switch {
	case l.excluded && x == l.at:
		return false
	case l.most:
		return x <= l.at
	default:
		return x >= l.at
	}
}

// annotations say nothing of what is sound.
var annotations = map[string]bool{"title": true, "description": true, "examples": true, "$schema": true, "$id": true}

// sketchOf reads a schema, as encoding/json decodes one or our own code makes
// it.
func sketchOf(schema any) *sketch {
	if holds, ok := schema.(bool); ok {
		return &sketch{never: !holds}
	}
	table, ok := schema.(object)
	if !ok {
		return &sketch{unsure: true}
	}
	s := &sketch{}
	for keyword, v := range table {
		if !annotations[keyword] && !s.take(keyword, v) {
			return &sketch{unsure: true}
		}
	}
	return s
}

// take reads one keyword, and reports whether it knows it.
func (s *sketch) take(keyword string, v any) bool {
	switch keyword {
	case "type":
		s.kind, _ = v.(string)
		return s.kind != ""
	case "enum":
		s.words = anys(v)
		return s.words != nil
	case "const":
		s.words = []any{v}
	case "format":
		name, _ := v.(string)
		s.check = formats[name].check
		return s.check != nil
	case "properties":
		return s.takeParts(v)
	case "additionalProperties":
		s.closed = v == false
		return s.closed || v == true
	case "required":
		for _, name := range anys(v) {
			text, ok := name.(string)
			if !ok {
				return false
			}
			s.required = append(s.required, text)
		}
		return s.required != nil
	case "items":
		s.items = sketchOf(v)
	case "allOf":
		for _, part := range anys(v) {
			s.all = append(s.all, sketchOf(part))
		}
		return s.all != nil
	case "if":
		s.condition = sketchOf(v)
	case "then":
		s.then = sketchOf(v)
	case "else":
		s.otherwise = sketchOf(v)
	default:
		return s.takeLimit(keyword, v)
	}
	return true
}

func (s *sketch) takeParts(v any) bool {
	table, ok := v.(object)
	if !ok {
		return false
	}
	s.parts = make(map[string]*sketch, len(table))
	for name, part := range table {
		s.parts[name] = sketchOf(part)
	}
	return true
}

func (s *sketch) takeLimit(keyword string, v any) bool {
	at, ok := exactNumber(v)
	if !ok {
		return false
	}
	switch keyword {
	case "minimum":
		s.numbers = append(s.numbers, limit{at: at})
	case "maximum":
		s.numbers = append(s.numbers, limit{at: at, most: true})
	case "exclusiveMinimum":
		s.numbers = append(s.numbers, limit{at: at, excluded: true})
	case "minLength", "minItems":
		s.sizes = append(s.sizes, limit{at: at})
	case "maxLength", "maxItems":
		s.sizes = append(s.sizes, limit{at: at, most: true})
	default:
		return false
	}
	return true
}

// anys is a list, as it is decoded or as our own code makes it.
func anys(v any) []any {
	switch v := v.(type) {
	case []any:
		return v
	case []string:
		out := make([]any, len(v))
		for i, text := range v {
			out[i] = text
		}
		return out
	default:
		return nil
	}
}

// exactIn is where every whole number is a float64 of its own.
const exactIn = 1 << 53

// exactNumber is a number of JSON or of TOML, as far as it is exact.
func exactNumber(v any) (float64, bool) {
	switch v := v.(type) {
	case int:
		return float64(v), true
	case int64:
		return float64(v), -exactIn < v && v < exactIn
	case float64:
		return v, !math.IsNaN(v) && !math.IsInf(v, 0)
	default:
		return 0, false
	}
}

// says is whether a value is sound.
func (s *sketch) says(v any) answer { return s.beside(v, nil) }

// beside is says, of a value beside one that is known to be sound: tables and lists that
// the two share are not looked at again.
func (s *sketch) beside(v, sound any) answer {
	switch {
	case spec.Shared(v, sound):
		return yes
	case s.unsure:
		return unsure
	case s.never:
		return no
	}
	a := s.ofKind(v).and(s.ofWords(v))
	switch v := v.(type) {
	case string:
		if s.check != nil {
			a = a.and(is(s.check(v) == nil))
		}
		a = a.and(within(s.sizes, float64(utf8.RuneCountInString(v))))
	case int64, float64:
		x, ok := exactNumber(v)
		if !ok {
			return unsure
		}
		a = a.and(within(s.numbers, x))
	case bool:
	case []any:
		had, _ := sound.([]any)
		a = a.and(s.ofList(v, had))
	case map[string]any:
		had, _ := sound.(map[string]any)
		a = a.and(s.ofTable(v, had))
	default:
		return unsure
	}
	for _, part := range s.all {
		a = a.and(part.beside(v, sound))
	}
	return a.and(s.ofCondition(v))
}

func within(limits []limit, x float64) answer {
	for _, l := range limits {
		if !l.holds(x) {
			return no
		}
	}
	return yes
}

// ofKind is unsure of a whole number that is written as a fraction: JSON takes
// it for whole, and a spec must not.
func (s *sketch) ofKind(v any) answer {
	switch v.(type) {
	case string:
		return is(s.kind == "" || s.kind == "string")
	case bool:
		return is(s.kind == "" || s.kind == "boolean")
	case int64:
		return is(s.kind == "" || s.kind == "integer" || s.kind == "number")
	case float64:
		if s.kind == "integer" {
			return unsure
		}
		return is(s.kind == "" || s.kind == "number")
	case []any:
		return is(s.kind == "" || s.kind == "array")
	case map[string]any:
		return is(s.kind == "" || s.kind == "object")
	default:
		return unsure
	}
}

func (s *sketch) ofWords(v any) answer {
	if s.words == nil {
		return yes
	}
	x, numeric := exactNumber(v)
	for _, w := range s.words {
		if y, ok := exactNumber(w); ok && numeric && x == y {
			return yes
		}
		if text, ok := w.(string); ok && v == any(text) {
			return yes
		}
	}
	return no
}

func (s *sketch) ofList(list, sound []any) answer {
	a := within(s.sizes, float64(len(list)))
	for i := 0; s.items != nil && i < len(list) && a == yes; i++ {
		var had any
		if i < len(sound) {
			had = sound[i]
		}
		a = a.and(s.items.beside(list[i], had))
	}
	return a
}

func (s *sketch) ofTable(table, sound map[string]any) answer {
	for _, name := range s.required {
		if _, given := table[name]; !given {
			return no
		}
	}
	a := yes
	for name, v := range table {
		switch part := s.parts[name]; {
		case part != nil:
			a = a.and(part.beside(v, sound[name]))
		case s.closed:
			return no
		}
	}
	return a
}

func (s *sketch) ofCondition(v any) answer {
	if s.condition == nil {
		return yes
	}
	branch := s.then
	switch s.condition.says(v) {
	case unsure:
		return unsure
	case no:
		branch = s.otherwise
	}
	if branch == nil {
		return yes
	}
	return branch.says(v)
}
