package catalog_test

import (
	"bufio"
	"go/ast"
	"go/token"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const module = "dryfit/"

// row is one line of the table of imports in DEVELOPERS.md: packages, and what
// they may import of the module.
type row struct {
	packages string
	allowed  []string
}

// within reports whether a package is one that a pattern stands for: the package
// itself, or any below a trailing *.
func within(pattern, pkg string) bool {
	below, any := strings.CutSuffix(pattern, "*")
	return pattern == pkg || any && strings.HasPrefix(pkg, below)
}

var code = regexp.MustCompile("`([^`]+)`")

func names(cell string) (out []string) {
	for _, m := range code.FindAllStringSubmatch(cell, -1) {
		out = append(out, m[1])
	}
	return out
}

// tableOfImports reads the table from DEVELOPERS.md.
func tableOfImports(t *testing.T) (rows []row) {
	f, err := os.Open("../../../DEVELOPERS.md")
	require.NoError(t, err)
	defer f.Close()
	inside := false
	for lines := bufio.NewScanner(f); lines.Scan(); {
		line := lines.Text()
		cells := strings.Split(line, "|")
		switch {
		case line == "<!-- imports -->":
			inside = true
		case inside && len(cells) != 5:
			return rows
		case inside && len(names(cells[1])) == 1:
			rows = append(rows, row{names(cells[1])[0], names(cells[3])})
		}
	}
	return rows
}

// importsOf lists what each package of the module imports of it, tests left out.
func importsOf(t *testing.T) map[string][]string {
	imports := map[string][]string{}
	sources(t, func(pkg string, file *ast.File, _ *token.FileSet) {
		if imports[pkg] == nil {
			imports[pkg] = []string{} // imports none of the module
		}
		for _, i := range file.Imports {
			name, err := strconv.Unquote(i.Path.Value)
			require.NoError(t, err)
			if own, ok := strings.CutPrefix(name, module); ok {
				imports[pkg] = append(imports[pkg], own)
			}
		}
	})
	return imports
}

// rowOf is the row of a package: of those that it is within, the longest.
func rowOf(rows []row, pkg string) int {
	at := -1
	for i, r := range rows {
		if within(r.packages, pkg) && (at < 0 || len(r.packages) > len(rows[at].packages)) {
			at = i
		}
	}
	return at
}

func TestImportsPointDown(t *testing.T) {
	rows, imports := tableOfImports(t), importsOf(t)
	require.Greater(t, len(rows), 20)
	require.Greater(t, len(imports), 40)
	for pkg, list := range imports {
		at := rowOf(rows, pkg)
		if !assert.GreaterOrEqual(t, at, 0, "%s has no row in the table of imports", pkg) {
			continue
		}
		for _, other := range list {
			allowed := slices.ContainsFunc(rows[at].allowed, func(p string) bool { return within(p, other) })
			assert.True(t, allowed, "%s may not import %s", pkg, other)
			assert.LessOrEqual(t, rowOf(rows, other), at, "%s imports %s, which stands above it", pkg, other)
		}
	}
}

// A row that no package stands in, or that names a package that is not there,
// misleads its reader.
func TestTheTableOfImportsIsInUse(t *testing.T) {
	rows, imports := tableOfImports(t), importsOf(t)
	for i, r := range rows {
		used := false
		for pkg := range imports {
			used = used || rowOf(rows, pkg) == i
		}
		assert.True(t, used, "no package stands in the row of %s", r.packages)
		for _, allowed := range r.allowed {
			found := false
			for pkg := range imports {
				found = found || within(allowed, pkg)
			}
			assert.True(t, found, "the row of %s names %s, which is not there", r.packages, allowed)
		}
	}
}
