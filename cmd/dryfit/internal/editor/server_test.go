package editor

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/editor/outline"
	"dryfit/cmd/dryfit/internal/editor/wire"
	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec"
)

const uri = "file:///rooms/room.ceiling.toml"

// demo is a ceiling with every optional table.
func demo(t testing.TB) string { return string(sample.Source(t, sample.ReadingRoom)) }

func edited(t testing.TB, text, old, new string) string {
	require.Contains(t, text, old)
	return strings.Replace(text, old, new, 1)
}

func ofCode(list []diagnostic, code string) []diagnostic {
	return slices.DeleteFunc(slices.Clone(list), func(d diagnostic) bool { return d.Code != code })
}

// One whole conversation: open, look, ask, change as offered, and the finding is
// gone.
func TestConversation(t *testing.T) {
	for _, c := range []struct {
		name string
		make func(string) string
	}{
		{"LF", func(s string) string { return s }},
		{"CRLF", func(s string) string { return strings.ReplaceAll(s, "\n", "\r\n") }},
		{"byte order mark", func(s string) string { return outline.ByteOrderMark + s }},
		{"characters outside the basic plane", func(s string) string {
			return strings.Replace(s, `title    = "Reading room`, `title    = "𝕽 🪵 room`, 1)
		}},
		{"an inline table after such characters", func(s string) string {
			return strings.Replace(s, "[rib]\n", "[rib] # 🪵\n", 1)
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := c.make(edited(t, demo(t), `lamination   = "6mm"`, `lamination   = "40mm"`))
			e := connect(t, options()).greet(everything)
			e.open(uri, text)
			found := e.found(uri, 1)
			bent := ofCode(found, "bend.lamination")
			require.Len(t, bent, 1)
			assert.Equal(t, asWarning, bent[0].Severity)
			assert.Equal(t, "dryfit", bent[0].Source)
			assert.Equal(t, span{placeOf(t, text, `"40mm"`, 0), placeOf(t, text, `"40mm"`, 6)}, bent[0].Range)
			assert.Contains(t, bent[0].Message, "query: rib.lamination: ")
			assert.Contains(t, bent[0].Message, "\npasses with rib.lamination = ")
			assert.Contains(t, bent[0].Message, "\nbasis: ")

			h := request[hover](e, "textDocument/hover", at(uri, placeOf(t, text, "lamination ", 3)))
			assert.Equal(t, "markdown", h.Contents.Kind)
			assert.Contains(t, h.Contents.Value, "`rib.lamination`")

			actions := request[[]codeAction](e, "textDocument/codeAction", fields{
				"textDocument": fields{"uri": uri}, "range": bent[0].Range, "context": fields{"diagnostics": bent},
			})
			require.NotEmpty(t, actions)
			i := slices.IndexFunc(actions, func(a codeAction) bool { return a.Diagnostics[0].Code == "bend.lamination" })
			require.GreaterOrEqual(t, i, 0)
			assert.Equal(t, quickFix, actions[i].Kind)
			edit := actions[i].Edit.DocumentChanges[0]
			assert.Equal(t, 1, edit.Document.Version)
			text = apply(t, text, edit.Edits, false)
			e.change(uri, 2, text)
			assert.Empty(t, ofCode(e.found(uri, 2), "bend.lamination"))
			e.leave()
			assert.Empty(t, e.log.text())
		})
	}
}

// apply makes edits as an editor does, counting from the back.
func apply(t *testing.T, text string, edits []textEdit, bytes bool) string {
	l := newLined(text, bytes)
	require.Len(t, edits, 1)
	from, to := l.offset(edits[0].Range.Start), l.offset(edits[0].Range.End)
	return text[:from] + edits[0].NewText + text[to:]
}

