package report

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"

	"dryfit/cmd/dryfit/internal/report/show"
)

// Seal says what a submittal was made of, so that an old page can be told from
// one of this spec, these standards and this version. It is no signature: who
// alters a page can alter its seal.
type Seal struct {
	Version   string   `json:"version"`
	On        string   `json:"on"` // the date that acceptances are judged on
	Strict    bool     `json:"strict"`
	Spec      Digest   `json:"spec"`
	Standards []Digest `json:"standards"` // nearest first; beside them the version's own
}

// Digest is a file by its content.
type Digest struct {
	Path   string `json:"path"` // from the repository's root
	SHA256 string `json:"sha256"`
}

// DigestOf is that of a file's bytes.
func DigestOf(path string, src []byte) Digest {
	sum := sha256.Sum256(src)
	return Digest{path, hex.EncodeToString(sum[:])}
}

// MarshalJSON implements json.Marshaler: the path is the author's text, and the
// page's template has a writer of its own.
func (d Digest) MarshalJSON() ([]byte, error) {
	type plain Digest
	text, err := json.Marshal(plain(d))
	return show.EscapeJSON(text), err
}

// Shown is the path as a page shows it.
func (d Digest) Shown() string { return show.Safe(d.Path) }

// The seal stands between these in a page.
const (
	sealBegin = `<script type="application/json" id="dryfit-submittal">`
	sealEnd   = `</script>`
)

// ReadSeal finds the seal in the bytes of a page.
func ReadSeal(page []byte) (Seal, error) {
	_, rest, found := bytes.Cut(page, []byte(sealBegin))
	text, _, ended := bytes.Cut(rest, []byte(sealEnd))
	var s Seal
	if !found || !ended {
		return s, errors.New("it has no seal of a submittal")
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&s); err != nil {
		return s, fmt.Errorf("its seal can't be read: %w", err)
	}
	if s.Spec.SHA256 == "" || s.Version == "" || s.On == "" {
		return s, errors.New("its seal is not whole")
	}
	return s, nil
}
