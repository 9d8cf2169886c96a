package git

import (
	"crypto/sha1"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"hash"
)

// hashOf is the hash that git gives to a content, by the algorithm that another
// hash of the same repository was made with: SHA-1, or SHA-256 where it is
// longer. It tells contents apart; nothing rests on it being hard to forge.
func hashOf(content []byte, like string) string {
	var h hash.Hash = sha1.New()
	if len(like) == hex.EncodedLen(sha256.Size) {
		h = sha256.New()
	}
	fmt.Fprintf(h, "blob %d\x00", len(content))
	h.Write(content)
	return hex.EncodeToString(h.Sum(nil))
}
