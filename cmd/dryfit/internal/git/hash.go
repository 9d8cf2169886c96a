package git

import (
	"crypto/sha1"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"hash"
	"io"
)

// hashOf is the hash that git gives to a content of some length, by the algorithm
// that another hash of the same repository was made with: SHA-1, or SHA-256 where
// it is longer. It tells contents apart; nothing rests on it being hard to forge.
func hashOf(content io.Reader, length int64, like string) (string, error) {
	var h hash.Hash = sha1.New()
	if len(like) == hex.EncodedLen(sha256.Size) {
		h = sha256.New()
	}
	fmt.Fprintf(h, "blob %d\x00", length)
	_, err := io.Copy(h, content)
	return hex.EncodeToString(h.Sum(nil)), err
}
