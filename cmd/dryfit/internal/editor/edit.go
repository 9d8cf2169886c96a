package editor

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"dryfit/spec"
)

// change puts a text in the place of a range of bytes.
type change struct {
	at   spec.Range
	text string
}

func (c change) apply(text string) string { return text[:c.at.Start] + c.text + text[c.at.End:] }

// set is the change of a spec's text that gives a key a value: in the place of
// the value that is written, or as a new line of its table, or in a new table.
// The change is tried: it reports false where the text with it does not say the
// same as before but for this key.
func set(d *spec.Document, text, key string, value any) (change, bool) {
	written, ok := toml(value)
	if !ok {
		return change{}, false
	}
	c, ok := place(outlineOf(text), key, written)
	if !ok {
		return change{}, false
	}
	want, ok := spec.With(d.Tree, key, value)
	if !ok {
		return change{}, false
	}
	got, problems := spec.Parse(d.Path, []byte(c.apply(text)))
	return c, len(problems) == 0 && reflect.DeepEqual(got.Tree, want)
}

// toml is a value as TOML writes it.
func toml(value any) (string, bool) {
	switch v := value.(type) {
	case string:
		return quote(v), true
	case bool:
		return strconv.FormatBool(v), true
	case int64:
		return strconv.FormatInt(v, 10), true
	case float64:
		text := strconv.FormatFloat(v, 'f', -1, 64)
		if !strings.Contains(text, ".") {
			text += ".0"
		}
		return text, true
	default:
		return "", false
	}
}

// quote writes a basic string of TOML.
func quote(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < ' ' || r == 0x7f:
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// place is where a key's value is put.
func place(o *outline, key, value string) (change, bool) {
	for _, e := range o.entries {
		if e.key == key && e.value.End > e.value.Start {
			return change{e.value, value}, true
		}
	}
	parts := spec.SplitKey(key)
	name := spec.Key(parts[len(parts)-1])
	table := strings.TrimSuffix(strings.TrimSuffix(key, name), ".")
	for i, c := range o.parts {
		if c.key == table && c.kind != array && (table != "" || i == 0) {
			return o.into(i, name, value)
		}
	}
	if c, ok := o.besideDotted(table, name, value); ok {
		return c, true
	}
	parent := ""
	if n := len(parts); n > 2 {
		parent = strings.TrimSuffix(table, "."+spec.Key(parts[n-2]))
	}
	for i, c := range o.parts {
		if parent != "" && c.key == parent && c.kind == inline {
			return o.into(i, spec.Key(parts[len(parts)-2]), "{ "+name+" = "+value+" }")
		}
	}
	return o.append(table, name, value), true
}

// into adds a key to a container.
func (o *outline) into(in int, name, value string) (change, bool) {
	c := o.parts[in]
	if c.kind == inline {
		return o.intoInline(c, name, value)
	}
	last := -1
	for i, e := range o.entries {
		if e.in == in {
			last = i
		}
	}
	if last < 0 {
		if in == 0 {
			return change{}, false // no spec starts without its version
		}
		return o.afterLine(c.inside.Start, name+" = "+value), true
	}
	return o.afterLine(o.entries[last].value.End, o.aligned(o.entries[last], name)+"= "+value), true
}

// aligned is a name with blanks up to the equals sign, in line with that of
// another key.
func (o *outline) aligned(with entry, name string) string {
	if with.equals < 0 {
		return name + " "
	}
	line := strings.LastIndexAny(o.text[:with.equals], "\r\n") + 1
	indent := o.text[line:with.parts[0].Start]
	if strings.TrimSpace(indent) != "" {
		indent = ""
	}
	return fmt.Sprintf("%s%-*s", indent, max(with.equals-with.parts[0].Start, len(name)+1), name)
}

// afterLine is a new line after the one that an offset is in.
func (o *outline) afterLine(offset int, line string) change {
	newline := o.newline()
	end := offset + strings.IndexAny(o.text[offset:]+"\n", "\r\n")
	return change{spec.Range{Start: end, End: end}, newline + line}
}

func (o *outline) newline() string {
	if strings.Contains(o.text, "\r\n") {
		return "\r\n"
	}
	return "\n"
}

func (o *outline) intoInline(c container, name, value string) (change, bool) {
	if !c.closed {
		return change{}, false
	}
	inside := o.text[c.inside.Start:c.inside.End]
	text := strings.TrimRight(inside, " \t\r\n,")
	at := c.inside.Start + len(text)
	if strings.TrimSpace(text) == "" {
		return change{c.inside, " " + name + " = " + value + " "}, true
	}
	return change{spec.Range{Start: at, End: at}, ", " + name + " = " + value}, true
}

// besideDotted adds a key to a table that is written in dotted keys.
func (o *outline) besideDotted(table, name, value string) (change, bool) {
	for i := len(o.entries) - 1; i >= 0; i-- {
		e := o.entries[i]
		for k, key := range e.keys {
			if key != table || k == len(e.keys)-1 {
				continue
			}
			dotted := o.text[e.parts[0].Start:e.parts[k].End] + "." + name
			if o.parts[e.in].kind == inline {
				return o.intoInline(o.parts[e.in], dotted, value)
			}
			return o.afterLine(e.value.End, o.aligned(e, dotted)+"= "+value), true
		}
	}
	return change{}, false
}

// append adds a table at the end of the text.
func (o *outline) append(table, name, value string) change {
	newline := o.newline()
	end := len(o.text)
	lead := newline
	if !strings.HasSuffix(o.text, "\n") {
		lead += newline
	}
	return change{spec.Range{Start: end, End: end}, lead + "[" + table + "]" + newline + name + " = " + value + newline}
}
