package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// mutant is one change of one file.
type mutant struct {
	file         string
	from, end    int // of what is replaced, in bytes
	line, column int
	was, to      string
}

func (m mutant) place() string { return fmt.Sprintf("%s:%d:%d", m.file, m.line, m.column) }

// String is the mutant as a report prints it: its place, the new text and the old.
func (m mutant) String() string {
	return fmt.Sprintf("%s: %s for %s", m.place(), oneLine(m.to), oneLine(m.was))
}

func oneLine(s string) string {
	if s = strings.Join(strings.Fields(s), " "); s == "" {
		return "nothing"
	}
	return s
}

// mutantsOf are all of the files below some folders, but of those that serve tests or name works.
func mutantsOf(roots []string) (all []mutant, err error) {
	for _, root := range roots {
		err = filepath.WalkDir(root, func(path string, _ fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || forTests(path) {
				return err
			}
			found, err := mutantsIn(path)
			all = append(all, found...)
			return err
		})
		if err != nil {
			return nil, err
		}
	}
	return all, nil
}

// forTests reports whether a file serves tests alone, or holds nothing but names.
func forTests(path string) bool {
	return strings.Contains(path, "/cite/") || strings.Contains(path, "/framecases/") || strings.Contains(path, "/calculix/") || strings.Contains(path, "/outline/")
}

var operators = map[token.Token][]string{
	token.ADD: {"-"}, token.SUB: {"+"}, token.MUL: {"/"}, token.QUO: {"*"},
	token.LSS: {"<=", ">="}, token.LEQ: {"<", ">"}, token.GTR: {">=", "<="}, token.GEQ: {">", "<"},
	token.EQL: {"!="}, token.NEQ: {"=="}, token.LAND: {"||"}, token.LOR: {"&&"},
}

func mutantsIn(path string) (found []mutant, err error) {
	src, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, path, src, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	add := func(from token.Pos, length int, to string) {
		at := set.Position(from)
		found = append(found, mutant{path, at.Offset, at.Offset + length, at.Line, at.Column, string(src[at.Offset : at.Offset+length]), to})
	}
	whole := func(n ast.Node, to func(was string) string) {
		length := int(n.End() - n.Pos())
		at := set.Position(n.Pos()).Offset
		add(n.Pos(), length, to(string(src[at:at+length])))
	}
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.BinaryExpr:
			for _, to := range operators[n.Op] {
				add(n.OpPos, len(n.Op.String()), to)
			}
		case *ast.BasicLit:
			for _, to := range numbers(n) {
				add(n.Pos(), len(n.Value), to)
			}
		case *ast.Ident:
			if to := map[string]string{"min": "max", "max": "min"}[n.Name]; to != "" {
				add(n.Pos(), len(n.Name), to)
			}
		case *ast.IfStmt:
			whole(n.Cond, func(was string) string { return "!(" + was + ")" })
		case *ast.AssignStmt:
			if n.Tok != token.DEFINE {
				whole(n, func(string) string { return "" })
			}
		}
		return true
	})
	return found, nil
}

// numbers are others in place of one.
func numbers(n *ast.BasicLit) []string {
	switch n.Kind {
	case token.INT:
		if v, err := strconv.Atoi(n.Value); err == nil {
			return []string{strconv.Itoa(v + 1)}
		}
	case token.FLOAT:
		return []string{"(1.1*" + n.Value + ")"}
	}
	return nil
}
