//go:build !wasm

package calculator

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/app/view"
)

func TestLookShowsEveryBlock(t *testing.T) {
	shown := map[string]bool{}
	for _, b := range view.Specimens() {
		shown[reflect.TypeOf(b).Name()] = true
	}
	files, err := filepath.Glob("../../calc/report/*.go")
	require.NoError(t, err)
	found := 0
	for _, file := range files {
		source, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		require.NoError(t, err)
		for _, d := range source.Decls {
			f, ok := d.(*ast.FuncDecl)
			if !ok || f.Recv == nil || f.Name.Name != "block" {
				continue
			}
			found++
			name := f.Recv.List[0].Type.(*ast.Ident).Name
			assert.True(t, shown[name], "app/view/specimens.go has no piece for report.%s", name)
		}
	}
	assert.Greater(t, found, 10, "blocks of a report")
}

func TestLookShowsEveryState(t *testing.T) {
	page, err := lookHTML("")
	require.NoError(t, err)
	for _, piece := range []string{
		`value="8Omm"`, `class="problem"`, `class="suggest"`, `class="rows boxes`, `class="rows table`, `class="rows stack`,
		`class="answer leave"`, `class="answer change"`, `class="answer more"`, `class="answer hopeless"`, `class="answer either"`,
		`class="note tip"`, `class="note doubt"`, `class="note caution"`, `cards-if-narrow`, `class="keep"`, `class="log"`, `class="bar"`,
	} {
		assert.True(t, strings.Contains(page, piece), "nothing with %s", piece)
	}
}
