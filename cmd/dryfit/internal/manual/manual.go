//go:build !pages

// Package manual has the manual pages of the commands.
package manual

import (
	"bytes"
	"embed"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"time"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/outfile"
)

// manual are the pages as go generate writes them, with placeholders for the day
// and the version.
//
//go:embed man
var manual embed.FS

// Write writes each page into a folder, with the day and the version in its
// heading.
func Write(_ *cobra.Command, folder string) error {
	day, err := today()
	if err != nil {
		return err
	}
	if err := outfile.MakeFolder(folder, nil); err != nil {
		return err
	}
	pages, err := manual.ReadDir("man")
	if err != nil {
		return err
	}
	heading := fmt.Sprintf("%q %q", day.Format("Jan 2006"), "dryfit "+build.Version())
	for _, page := range pages {
		text, err := manual.ReadFile("man/" + page.Name())
		if err != nil {
			return err
		}
		text = bytes.Replace(text, []byte(`"Jan 1970" "dryfit VERSION"`), []byte(heading), 1)
		path := filepath.Join(folder, page.Name())
		if err := outfile.Write(path, nil, nil, func(w io.Writer) error { _, err := w.Write(text); return err }); err != nil {
			return err
		}
	}
	return nil
}

// today is the day of SOURCE_DATE_EPOCH, or of now.
func today() (time.Time, error) {
	epoch := os.Getenv("SOURCE_DATE_EPOCH")
	if epoch == "" {
		return time.Now(), nil
	}
	seconds, err := strconv.ParseInt(epoch, 10, 64)
	if err != nil {
		return time.Time{}, fmt.Errorf("SOURCE_DATE_EPOCH is %q, and no number of seconds", epoch)
	}
	return time.Unix(seconds, 0).UTC(), nil
}
