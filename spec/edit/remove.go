package edit

import (
	"bytes"
	"fmt"
	"reflect"

	"dryfit/spec"
)

// Remove returns src without a key that has a line, or lines, of its own, and without
// the comment behind it. An error means that nothing may be written: the document
// can't be read, the key is not in it, or stands among others on a line.
func Remove(src []byte, key string) ([]byte, error) {
	doc, err := read(src)
	if err != nil {
		return nil, err
	}
	name, named := doc.KeyRange(key)
	value, valued := doc.ValueRange(key)
	if !named || !valued {
		return nil, fmt.Errorf("%s is not written in one place", key)
	}
	mark := len(src) - len(doc.Source) // of the byte order, which the document leaves off
	start, end := lineStart(doc.Source, name.Start), len(doc.Source)
	if n := bytes.IndexByte(doc.Source[value.End:], '\n'); n >= 0 {
		end = value.End + n + 1
	}
	out := append(bytes.Clone(src[:mark+start]), src[mark+end:]...)
	again, err := read(out)
	if err != nil || !reflect.DeepEqual(again.Tree, without(doc.Tree, spec.SplitKey(key))) {
		return nil, fmt.Errorf("%s is not on a line of its own, and can't be taken out in place", key)
	}
	return out, nil
}

// without is a tree without a key of its tables; the tree itself is left as it was.
func without(tree map[string]any, path []string) map[string]any {
	out := make(map[string]any, len(tree))
	for name, v := range tree {
		switch in, isTable := v.(map[string]any); {
		case name != path[0]:
			out[name] = v
		case len(path) > 1 && isTable:
			out[name] = without(in, path[1:])
		case len(path) > 1:
			out[name] = v
		}
	}
	return out
}
