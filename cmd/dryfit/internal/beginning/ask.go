package beginning

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"sync"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/begin"
	"dryfit/rules/review/catalog"
	"dryfit/spec/quantity"
)

type question struct {
	flag, text string
	to         *string
}

func (f *Flags) questions() []question {
	switch {
	case f.Room != "":
		return nil
	case f.Survey != "":
		return []question{{"height", "Height, floor to springing (2.7m, 9ft)", &f.Height}}
	}
	out := []question{{"span", "Span, springing to springing on the finished underside (4200mm, 13ft 9in)", &f.Span}}
	if begin.HasRise(f.Profile) {
		out = append(out, question{"rise", "Rise, springing to crown", &f.Rise})
	}
	return append(out, question{"length", "Length, over all panels", &f.Length})
}

// asker asks questions of a person at a terminal.
type asker struct {
	out     io.Writer
	answers <-chan string
	ctx     context.Context //nolint:containedctx // of the one command
	begin   func()
}

// asks reads lines beside, so that an interrupt does not wait for the next of them;
// none before the first question.
func asks(ctx context.Context, in io.Reader, out io.Writer) *asker {
	lines := make(chan string)
	read := func() {
		defer close(lines)
		for answers := bufio.NewScanner(in); answers.Scan(); {
			select {
			case lines <- strings.TrimSpace(answers.Text()):
			case <-ctx.Done():
				return
			}
		}
	}
	return &asker{out, lines, ctx, sync.OnceFunc(func() { go read() })}
}

// until asks until an answer is taken; false at the end of the input, or where it is
// interrupted.
func (a *asker) until(text string, take func(answer string) error) bool {
	a.begin()
	for {
		fmt.Fprintf(a.out, "%s: ", text)
		select {
		case answer, ok := <-a.answers:
			if !ok {
				fmt.Fprintln(a.out)
				return false
			}
			err := take(answer)
			if err == nil {
				return true
			}
			fmt.Fprintln(a.out, "  "+show.Safe(err.Error()))
		case <-a.ctx.Done():
			fmt.Fprintln(a.out)
			return false
		}
	}
}

// ask asks for what is missing; the end of the input leaves it missing. Where
// nothing is given of the sizes, it goes from the room to the curve to the grid.
func (f *Flags) ask(ctx context.Context, in io.Reader, out io.Writer) {
	a := asks(ctx, in, out)
	if f.Room+f.Survey+f.Span+f.Rise+f.Length == "" && !f.interview(a) {
		return
	}
	for _, q := range f.questions() {
		if *q.to == "" && !a.until(q.text, func(answer string) error { return takeLength(q.to, answer) }) {
			return
		}
	}
}

func takeLength(to *string, answer string) error {
	if _, err := quantity.Parse(quantity.Metre, answer); err != nil {
		return err
	}
	*to = answer
	return nil
}

// interview asks for the room, the curve and the grid, and shows what each answer
// makes; false at the end of the input. Without a room the span, the rise and the
// length are asked for.
func (f *Flags) interview(a *asker) bool {
	if !a.until("Room: width,length,height to the springing (4.57m,5.1m,2.7m); empty to give span and length", f.answerRoom(a)) {
		return false
	}
	if f.Room == "" {
		return true
	}
	curves := "Curve: " + strings.Join(begin.Profiles(), ", ") + "; empty for " + f.Profile
	if !f.Curved && !a.until(curves, f.answerCurve(a)) {
		return false
	}
	if begin.HasRise(f.Profile) && !a.until("Rise, springing to crown; empty for the greatest that passes", f.tried(a, &f.Rise, "")) {
		return false
	}
	for _, q := range []struct {
		text string
		to   *int
	}{{"Coffers around; empty to let dryfit choose", &f.Around}, {"Coffers along; empty to let dryfit choose", &f.Along}} {
		if *q.to == 0 && !a.until(q.text, f.counted(a, q.to)) {
			return false
		}
	}
	return true
}

// answerRoom takes a room that a flat ceiling goes into, which is the least that any
// does.
func (f *Flags) answerRoom(a *asker) func(string) error {
	return func(answer string) error {
		if answer == "" {
			return nil
		}
		flat := *f
		flat.Room, flat.Profile, flat.Around, flat.Along = answer, "flat", 0, 0
		flat.Species, flat.Construction, flat.Skin, flat.Take = "", "", "", nil
		if err := flat.try(a.out); err != nil {
			return err
		}
		f.Room = answer
		return nil
	}
}

func (f *Flags) answerCurve(a *asker) func(string) error {
	return func(answer string) error {
		if answer == "" {
			answer = f.Profile
		}
		if !slices.Contains(begin.Profiles(), answer) {
			return fmt.Errorf("%q is not one of these", answer)
		}
		return f.tried(a, &f.Profile, answer)(answer)
	}
}

// tried takes an answer with which a draft passes, and else leaves what was there.
func (f *Flags) tried(a *asker, to *string, empty string) func(string) error {
	return func(answer string) error {
		had := *to
		if answer == "" {
			answer = empty
		}
		*to = answer
		err := f.try(a.out)
		if err != nil {
			*to = had
		}
		return err
	}
}

// counted takes a count with which a draft passes; none is chosen.
func (f *Flags) counted(a *asker, to *int) func(string) error {
	return func(answer string) error {
		if answer == "" {
			return nil
		}
		n, err := strconv.Atoi(answer)
		if err != nil || n < 1 {
			return fmt.Errorf("%q is not a count, from 1", answer)
		}
		*to = n
		if err = f.try(a.out); err != nil {
			*to = 0
		}
		return err
	}
}

// try shows what the answers so far make, or says why they make nothing.
func (f *Flags) try(out io.Writer) error {
	w, err := f.wanted()
	if err != nil {
		return err
	}
	d, err := begin.Spec(w, catalog.Rules())
	var none *begin.NoAnswerError
	if errors.As(err, &none) {
		err = fmt.Errorf("no draft passes: %s: %s", none.Against[0].Rule.ID, none.Against[0].Text)
	}
	if others := begin.Instead(err); len(others) > 0 {
		err = fmt.Errorf("%w; %s", err, strings.Join(others, "; "))
	}
	if err != nil {
		return err
	}
	for _, l := range sketch(d.Assessment.Ceiling) {
		fmt.Fprintln(out, "  "+l)
	}
	return nil
}
