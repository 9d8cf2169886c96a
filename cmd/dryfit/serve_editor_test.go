package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/textproto"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/internal/outside"
)

// editing is the program itself, serving an editor in a repository.
type editing struct {
	t      *testing.T
	run    *exec.Cmd
	to     io.WriteCloser
	from   *bufio.Reader
	errors strings.Builder
}

func startEditing(t *testing.T, folder string, args ...string) *editing {
	e := &editing{t: t, run: exec.Command("dryfit", append([]string{"serve-editor"}, args...)...)}
	e.run.Dir, e.run.Stderr = folder, &e.errors
	var err error
	e.to, err = e.run.StdinPipe()
	require.NoError(t, err)
	out, err := e.run.StdoutPipe()
	require.NoError(t, err)
	e.from = bufio.NewReader(out)
	require.NoError(t, e.run.Start())
	return e
}

func (e *editing) send(message string) {
	_, err := fmt.Fprintf(e.to, "Content-Length: %d\r\n\r\n%s", len(message), message)
	require.NoError(e.t, err)
}

// next reads messages until one has a text in it.
func (e *editing) next(has string) string {
	e.t.Helper()
	for {
		head, err := textproto.NewReader(e.from).ReadMIMEHeader()
		require.NoError(e.t, err, "%s has not come; %s", has, e.errors.String())
		n, err := strconv.Atoi(head.Get("Content-Length"))
		require.NoError(e.t, err)
		body := make([]byte, n)
		_, err = io.ReadFull(e.from, body)
		require.NoError(e.t, err)
		if strings.Contains(string(body), has) {
			return string(body)
		}
	}
}

func (e *editing) status() int {
	var exit *exec.ExitError
	if err := e.run.Wait(); errors.As(err, &exit) {
		return exit.ExitCode()
	}
	return 0
}

func quotedJSON(t *testing.T, s string) string {
	b, err := json.Marshal(s)
	require.NoError(t, err)
	return string(b)
}

func TestServeEditor(t *testing.T) {
	repository := t.TempDir()
	require.NoError(t, os.CopyFS(repository, os.DirFS("../../docs/examples/alder-quay")))
	require.NoError(t, os.Mkdir(filepath.Join(repository, ".git"), 0o755))
	file := filepath.Join(repository, "specs/reading-room.ceiling.toml")
	src, err := os.ReadFile(file)
	require.NoError(t, err)
	uri := (&url.URL{Scheme: "file", Path: filepath.ToSlash(file)}).String()
	document := `"textDocument":{"uri":` + quotedJSON(t, uri)
	shop := filepath.Join(repository, "dryfit.toml")

	e := startEditing(t, t.TempDir(), "--stdio")
	e.send(`{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"processId":null,"rootUri":null,"capabilities":{}}}`)
	assert.Contains(t, e.next(`"id":1`), `"positionEncoding":"utf-16"`)
	e.send(`{"jsonrpc":"2.0","method":"initialized","params":{}}`)
	e.send(`{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{` + document + `,"languageId":"toml","version":1,"text":` + quotedJSON(t, string(src)) + `}}}`)
	assert.Contains(t, e.next("publishDiagnostics"), `"strap.engineer"`)

	// The shop's standards are found from where the spec is, not from where the
	// program was started.
	line := strings.Count(string(src[:strings.Index(string(src), "lamination   =")]), "\n")
	e.send(fmt.Sprintf(`{"jsonrpc":"2.0","id":2,"method":"textDocument/hover","params":{%s},"position":{"line":%d,"character":2}}}`, document, line))
	help := e.next(`"id":2`)
	assert.Contains(t, help, "at least 120")
	assert.Contains(t, help, "dryfit.toml")
	line = strings.Count(string(src[:strings.Index(string(src), "material  = \"bend")]), "\n")
	e.send(fmt.Sprintf(`{"jsonrpc":"2.0","id":3,"method":"textDocument/completion","params":{%s},"position":{"line":%d,"character":14}}}`, document, line))
	assert.Contains(t, e.next(`"id":3`), "shop bendable plywood")

	// They are read again when they change.
	require.NoError(t, os.WriteFile(shop, []byte("dryfit = 1\nname = 7\n"), 0o644))
	e.send(`{"jsonrpc":"2.0","method":"workspace/didChangeWatchedFiles","params":{"changes":[]}}`)
	assert.Contains(t, e.next("publishDiagnostics"), "its standards, ")
	assert.Contains(t, e.next("publishDiagnostics"), `"range":{"start":{"line":1,"character":7},"end":{"line":1,"character":8}}`)
	require.NoError(t, os.Remove(shop))
	e.send(`{"jsonrpc":"2.0","method":"textDocument/didSave","params":{` + document + `}}}`)
	assert.Contains(t, e.next("publishDiagnostics"), `"strap.engineer"`)
	assert.Contains(t, e.next("publishDiagnostics"), `"diagnostics":[]`)

	e.send(`{"jsonrpc":"2.0","id":4,"method":"shutdown"}`)
	assert.Contains(t, e.next(`"id":4`), `"result":null`)
	e.send(`{"jsonrpc":"2.0","method":"exit"}`)
	assert.Zero(t, e.status())
	assert.Empty(t, e.errors.String())
}

