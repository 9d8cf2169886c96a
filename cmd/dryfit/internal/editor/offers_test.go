package editor

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
)

// Every offer of a catalogue of faulty specs can be applied where it stands, and
// what it is for is gone.
func TestEveryOfferClearsItsFinding(t *testing.T) {
	edits := [][2]string{
		{`lamination   = "6mm"`, `lamination   = "40mm"`},
		{"lamination   = \"6mm\"\n", ""},
		{`rise    = "840mm"`, `rise    = "200mm"`},
		{"saddle   = true", "saddle   = false"},
		{"saddle   = true\n", ""},
		{`fixed      = "after"`, `fixed      = "before"`},
		{"setback   = \"51mm\"\n", "setback = \"30mm\"\n"},
		{`thickness = "9mm"`, `thickness = "30mm"`},
		{`straight  = "along"`, `straight  = "around"`},
		{`cut          = "vertical"`, `cut          = "flat"`},
		{"cut          = \"vertical\"\n", ""},
		{`width = "10mm", depth = "8mm"`, `width = "6.2mm", depth = "8mm"`},
		{"along     = 6\naround    = 1", "along     = 4\naround    = 1"},
		{`cover = "60mm"`, `cover = "20mm"`},
		{`first_gap = "18mm"`, `first_gap = "2mm"`},
		{`penetration = "38mm"`, `penetration = "12mm"`},
		{`depth        = "60mm"`, `depth        = "30mm"`},
		{`around = 6`, `around = 2`},
		{"[finish]\nsides = \"all\"\n", ""},
		{`spacing   = "300mm"`, `spacing   = "900mm"`},
		{"edge      = \"75mm\"\n", "edge = \"10mm\"\n"},
		{`thickness = "10mm", width`, `thickness = "30mm", width`},
		{`length = "50mm"`, `length = "20mm"`},
	}
	e := connect(t, options()).greet(everything)
	version, offered := 1, 0
	e.open(uri, demo(t))
	e.found(uri, 1)
	whole := span{position{0, 0}, position{1000, 0}}
	ask := fields{"textDocument": fields{"uri": uri}, "range": whole, "context": fields{"diagnostics": []diagnostic{}}}
	for _, edit := range edits {
		text := edited(t, demo(t), edit[0], edit[1])
		version++
		e.change(uri, version, text)
		before := e.found(uri, version)
		for _, a := range request[[]codeAction](e, "textDocument/codeAction", ask) {
			offered++
			version++
			e.change(uri, version, apply(t, text, a.Edit.DocumentChanges[0].Edits, false))
			after := e.found(uri, version)
			cured := a.Diagnostics[0]
			assert.NotContains(t, messages(after), cured.Message, "%s: %s", edit[1], a.Title)
			assert.LessOrEqual(t, weight(after), weight(before), "%s: %s", edit[1], a.Title)
		}
		offers := 0
		for _, d := range before {
			offers += strings.Count(d.Message, "\npasses with ")
		}
		version++
		e.change(uri, version, text)
		e.found(uri, version)
		assert.Len(t, request[[]codeAction](e, "textDocument/codeAction", ask), offers, edit[1])
	}
	assert.Greater(t, offered, 10)
	e.leave()
}

func messages(list []diagnostic) []string {
	var out []string
	for _, d := range list {
		out = append(out, d.Message)
	}
	return out
}

// weight counts holds and queries.
func weight(list []diagnostic) int {
	n := 0
	for _, d := range list {
		if d.Severity <= asWarning {
			n++
		}
	}
	return n
}

// An offer for a key that the spec leaves out is put into its table, which is
// made where there is none.
func TestAnOfferOfAKeyThatIsNotThere(t *testing.T) {
	o := options()
	o.Rules = []*engine.Rule{{
		ID: "test.saddle", Title: "there is a saddle", Severity: engine.Hold,
		Check: func(p *engine.Pass) {
			if l := p.Ceiling.Lift; !l.Saddle.Given() || !l.Saddle.Get() {
				p.Report(engine.Finding{At: "lift.saddle", Text: "no saddle", Offers: []engine.Offer{{Key: "lift.saddle", Value: true}}})
			}
		},
	}}
	table := demo(t)[strings.Index(demo(t), "[lift]"):strings.Index(demo(t), "[crew]")]
	for name, text := range map[string]string{
		"no key":   edited(t, demo(t), "saddle   = true\n", ""),
		"inline":   edited(t, demo(t), table, "") + "\n",
		"no table": strings.TrimSpace(edited(t, demo(t), table, "")),
	} {
		if name == "inline" {
			text = edited(t, text, "dryfit = 1\n", "dryfit = 1\nlift = { units = 2 }\n")
		}
		e := connect(t, o).greet(fields{"textDocument": everything["textDocument"]})
		e.open(uri, text)
		found := e.found(uri, 1)
		require.Len(t, found, 1, name)
		actions := request[[]codeAction](e, "textDocument/codeAction", fields{
			"textDocument": fields{"uri": uri}, "range": found[0].Range, "context": fields{"only": []string{"quickfix"}},
		})
		if name == "no table" { // a [lift] of a saddle alone is no spec: it lacks its units
			require.Empty(t, actions)
			e.leave()
			continue
		}
		require.Len(t, actions, 1, name)
		changed := apply(t, text, actions[0].Edit.Changes[uri], false)
		assert.Contains(t, changed, map[string]string{
			"no key": "saddle   = true", "inline": "lift = { units = 2, saddle = true }",
		}[name], name)
		e.leave()
	}
}

// Where the key's table is absent and needs no other key, it is written too.
func TestAnOfferOfATableThatIsNotThere(t *testing.T) {
	o := options()
	o.Rules = []*engine.Rule{{
		ID: "test.wrap", Title: "the wrap is stated", Severity: engine.Hold,
		Check: func(p *engine.Pass) {
			if _, assumed := p.Ceiling.AssumedAt("wrap.allowance"); assumed {
				p.Report(engine.Finding{At: "wrap.allowance", Text: "no wrap", Offers: []engine.Offer{{Key: "wrap.allowance", Value: "25mm"}}})
			}
		},
	}}
	text := edited(t, demo(t), "[wrap]\nallowance = \"25mm\"\n", "")
	e := connect(t, o).greet(fields{"textDocument": everything["textDocument"]})
	e.open(uri, text)
	found := e.found(uri, 1)
	require.Len(t, found, 1)
	actions := request[[]codeAction](e, "textDocument/codeAction", fields{
		"textDocument": fields{"uri": uri}, "range": found[0].Range, "context": fields{"only": []string{"quickfix"}},
	})
	require.Len(t, actions, 1)
	assert.Contains(t, apply(t, text, actions[0].Edit.Changes[uri], false), "[wrap]\nallowance = \"25mm\"")
	e.leave()
}