func TestSeverities(t *testing.T) {
	text := demo(t) + "\n[[accept]]\nrule = \"strap.setting\"\nreason = \"tested\"\nby = \"someone\"\nuntil = 2027-01-01\n"
	text = edited(t, text, `lamination   = "6mm"`, `lamination   = "40mm"`)
	assessment := review.Spec("x", []byte(text), review.Options{
		Rules: options().Rules, Standards: standards.BuiltIn(), On: "2026-11-25", Offers: true,
	})
	require.Empty(t, assessment.Problems)
	e := connect(t, options()).greet(everything)
	e.open(uri, text)
	found := e.found(uri, 1)
	require.Len(t, found, len(assessment.Findings))
	seen := map[int]bool{}
	for i, f := range assessment.Findings {
		want := map[engine.Severity]int{engine.Hold: 1, engine.Query: 2, engine.Note: 3, engine.Refer: 3}[f.Severity]
		if f.Accepted != nil {
			want = 4
			assert.Contains(t, found[i].Message, "\naccepted: tested, by someone, until 2027-01-01")
		}
		if f.Severity == engine.Refer {
			assert.True(t, strings.HasPrefix(found[i].Message, "referred: "), found[i].Message)
		}
		assert.Equal(t, want, found[i].Severity, found[i].Message)
		assert.Equal(t, f.Rule.ID, found[i].Code)
		seen[want] = true
		keys := 0
		for _, key := range f.Related {
			if _, ok := spec.Lookup(assessment.Document.Tree, key); ok {
				keys++
			}
		}
		assert.Len(t, found[i].Related, keys, f.Rule.ID)
	}
	assert.Len(t, seen, 4)
	e.leave()
}

// An editor shows of each ceiling what is found in it, in the order of the file.
func TestEveryCeiling(t *testing.T) {
	e := connect(t, options()).greet(everything)
	for _, name := range sample.Names(t) {
		at := "file:///rooms/" + name + ".ceiling.toml"
		e.open(at, string(sample.Source(t, name)))
		var shown, want []string
		for _, d := range e.found(at, 1) {
			shown = append(shown, d.Code)
		}
		_, findings := sample.Expected(t, name)
		for _, line := range findings {
			words := strings.Fields(line)
			want = append(want, words[len(words)-2])
		}
		assert.Equal(t, want, shown, name)
	}
	e.leave()
}

// A burst of edits is one review, of the newest text.
func TestABurstOfEditsIsOneReview(t *testing.T) {
	var reviews atomic.Int32
	o := options()
	o.Quiet = 150 * time.Millisecond
	o.Standards = func(string) Found { reviews.Add(1); return builtIn("") }
	e := connect(t, o).greet(everything)
	e.open(uri, demo(t))
	e.found(uri, 1)
	require.EqualValues(t, 1, reviews.Load())
	for v := 2; v <= 40; v++ {
		e.change(uri, v, fmt.Sprintf("dryfit = 1\n# %d\n", v))
	}
	e.change(uri, 41, demo(t))
	assert.NotEmpty(t, e.found(uri, 41))
	assert.EqualValues(t, 2, reviews.Load())
	for _, m := range e.kept {
		assert.NotEqual(t, "textDocument/publishDiagnostics", m.Method, "%s", m.raw)
	}
	e.leave()
}

func TestTextsThatAreNoSpec(t *testing.T) {
	e := connect(t, options()).greet(everything)
	text := edited(t, demo(t), `width        = "90mm"`, `width        = 90mm`)
	e.open(uri, text)
	found := e.found(uri, 1)
	require.Len(t, found, 1)
	assert.Equal(t, "file.toml", found[0].Code)
	assert.Equal(t, span{placeOf(t, text, "= 90mm", 2), placeOf(t, text, "= 90mm", 6)}, found[0].Range)

	text = edited(t, demo(t), "[rib]\n", "[rib]\nwidht = \"𝄞\"\n")
	e.change(uri, 2, text)
	found = e.found(uri, 2)
	require.Len(t, found, 1)
	assert.Equal(t, "file.shape", found[0].Code)
	assert.Contains(t, found[0].Message, "is it width?")

	e.change(uri, 3, "")
	found = e.found(uri, 3)
	require.Len(t, found, 1)
	assert.Equal(t, "dryfit", found[0].Source)

	e.change(uri, 4, demo(t)+strings.Repeat("# a long comment, again and again\n", spec.MaxSize/32))
	found = e.found(uri, 4)
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Message, "larger than 1MiB")

	// An editor that is told of all TOML files sends others too.
	other := "file:///rooms/other.toml"
	e.open(other, "a = [\n")
	assert.Nil(t, request[*hover](e, "textDocument/hover", at(other, position{0, 0})))
	assert.Empty(t, request[[]completion](e, "textDocument/completion", at(other, position{0, 0})))
	e.change(uri, 5, demo(t))
	assert.NotEmpty(t, e.found(uri, 5))
	for _, m := range e.kept {
		assert.NotContains(t, string(m.raw), other)
	}
	e.leave()
}

