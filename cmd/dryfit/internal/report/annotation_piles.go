package report

import (
	"fmt"
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/report/spool"
	"dryfit/rules/engine"
)

// pileOf is which annotations stand together: those of one word on files of one verdict,
// and those on what is loosened.
type pileOf struct {
	word     string
	loosened bool
	verdict  engine.Verdict
}

// pile is annotations in their order. Of those that a forge does not show by themselves
// only the text is kept.
type pile struct {
	n      int
	first  []note // as many as a forge shows of one word
	rest   spool.Spool
	listed []string // in the order of all, as one annotation lists them, as many as it has room for
	size   int      // of those, without the first
}

// ofOneWord is how many annotations of one word a forge shows of a step.
const ofOneWord = 10

// mostListed is how many bytes of text a forge takes in an annotation, less some.
const mostListed = 60000

func (p *pile) add(n note) {
	if p.size <= mostListed && n.word != "notice" {
		text := n.listed()
		p.listed = append(p.listed, text)
		if p.n >= ofOneWord {
			p.size += len(text)
		}
	}
	if p.n < ofOneWord {
		p.first = append(p.first, n)
	} else {
		n.write(&p.rest)
	}
	p.n++
}

// writePiles writes piles of one word. Where a forge would not show all, the last
// that it shows lists the rest, which follow.
func writePiles(out io.Writer, word string, piles []*pile) error {
	total, i := 0, 0
	var listed []string
	for _, p := range piles {
		total += p.n
		listed = append(listed, p.listed...)
	}
	for _, p := range piles {
		for _, n := range p.first {
			if i == ofOneWord-1 && total > ofOneWord && word != "notice" {
				restOf(n, listed[i:], total-i).write(out)
			}
			n.write(out)
			i++
		}
		if _, err := p.rest.WriteTo(out); err != nil {
			return err
		}
	}
	return nil
}

// restOf is one annotation in place of several, the first and others, of which there are
// so many.
func restOf(first note, listed []string, total int) note {
	rest := note{word: first.word, path: first.path, place: "line=1,endLine=1", title: fmt.Sprintf("%d more, listed here", total)}
	var b strings.Builder
	for i, text := range listed {
		if b.Len()+len(text) > mostListed {
			fmt.Fprintf(&b, "and %d more in the log", total-i)
			break
		}
		b.WriteString(text)
	}
	rest.text = strings.TrimSuffix(b.String(), "\n")
	return rest
}

func (n note) listed() string {
	line, _, _ := strings.Cut(strings.TrimPrefix(n.place, "line="), ",")
	return fmt.Sprintf("- %s:%s: %s: %s\n", show.ShownTo(n.path, show.MostNamed), line, n.title, show.ShownTo(n.text, show.MostNamed))
}
