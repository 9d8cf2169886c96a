package catalog_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// longestCheck is how many lines a rule's check may have, to be read like the
// sentence that it enforces.
const longestCheck = 30

func TestChecksAreShort(t *testing.T) {
	files, err := filepath.Glob("../../family/*/*.go")
	require.NoError(t, err)
	checks := 0
	for _, name := range files {
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, name, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			name := ""
			switch n := n.(type) {
			case *ast.FuncDecl:
				if strings.HasPrefix(n.Name.Name, "check") {
					name = n.Name.Name
				}
			case *ast.KeyValueExpr:
				if key, ok := n.Key.(*ast.Ident); ok && key.Name == "Check" {
					name = "a literal check"
				}
			}
			if name == "" {
				return true
			}
			checks++
			lines := set.Position(n.End()).Line - set.Position(n.Pos()).Line + 1
			assert.LessOrEqual(t, lines, longestCheck, "%s in %s", name, set.Position(n.Pos()))
			return true
		})
	}
	assert.Greater(t, checks, 80)
}
