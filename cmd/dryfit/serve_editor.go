package main

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/editor"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// afterEdit is how long a text is left alone before it is reviewed: longer than
// between two keys of a fast typist, shorter than one notices.
const afterEdit = 120 * time.Millisecond

func serveEditorCommand(s console.Streams) *cobra.Command {
	var named string
	c := &cobra.Command{
		Use:   "serve-editor",
		Short: "Serve an editor by the Language Server Protocol",
		Long: "Speaks the Language Server Protocol (3.17) on standard input and output, for editors. It\n" +
			"serves files named *.ceiling.toml and dryfit.toml: findings while you type, help on a\n" +
			"key with its figures and limits, completion, the values that would pass, an outline, and\n" +
			"the definition that an acceptance refers to.\n" +
			"\n" +
			"Exit status: 0 after an orderly shutdown, 1 otherwise, 2 if the editor's messages can't\n" +
			"be read.",
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error { return serveEditor(c.Context(), s, named) },
	}
	c.Flags().StringVar(&named, "standards", "", "a standards `file` in place of those found")
	c.Flags().Bool("stdio", true, "use standard input and output, the only transport")
	return c
}

func serveEditor(ctx context.Context, s console.Streams, named string) error {
	err := editor.Serve(ctx, s.In, s.Out, editor.Options{
		Version: build.Version(), Rules: catalog.Rules(), Quiet: afterEdit, Log: s.Err,
		Standards: func(folder string) editor.Found { return forEditor(source.NewFinder(named), folder) },
		Today:     func() string { return time.Now().UTC().Format(time.DateOnly) },
	})
	if errors.Is(err, editor.ErrNoShutdown) {
		fmt.Fprintln(s.Err, "dryfit: "+show.Safe(err.Error()))
		return exit.VerdictError{Status: exit.Fail}
	}
	return err
}

// forEditor is the standards for a folder, with the text of a file that can't be
// taken, for its faults to be shown in.
func forEditor(s *source.Finder, folder string) editor.Found {
	std, _ := s.ForFolder(folder)
	found := editor.Found{Standards: std}
	for _, assessment := range s.Assessments() {
		found.Broken = append(found.Broken, broken(assessment))
	}
	return found
}

func broken(assessment *review.Assessment) editor.Broken {
	src, _ := source.NewInput(assessment.Path).Read(nil)
	return editor.Broken{Path: assessment.Path, Source: src, Problems: assessment.Problems}
}
