package show

import (
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"fmt"
	"html/template"
	"strings"
	"sync"
	"unicode"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/svg"
)

//go:embed pages
var pages embed.FS

// Furniture is what each page has beside its matter: its style, its
// script, and the policy that lets a browser run and load nothing else.
type Furniture struct {
	Style  template.CSS
	Script template.JS
	Policy string
	Own    template.CSS // of one page alone
}

// With has a style beside what all pages of the kind have.
func (f Furniture) With(own string) Furniture {
	f.Own = template.CSS(own)
	f.Policy = strings.Replace(f.Policy, "style-src ", "style-src "+hashOf(own)+" ", 1)
	return f
}

// CSSString is text as a string of a style: what is no letter, digit or blank
// stands by its code, so that no text ends the string.
func CSSString(s string) string {
	var b strings.Builder
	for _, r := range Shown(s) {
		if r == ' ' || unicode.IsLetter(r) || unicode.IsDigit(r) {
			b.WriteRune(r)
		} else {
			fmt.Fprintf(&b, `\%06x `, r) // the blank belongs to the code
		}
	}
	return `"` + b.String() + `"`
}

// leaf is a page's template with its furniture, read when it is first written.
type leaf struct {
	*template.Template
	Furniture
}

// LeafOf is a page by the names of its template, style and script, and more styles; "" for no
// script but the common one. A name that is none of the program's own files panics when the page is first written.
func LeafOf(name, style, script string, more ...string) func() leaf {
	return sync.OnceValue(func() leaf {
		return leaf{template.Must(template.New(name).ParseFS(pages, "pages/"+name)), furnish(style, script, more...)}
	})
}

// furnish reads the common style and script and a page's own, by their names, and
// takes what else it is styled by. They are part of the program, and so trusted.
func furnish(style, script string, more ...string) Furniture {
	read := func(name string) string {
		b, err := pages.ReadFile("pages/" + name)
		if err != nil {
			panic(err) // not one of the program's own files
		}
		return string(b)
	}
	f := Furniture{Style: template.CSS(read("page.css") + read(style) + strings.Join(more, ""))}
	allowed := []string{"default-src 'none'", "style-src " + hashOf(string(f.Style))}
	own := read("scroll.js")
	if script != "" {
		own += read(script)
	}
	f.Script = template.JS(own)
	allowed = append(allowed, "script-src "+hashOf(own))
	f.Policy = strings.Join(append(allowed, "base-uri 'none'", "form-action 'none'"), "; ")
	return f
}

// hashOf is the source expression of Content Security Policy, level 3, for an
// inline text.
func hashOf(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}

// Classes are how verdicts are coloured, beside the words that say them.
var Classes = map[string]string{"PASS": "pass", "PASS WITH NOTES": "notes", "FAIL": "fail", "COULD NOT CHECK": "fail"}

// DrawingView is a sheet as a page shows it.
type DrawingView struct {
	paper.Sheet
	Box  string
	Body template.HTML // by this program's own writer, which escapes what a spec says
}

// Drawn makes a sheet fit for a page.
func Drawn(s paper.Sheet) DrawingView {
	return DrawingView{s, fmt.Sprintf("0 0 %g %g", s.Width, s.Height), template.HTML(svg.Body(s.Items))}
}
