package main

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/begin"
	"dryfit/spec/quantity"
)

type question struct {
	flag, text string
	to         *string
}

func (f *beginFlags) questions() []question {
	switch {
	case f.room != "":
		return nil
	case f.survey != "":
		return []question{{"height", "Height, floor to springing (2.7m, 9ft)", &f.height}}
	}
	out := []question{{"span", "Span, springing to springing on the finished underside (4200mm, 13ft 9in)", &f.span}}
	if begin.HasRise(f.profile) {
		out = append(out, question{"rise", "Rise, springing to crown", &f.rise})
	}
	return append(out, question{"length", "Length, over all panels", &f.length})
}

// ask asks for what is missing until each answer is a length; the end of the
// input leaves it missing.
func (f *beginFlags) ask(in io.Reader, out io.Writer) {
	answers := bufio.NewScanner(in)
	for _, q := range f.questions() {
		for *q.to == "" {
			fmt.Fprintf(out, "%s: ", q.text)
			if !answers.Scan() {
				fmt.Fprintln(out)
				return
			}
			answer := strings.TrimSpace(answers.Text())
			if _, err := quantity.Parse(quantity.Metre, answer); err != nil {
				fmt.Fprintln(out, "  "+show.Safe(err.Error()))
				continue
			}
			*q.to = answer
		}
	}
}