func TestServeEditorEndings(t *testing.T) {
	for _, c := range []struct {
		name, stream, says string
		status             int
	}{
		{"the editor goes", "", "without a shutdown", 1},
		{"exit alone", "Content-Length: 33\r\n\r\n" + `{"jsonrpc":"2.0","method":"exit"}`, "without a shutdown", 1},
		{"no messages", "hello\n", "is no header", 2},
	} {
		e := startEditing(t, t.TempDir())
		_, err := io.WriteString(e.to, c.stream)
		require.NoError(t, err)
		require.NoError(t, e.to.Close())
		_, err = io.Copy(io.Discard, e.from)
		require.NoError(t, err)
		assert.Equal(t, c.status, e.status(), c.name)
		assert.Contains(t, e.errors.String(), c.says, c.name)
	}
}

// An editor made of the protocol's reference library: its client side, its
// guards of every shape, and its own application of edits. What it takes of the
// offers passes.
func TestTheReferenceClientAgrees(t *testing.T) {
	src, err := os.ReadFile("../../docs/examples/alder-quay/specs/reading-room.ceiling.toml")
	require.NoError(t, err)
	text := string(src) + "\n[[accept]]\nrule = \"strap.setting\"\nat = \"route.2.width\"\nreason = \"x\"\nby = \"x\"\nuntil = 2027-01-01\n"
	for _, edit := range [][2]string{
		{`"6mm"`, `"40mm"`},
		{"Reading room, ", "🪵 𝕽, "},
		{"saddle   = true\n", ""},
		{`first_gap = "18mm"`, `first_gap = "2mm"`},
	} {
		require.Contains(t, text, edit[0])
		text = strings.Replace(text, edit[0], edit[1], 1)
	}
	for name, text := range map[string]string{"LF": text, "CRLF": strings.ReplaceAll(text, "\n", "\r\n")} {
		file := filepath.Join(t.TempDir(), "room.ceiling.toml")
		require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
		said := converse(t, file)
		assert.Zero(t, said.Status)
		assert.Len(t, said.Registered, 1)
		assert.Greater(t, said.Helped, 150)
		assert.Greater(t, said.Completed, 500)
		assert.Greater(t, len(said.Outline), 150)
		assert.Equal(t, []string{"route"}, said.Defined[`"route`])
		assert.Equal(t, []string{"width"}, said.Defined[`width"`])
		assert.Contains(t, said.Before, "bend.lamination")
		assert.NotContains(t, said.After, "bend.lamination")
		assert.GreaterOrEqual(t, len(said.Taken), 3)
		for _, taken := range said.Taken {
			assert.NotContains(t, said.Messages, taken.Message)
		}
		assert.NotContains(t, strings.Join(said.Messages, "\n"), "passes with")
		alone := strings.Count(said.Text, "\n") - strings.Count(said.Text, "\r\n")
		assert.Equal(t, name == "CRLF", alone == 0, "the ends of lines stay as they were")
	}
}

// A standards file gets the same help, and leads to the outer one.
func TestTheReferenceClientAgreesOnStandards(t *testing.T) {
	outer := t.TempDir()
	inner := filepath.Join(outer, "specs")
	require.NoError(t, os.Mkdir(inner, 0o755))
	require.NoError(t, os.Mkdir(filepath.Join(outer, ".git"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(outer, "dryfit.toml"), []byte("dryfit = 1\nname = \"firm\"\n[severity]\n\"joint.count\" = \"note\"\n"), 0o644))
	file := filepath.Join(inner, "dryfit.toml")
	require.NoError(t, os.WriteFile(file, []byte("dryfit = 1\nname = \"job\"\n[limit]\n\"joint.count.most\" = { value = 90, source = \"x\" }\n[accept]\nholds = [\"joint.count\"]\n"), 0o644))
	said := converse(t, file)
	assert.Zero(t, said.Status)
	assert.Empty(t, said.Messages)
	assert.Greater(t, said.Helped, 8)
	assert.Greater(t, said.Completed, 100)
	assert.Equal(t, []string{"dryfit", "name", "limit", `"joint.count.most"`, "value", "source", "accept", "holds"}, said.Outline)
	assert.Contains(t, said.Defined[`"joint`], `"joint.count.most"`)
	assert.Contains(t, said.Defined[`"joint`], (&url.URL{Scheme: "file", Path: filepath.ToSlash(outer) + "/dryfit.toml:4"}).String())
}

// conversation is what the reference library's client tells of one.
type conversation struct {
	Before, After, Messages []string
	Taken                   []struct{ Title, Code, Message string }
	Helped, Completed       int
	Outline                 []string
	Defined                 map[string][]string // by word
	Registered              []any
	Status                  int
	Text                    string
}

func converse(t *testing.T, file string) (said conversation) {
	t.Helper()
	const validators = "../../.ci/validators"
	node := outside.Modules(t, validators, "vscode-languageserver-protocol", "vscode-languageserver-textdocument")
	program, err := exec.LookPath("dryfit")
	require.NoError(t, err)
	out, err := exec.Command(node, filepath.Join(validators, "converse.mjs"), program, file).CombinedOutput()
	require.NoError(t, err, "%s", out)
	require.NoError(t, json.Unmarshal(out, &said), "%s", out)
	return said
}
