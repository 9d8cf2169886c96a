package submittal

import (
	"fmt"
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
)

// Verification is an old submittal held against a spec.
type Verification struct {
	Page      string
	Then, Now report.Seal
	Altered   bool           // the page made again is not the same, byte for byte
	Verdict   engine.Verdict // of the spec as it is, on the page's date
	// Today's verdict may differ, as where an acceptance has run out.
	Today        string
	TodayVerdict engine.Verdict
}

// Belongs reports whether the page is of this spec, these standards and this
// version, and says what they say.
func (v Verification) Belongs() bool {
	return v.sameSpec() && v.sameStandards() && v.sameVersion() && !v.Altered
}

func (v Verification) sameSpec() bool    { return v.Then.Spec.SHA256 == v.Now.Spec.SHA256 }
func (v Verification) sameVersion() bool { return v.Then.Version == v.Now.Version }

func (v Verification) sameStandards() bool {
	if len(v.Then.Standards) != len(v.Now.Standards) {
		return false
	}
	for i, d := range v.Then.Standards {
		if d.SHA256 != v.Now.Standards[i].SHA256 {
			return false
		}
	}
	return true
}

// VerificationText writes what is the same and what is not.
func VerificationText(w io.Writer, v Verification) error {
	t := show.NewTexter(w, false)
	t.Line(show.Shown(v.Page))
	for _, l := range show.Wrap(fmt.Sprintf("submittal of %s, judged on %s, written by dryfit %s", show.Shown(v.Then.Spec.Path), show.Shown(v.Then.On), show.Shown(v.Then.Version)), show.TextWidth) {
		t.Line(l)
	}
	t.Rule("─")
	say := func(what string, same bool, yes, no string) {
		word := "differs"
		if same {
			word, no = "same", yes
		}
		t.Paragraph(word, what, show.Shown(no))
	}
	say("spec", v.sameSpec(), v.Now.Spec.Path, v.Now.Spec.Path+" differs from the file that the page was made from")
	say("standards", v.sameStandards(), orBuiltIn(v.Now.Standards), "the page was made to "+orBuiltIn(v.Then.Standards)+"; the standards here are "+orBuiltIn(v.Now.Standards)+", with other content")
	say("version", v.sameVersion(), v.Now.Version, "this is dryfit "+v.Now.Version)
	inputs := v.sameSpec() && v.sameStandards() && v.sameVersion()
	switch {
	case inputs && v.Altered:
		say("page", false, "", "it differs from the page that this version writes for this spec: it was altered")
	case inputs:
		say("page", true, "equal to the page that this version writes for this spec, byte for byte", "")
	default:
		t.Paragraph("", "page", "not compared, because the files that it was made from differ")
	}
	if v.TodayVerdict != v.Verdict {
		t.Paragraph("differs", "today", fmt.Sprintf("judged on %s, the verdict is %s; on the page's date it is %s", v.Today, v.TodayVerdict, v.Verdict))
	}
	t.Rule("─")
	if v.Belongs() {
		t.Line("BELONGS: to this spec, these standards and this version")
	} else {
		t.Line("DOES NOT BELONG")
	}
	return t.Flush()
}

func orBuiltIn(files []report.Digest) string {
	if len(files) == 0 {
		return "the built-in standards"
	}
	var names []string
	for _, f := range files {
		names = append(names, f.Path)
	}
	return strings.Join(names, ", ")
}
