package checking

import (
	"fmt"
	"os"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/usage"
)

// format is the one asked for.
func (f Flags) format(s console.Streams) (report.Format, error) {
	colour, err := f.inColour(s)
	if err != nil {
		return nil, err
	}
	if f.Summary && f.Format != "text" {
		return nil, fmt.Errorf("--summary is for text; it can't be combined with --format %s", f.Format)
	}
	switch f.Format {
	case "text":
		if f.Summary {
			return report.Summary(colour), nil
		}
		return report.Text(colour), nil
	case "json":
		return report.JSON, nil
	case "jsonl":
		return report.JSONLines, nil
	case "sarif":
		return report.SARIF, nil
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
