package catalog_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/result"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
)

// sources calls f with each file of the module that is not a test's, and with
// the folder that it is in.
func sources(t *testing.T, f func(folder string, file *ast.File, set *token.FileSet)) {
	root := filepath.Join("..", "..", "..")
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && path != root && (strings.HasPrefix(d.Name(), ".") || d.Name() == "testdata"):
			return fs.SkipDir
		case d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go"):
			return nil
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
		require.NoError(t, err)
		rel, err := filepath.Rel(root, filepath.Dir(path))
		require.NoError(t, err)
		f(filepath.ToSlash(rel), file, set)
		return nil
	})
	require.NoError(t, err)
}

// bound are the names by which the values of a spec are had, and those by which
// a value is said to come from keys, with the packages that may use them.
var bound = map[string][]string{
	"spec.Bind": {"rules/model/layout"}, "spec.Spec": {"rules/model/layout"}, "spec.SI": {"rules/model/layout"}, "spec.Ascending": {"rules/model/layout"},
	"spec.Field": {"rules/model/layout"}, "spec.List": {"rules/model/layout"}, "spec.Table": {"rules/model/layout"},
	"record.Stated": {"spec"}, "record.Recorder": {"spec", "rules/model/layout"},
	"record.Of": {"rules/model/layout"}, "record.Named": {"rules/model/layout"},
}

// No package above the layout has the values of a spec: it reads what the layout
// has resolved, which records the keys.
func TestOnlyTheLayoutReadsTheSpec(t *testing.T) {
	used := map[string]bool{}
	sources(t, func(folder string, file *ast.File, set *token.FileSet) {
		ast.Inspect(file, func(n ast.Node) bool {
			sel, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			pkg, ok := sel.X.(*ast.Ident)
			if !ok {
				return true
			}
			name := pkg.Name + "." + sel.Sel.Name
			if allowed, listed := bound[name]; listed {
				used[name] = true
				assert.Contains(t, allowed, folder, "%s: %s", set.Position(n.Pos()), name)
			}
			return true
		})
	})
	for name := range bound {
		assert.True(t, used[name], "nothing uses %s", name)
	}
}

// keyed are the fields of literals that hold keys of a spec.
var keyed = map[string]bool{"At": true, "Related": true, "Needs": true, "Key": true}

var dotted = regexp.MustCompile(`^[a-z_]+(\.[a-z_-]+)+$`)

// A key that a rule, a figure or a result names is one of the format, or of the
// calculation sheet, or the name of a rule or of its limit.
func TestNamedKeysAreThere(t *testing.T) {
	tables, others := map[string]bool{}, known(t)
	for _, key := range spec.Keys() {
		table, _, _ := strings.Cut(key, ".")
		tables[table] = true
	}
	there := func(key string) bool {
		_, ok := spec.ID(key)
		return ok || others[key]
	}
	sources(t, func(folder string, file *ast.File, set *token.FileSet) {
		family := strings.HasPrefix(folder, "rules/family/")
		if !family && !strings.HasPrefix(folder, "rules/model/layout") && !strings.HasPrefix(folder, "rules/model/result") && folder != "rules/engine" {
			return
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if field, ok := n.(*ast.KeyValueExpr); ok && family {
				if name, ok := field.Key.(*ast.Ident); ok && keyed[name.Name] {
					for _, text := range literals(field.Value) {
						limit := name.Name == "Key" && !strings.Contains(text, ".") // of a rule
						assert.True(t, limit || there(text), "%s: %s", set.Position(n.Pos()), text)
					}
				}
			}
			for _, text := range literal(n) {
				table, _, _ := strings.Cut(text, ".")
				if dotted.MatchString(text) && tables[table] {
					assert.True(t, there(text), "%s: %s", set.Position(n.Pos()), text)
				}
			}
			return true
		})
	})
	for _, d := range standards.BuiltIn().Defaults() {
		assert.True(t, there(d.Key), "default %s", d.Key)
	}
}

// known are the keys of the calculation sheets of all ceilings, and the names of
// rules and limits.
func known(t *testing.T) map[string]bool {
	out := map[string]bool{}
	for _, r := range catalog.Rules() {
		out[r.ID] = true
		for _, l := range r.Limits {
			out[r.Full(l.Key)] = true
		}
	}
	for _, name := range sample.Names(t) {
		results := result.Of(sample.Ceiling(t, name, nil), carrying.Search{}, nil)
		for _, f := range results.Figures() {
			out[f.Key] = true
		}
		for _, table := range results.Tables() {
			out[table.Key] = true
		}
	}
	return out
}

// literals are the strings that an expression holds; of a key that is put
// together, nothing.
func literals(e ast.Expr) (out []string) {
	ast.Inspect(e, func(n ast.Node) bool {
		if _, call := n.(*ast.CallExpr); call {
			return false
		}
		if _, sum := n.(*ast.BinaryExpr); sum {
			return false
		}
		if inner, ok := n.(*ast.KeyValueExpr); ok {
			if name, ok := inner.Key.(*ast.Ident); ok && !keyed[name.Name] {
				return false
			}
		}
		out = append(out, literal(n)...)
		return true
	})
	return slices.DeleteFunc(out, func(text string) bool { return text == "" })
}

func literal(n ast.Node) []string {
	lit, ok := n.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return nil
	}
	text, err := strconv.Unquote(lit.Value)
	if err != nil {
		return nil
	}
	return []string{text}
}
