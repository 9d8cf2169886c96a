// Command supply says what dryfit is made of, so that whoever ships or audits
// it need not find out: a page of all that it uses, with licences and reasons;
// the texts of the licences of what is in a program; and a CycloneDX bill of
// materials of a program. What has no reason here, or a licence that was not
// agreed to, is an error: a new dependency is a decision.
//
// The same tree gives the same bytes.
package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"os"
)

func main() {
	root := flag.String("root", ".", "`folder` of dryfit's go.mod")
	page := flag.String("page", "", "write the page of all that is used to a `file`")
	texts := flag.String("texts", "", "write the licences of what is in a program to a `file`")
	bill := flag.String("bill", "", "write the bill of materials to a `file`")
	release := flag.String("release", "", "the `version` of the bill")
	goos := flag.String("os", "linux", "the `system` of the bill and texts")
	arch := flag.String("arch", "amd64", "the `processor` of the bill and texts")
	flag.Parse()
	if err := supply(*root, *page, *texts, *bill, program{*goos, *arch, *release}); err != nil {
		fmt.Fprintln(os.Stderr, "supply:", err)
		os.Exit(1)
	}
}

// program is what is built of the tree.
type program struct{ os, arch, release string }

func supply(root, page, texts, bill string, p program) error {
	if page != "" {
		if err := write(page, func(b *bytes.Buffer) error { return writePage(b, root) }); err != nil {
			return err
		}
	}
	if texts == "" && bill == "" {
		return nil
	}
	linked, err := linkedInto(root, p)
	if err != nil {
		return err
	}
	if texts != "" {
		err = write(texts, func(b *bytes.Buffer) error { return writeTexts(b, linked) })
	}
	if bill != "" {
		err = errors.Join(err, write(bill, func(b *bytes.Buffer) error { return writeBill(b, root, linked, p) }))
	}
	return err
}

func write(path string, content func(*bytes.Buffer) error) error {
	var b bytes.Buffer
	if err := content(&b); err != nil {
		return err
	}
	return os.WriteFile(path, b.Bytes(), 0o644)
}