func TestTwoDocuments(t *testing.T) {
	e := connect(t, options()).greet(everything)
	second := "untitled:Untitled-1"
	e.open(uri, demo(t))
	e.open(second, edited(t, demo(t), "\n[vault]", "\n[vualt]"))
	first := e.found(uri, 1)
	assert.NotEmpty(t, first)
	assert.Equal(t, "file.shape", e.found(second, 1)[0].Code)
	e.change(second, 7, demo(t))
	assert.Equal(t, messages(first), messages(e.found(second, 7)))
	e.notify("textDocument/didClose", fields{"textDocument": fields{"uri": uri}})
	assert.Empty(t, e.found(uri, 0))
	m := e.answer(e.ask("textDocument/hover", at(uri, position{})))
	require.NotNil(t, m.Error)
	assert.Equal(t, wire.CodeInvalidParams, m.Error.Code)
	assert.NotNil(t, request[*hover](e, "textDocument/hover", at(second, placeOf(t, demo(t), "[rib]", 2))))
	e.leave()
}

func TestCharactersMayBeBytes(t *testing.T) {
	text := edited(t, edited(t, demo(t), `species = "spruce"`, `species = "🪵 é"`), "blocking = true", `blocking = "𝄞𝄞"`)
	before, _, _ := strings.Cut(text, `"𝄞𝄞"`)
	before = before[strings.LastIndex(before, "\n")+1:]
	for _, encodings := range [][]string{nil, {"utf-16"}, {"utf-16", "utf-8"}} {
		e := connect(t, options())
		r := request[struct {
			Capabilities struct {
				PositionEncoding string `json:"positionEncoding"`
			} `json:"capabilities"`
		}](e, "initialize", fields{"capabilities": fields{"general": fields{"positionEncodings": encodings}}})
		e.open(uri, text)
		got := ofCode(e.found(uri, 1), "file.shape")
		require.Len(t, got, 1)
		start, length := len(utf16.Encode([]rune(before))), len(utf16.Encode([]rune(`"𝄞𝄞"`)))
		assert.Equal(t, len(encodings) == 2, r.Capabilities.PositionEncoding == "utf-8")
		if len(encodings) == 2 {
			start, length = len(before), len(`"𝄞𝄞"`)
		}
		assert.Equal(t, start, got[0].Range.Start.Character)
		assert.Equal(t, start+length, got[0].Range.End.Character)
		e.leave()
	}
}

func TestPanicsDoNotEndTheServer(t *testing.T) {
	o := options()
	o.Rules = []*engine.Rule{{
		ID: "test.panics", Title: "nothing", Severity: engine.Note,
		Check: func(p *engine.Pass) {
			if p.Ceiling.Project.Title.Get() == "panic" {
				panic("as told")
			}
		},
	}}
	e := connect(t, o).greet(everything)
	e.open(uri, edited(t, demo(t), "Reading room, Alder Quay library", "panic"))
	found := e.found(uri, 1)
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Message, "internal error")
	assert.Contains(t, e.log.text(), "as told")
	e.change(uri, 2, demo(t))
	assert.Empty(t, e.found(uri, 2))

	requests["test/panics"] = func(*server, json.RawMessage) (any, error) { panic("in a request") }
	defer delete(requests, "test/panics")
	m := e.answer(e.ask("test/panics", nil))
	require.NotNil(t, m.Error)
	assert.Equal(t, wire.CodeInternal, m.Error.Code)
	assert.Contains(t, e.log.text(), "in a request")
	e.leave()
}
