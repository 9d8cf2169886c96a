package show

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Escapes of strings: CSS Syntax Module Level 3, 4.3.7. The blank after the six
// digits is a part of the escape.
func TestCSSString(t *testing.T) {
	assert.Equal(t, `"Hall 3\00002c  level 2"`, CSSString("Hall 3, level 2"))
	hostile := CSSString("\"; } body { display: none } </style><script>\\\n")
	assert.NotContains(t, hostile[1:len(hostile)-1], `"`)
	for _, c := range []string{"<", ">", "{", "}", ";", "\n"} {
		assert.NotContains(t, hostile, c)
	}
}

func TestAPagesOwnStyleIsAllowed(t *testing.T) {
	f := Furniture{Policy: "default-src 'none'; style-src 'sha256-x'; base-uri 'none'"}.With("p { color: red }")
	assert.Contains(t, f.Policy, "style-src "+hashOf("p { color: red }")+" 'sha256-x'")
	assert.Equal(t, 1, strings.Count(f.Policy, "style-src"))
}
