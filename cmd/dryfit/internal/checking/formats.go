package checking

import (
	"fmt"
	"io"
	"os"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/usage"
)

// writer is the format asked for; nil for JSON Lines and SARIF, which are written as the
// specs are done.
func (f Flags) writer(s console.Streams) (func(io.Writer, report.Report) error, error) {
	colour, err := f.inColour(s)
	if err != nil {
		return nil, err
	}
	if f.Summary && f.Format != "text" {
		return nil, fmt.Errorf("--summary is for text; it can't be combined with --format %s", f.Format)
	}
	switch f.Format {
	case "text":
		return f.textWriter(colour), nil
	case "json":
		return report.JSON, nil
	case "jsonl", "sarif":
		return nil, nil
	case "junit":
		return report.JUnit, nil
	case "markdown":
		return report.Markdown, nil
	case "annotations":
		return report.Annotations, nil
	default:
		return nil, fmt.Errorf("--format %q is not %s", f.Format, usage.OneOf(Formats))
	}
}

func (f Flags) textWriter(colour bool) func(io.Writer, report.Report) error {
	print := report.Text
	if f.Summary {
		print = report.Summary
	}
	return func(w io.Writer, r report.Report) error { return print(w, r, colour) }
}

// Formats are those that findings are written in.
var Formats = []string{"text", "json", "jsonl", "sarif", "junit", "markdown", "annotations"}

// inColour follows the flag, then NO_COLOR, then whether there is a terminal.
func (f Flags) inColour(s console.Streams) (bool, error) {
	switch f.Colour {
	case "always":
		return true, nil
	case "never":
		return false, nil
	case "auto":
		plain := os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb"
		return !plain && f.Output == "" && console.Terminal(s.Out), nil
	default:
		return false, fmt.Errorf("--color %q is not auto, always or never", f.Colour)
	}
}
