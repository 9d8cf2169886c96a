package submitting

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/submittal"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/review"
)

// largestPage is what a submittal never comes near, in bytes.
const largestPage = 64 << 20

// Verify says whether a page belongs to a spec, its standards and this version:
// the page is made again as on its date, and held against the old one.
func Verify(s console.Streams, args []string, f Flags) error {
	switch {
	case len(args) != 1:
		return fmt.Errorf("--verify compares a page with one spec, not %d", len(args))
	case f.On != "" || f.Strict:
		return errors.New("--verify takes the date and the strictness from the page")
	}
	page, err := readPage(f.Verify)
	if err != nil {
		return fmt.Errorf("%s: %w", f.Verify, err)
	}
	seal, err := report.ReadSeal(page)
	if err != nil {
		return fmt.Errorf("%s: %w", f.Verify, err)
	}
	m, err := newSubmitter(f.Standards, seal.On, seal.Strict)
	if err != nil {
		return err
	}
	one := m.finder.Open(source.InputAt(args[0]), s.In, m.options)
	if one.Assessment.Ceiling == nil {
		return single.Unresolved(s, seal.On, append(m.finder.Assessments(), one.Assessment)...)
	}
	now, err := m.submittal(one.Assessment, one.Src)
	if err != nil {
		return err
	}
	var again bytes.Buffer
	if err := submittal.HTML(&again, now); err != nil {
		return err
	}
	v := submittal.Verification{
		Page: f.Verify, Then: seal, Now: now.Seal, Altered: !bytes.Equal(again.Bytes(), page), Verdict: one.Assessment.Verdict,
	}
	today, err := usage.JudgedOn("")
	if err != nil {
		return err
	}
	o := one.Options
	o.On = today
	v.Today, v.TodayVerdict = today, review.Spec(one.Name, one.Src, o).Verdict
	if err := outfile.Write(f.Output, s.Out, append(one.Inputs(), source.NewInput(f.Verify)), func(w io.Writer) error { return submittal.VerificationText(w, v) }); err != nil {
		return err
	}
	if !v.Belongs() {
		return exit.VerdictError{Status: exit.Fail}
	}
	return nil
}

func readPage(path string) ([]byte, error) {
	f, err := source.OpenRegular(path)
	if err != nil {
		return nil, errors.New(source.Reason(err))
	}
	defer f.Close()
	b, err := io.ReadAll(io.LimitReader(f, largestPage+1))
	switch {
	case err != nil:
		return nil, errors.New(source.Reason(err))
	case len(b) > largestPage:
		return nil, fmt.Errorf("over %dMiB, which no submittal is", largestPage>>20)
	}
	return b, nil
}
