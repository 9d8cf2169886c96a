package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"

	"dryfit/cmd/dryfit/internal/drawing"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

const (
	demoFolder = "docs/examples/alder-quay"
	demoSpec   = demoFolder + "/specs/reading-room.ceiling.toml"
	drawnOn    = "2026-11-25"
)

// picture is the demo's section, each finding's number at its place.
func picture(root string) ([]byte, error) {
	house, err := os.ReadFile(filepath.Join(root, demoFolder, standards.FileName))
	if err != nil {
		return nil, err
	}
	layer, problems := catalog.ReadStandards(standards.FileName, house)
	if len(problems) > 0 {
		return nil, fmt.Errorf("%s: %s", standards.FileName, problems[0].Message)
	}
	src, err := os.ReadFile(filepath.Join(root, demoSpec))
	if err != nil {
		return nil, err
	}
	assessment := review.Spec(filepath.Base(demoSpec), src, review.Options{
		Rules: catalog.Rules(), Standards: standards.With(layer), On: drawnOn,
	})
	drawn, err := drawing.Draw("section", sheet.Input{Assessment: assessment, Version: "(devel)", On: drawnOn, SHA256: report.DigestOf(demoSpec, src).SHA256}, sheet.Options{})
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = svg.Write(&b, drawn)
	return b.Bytes(), err
}
