package main

// reasons say of each module what dryfit uses it for.
var reasons = map[string]string{
	"std":                                      "everything else",
	"codeberg.org/go-pdf/fpdf":                 "drawings as PDF",
	"github.com/BurntSushi/toml":               "decodes specs and standards",
	"github.com/bmatcuk/doublestar/v4":         "patterns of paths, with ** for any folders",
	"github.com/fatih/color":                   "colour on a terminal",
	"github.com/fsnotify/fsnotify":             "detects that a file was saved, for `check --watch`",
	"github.com/google/renameio/v2":            "replaces a file whole or not at all",
	"github.com/mattn/go-isatty":               "detects a terminal",
	"github.com/pelletier/go-toml/v2":          "its parser only: the places of keys and values",
	"github.com/rivo/uniseg":                   "the width of a text on a terminal",
	"github.com/rogpeppe/go-internal":          "the patch that `remedy` prints; the tests' scripts",
	"github.com/santhosh-tekuri/jsonschema/v5": "validates specs and standards by their schemas",
	"github.com/spf13/cobra":                   "commands, their flags, help and completion; manual pages, which go generate writes",
	"golang.org/x/image":                       "the Go fonts, for PDF",
	"golang.org/x/sync":                        "checks several specs at a time",
	"golang.org/x/tools":                       "reads the txtar archives of the rules' examples",

	"github.com/inconshreveable/mousetrap": "cobra: detects a start by double click, on Windows",
	"github.com/mattn/go-colorable":        "color: terminals of Windows",
	"github.com/spf13/pflag":               "cobra: flags",
	"go.yaml.in/yaml/v3":                   "cobra, for a kind of page that is not written; the tests of workflows",
	"golang.org/x/sys":                     "fsnotify and isatty: calls to the system; the tests' terminals",
	"golang.org/x/text":                    "image: the encodings of fonts",

	"github.com/stretchr/testify": "assertions",
	"github.com/yuin/goldmark":    "parses the Markdown that dryfit writes",
	"gonum.org/v1/gonum":          "linear algebra and distributions, to compare with ours",
	"pgregory.net/rapid":          "generates cases for tests of properties",
}
