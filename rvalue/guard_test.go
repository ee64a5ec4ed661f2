package rvalue_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/constant"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

const (
	modulePath = "github.com/coldseam/coldseam"
	guarded    = modulePath + "/rvalue" // its float64 types are the quantities
)

// listed is what go list tells of a package.
type listed struct {
	ImportPath, Dir, Export string
	GoFiles                 []string
	Module                  *struct{ Path string }
	Error                   *struct{ Err string }
}

// TestQuantitiesAreGuarded walks the shipped code of the whole module and
// fails where the type system would let a unit be forgotten: a plain constant
// that silently becomes a quantity (var r rvalue.Resistance = 13 would be RSI
// 13), and a product or ratio of two quantities of one type, which keeps the
// type though it is no such quantity.
func TestQuantitiesAreGuarded(t *testing.T) {
	g := newGuard(t)
	checked := 0
	for _, p := range g.packages {
		if p.Module == nil || p.Module.Path != modulePath || p.ImportPath == guarded {
			continue
		}
		var files []*ast.File
		for _, name := range p.GoFiles {
			f, err := parser.ParseFile(g.fset, filepath.Join(p.Dir, name), nil, parser.SkipObjectResolution)
			if err != nil {
				t.Logf("left out, does not parse: %v", err)
				files = nil
				break
			}
			files = append(files, f)
		}
		if files == nil {
			continue
		}
		found, err := g.check(p.ImportPath, files)
		if err != nil {
			t.Logf("left out, does not compile: %s: %v", p.ImportPath, err)
			continue
		}
		checked++
		for _, f := range found {
			t.Error(f)
		}
	}
	if checked == 0 {
		t.Error("no package compiles, none was checked")
	}
}

// guard type-checks packages from source, against the compiled form of what they import.
type guard struct {
	fset     *token.FileSet
	packages []listed
	importer types.Importer
}

func newGuard(t *testing.T) *guard {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), "go", "list", "-e", "-export", "-deps", "-json=ImportPath,Dir,Export,GoFiles,Module,Error", modulePath+"/...")
	cmd.Stderr = io.Discard // what does not compile is told by its missing Export
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Skipf("no go command to list the packages with: %v", err)
	}
	g := &guard{fset: token.NewFileSet()}
	export := map[string]string{}
	for dec := json.NewDecoder(out); ; {
		var p listed
		if err := dec.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		g.packages = append(g.packages, p)
		export[p.ImportPath] = p.Export
	}
	_ = cmd.Wait() // it fails when any package does; the others are listed all the same
	if export[guarded] == "" {
		t.Fatalf("%s is not listed", guarded)
	}
	g.importer = importer.ForCompiler(g.fset, "gc", func(path string) (io.ReadCloser, error) {
		if export[path] == "" {
			return nil, fmt.Errorf("%s does not compile", path)
		}
		return os.Open(export[path])
	})
	return g
}

// check returns what is wrong in a package, in the order of its source.
func (g *guard) check(path string, files []*ast.File) ([]string, error) {
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}}
	conf := types.Config{Importer: g.importer}
	if _, err := conf.Check(path, g.fset, files, info); err != nil {
		return nil, err
	}
	var found []string
	blame := func(n ast.Node, format string, args ...any) {
		found = append(found, fmt.Sprintf("%s: ", g.fset.Position(n.Pos()))+fmt.Sprintf(format, args...))
	}
	for _, f := range files {
		ast.PreorderStack(f, nil, func(n ast.Node, stack []ast.Node) bool {
			switch n := n.(type) {
			case *ast.BinaryExpr:
				if n.Op != token.MUL && n.Op != token.QUO || quantityName(info, n) == "" || info.Types[n].Value != nil {
					break
				}
				if plainNumber(info, n.X) && n.Op == token.QUO {
					blame(n, "a number over a %s keeps that type, use its method or float64(…)", quantityName(info, n))
				} else if variable(info, n.X) && variable(info, n.Y) && !(n.Op == token.QUO && inFloat64(info, stack)) {
					blame(n, "a %s %s a %s keeps that type, use SI() or float64(…)", quantityName(info, n), n.Op, quantityName(info, n))
				}
			case *ast.AssignStmt:
				if (n.Tok == token.MUL_ASSIGN || n.Tok == token.QUO_ASSIGN) && quantityName(info, n.Lhs[0]) != "" && variable(info, n.Rhs[0]) {
					blame(n, "%s of two %s keeps the type", n.Tok, quantityName(info, n.Lhs[0]))
				}
			}
			if e, ok := n.(ast.Expr); ok && quantityName(info, e) != "" && plainNumber(info, e) {
				if constant.Sign(info.Types[e].Value) != 0 && !scales(info, stack) {
					blame(e, "the plain number %s becomes a %s here, multiply it by a unit", info.Types[e].Value, quantityName(info, e))
				}
				return false
			}
			return true
		})
	}
	return found, nil
}

// quantityName returns the name of e's type if that is a quantity.
func quantityName(info *types.Info, e ast.Expr) string {
	tv := info.Types[e]
	named, ok := types.Unalias(tv.Type).(*types.Named)
	if !ok || !tv.IsValue() || named.Obj().Pkg() == nil || named.Obj().Pkg().Path() != guarded {
		return ""
	}
	if b, ok := named.Underlying().(*types.Basic); !ok || b.Kind() != types.Float64 {
		return ""
	}
	return named.Obj().Name()
}

// variable tells that e is computed when the program runs.
func variable(info *types.Info, e ast.Expr) bool { return info.Types[e].Value == nil }

// plainNumber tells that e is a constant made of nothing but plain numbers.
func plainNumber(info *types.Info, e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.BasicLit:
		return true
	case *ast.ParenExpr:
		return plainNumber(info, e.X)
	case *ast.UnaryExpr:
		return plainNumber(info, e.X)
	case *ast.BinaryExpr:
		return plainNumber(info, e.X) && plainNumber(info, e.Y)
	case *ast.SelectorExpr:
		return plainNumber(info, e.Sel)
	case *ast.Ident:
		c, ok := info.Uses[e].(*types.Const)
		if !ok {
			return false
		}
		b, ok := c.Type().(*types.Basic)
		return ok && b.Info()&types.IsUntyped != 0
	}
	return false
}

// scales tells that the innermost node of a stack, parentheses apart, is a
// product or ratio, or a conversion that says what it does.
func scales(info *types.Info, stack []ast.Node) bool {
	switch p := outer(stack).(type) {
	case *ast.BinaryExpr:
		return p.Op == token.MUL || p.Op == token.QUO
	case *ast.AssignStmt:
		return p.Tok == token.MUL_ASSIGN || p.Tok == token.QUO_ASSIGN
	case *ast.CallExpr:
		return info.Types[p.Fun].IsType()
	}
	return false
}

// inFloat64 tells that the innermost node of a stack is the conversion float64(…).
func inFloat64(info *types.Info, stack []ast.Node) bool {
	call, ok := outer(stack).(*ast.CallExpr)
	return ok && info.Types[call.Fun].IsType() && types.Identical(info.Types[call.Fun].Type, types.Typ[types.Float64])
}

func outer(stack []ast.Node) ast.Node {
	for i := len(stack) - 1; i >= 0; i-- {
		if _, ok := stack[i].(*ast.ParenExpr); !ok {
			return stack[i]
		}
	}
	return nil
}
