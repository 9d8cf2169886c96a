package main

// reasons say of each module what dryfit uses it for.
var reasons = map[string]string{
	"std":                                      "everything else",
	"codeberg.org/go-pdf/fpdf":                 "drawings as PDF",
	"github.com/BurntSushi/toml":               "decodes specs and standards",
	"github.com/bmatcuk/doublestar/v4":         "patterns of paths, with ** for any folders",
	"github.com/fatih/color":                   "colour on a terminal",
	"github.com/fsnotify/fsnotify":             "sees that a file was saved, for `check --watch`",
	"github.com/google/renameio/v2":            "replaces a file whole or not at all",
	"github.com/mattn/go-isatty":               "is it a terminal",
	"github.com/pelletier/go-toml/v2":          "its parser alone: where keys and values stand",
	"github.com/rivo/uniseg":                   "how wide a text is on a terminal",
	"github.com/rogpeppe/go-internal":          "the patch that `remedy` prints; the tests' scripts",
	"github.com/santhosh-tekuri/jsonschema/v5": "holds specs and standards against their schemas",
	"github.com/spf13/cobra":                   "commands, their flags, help and completion; manual pages, which go generate writes",
	"golang.org/x/image":                       "the Go fonts, for PDF",
	"golang.org/x/sync":                        "several specs at a time",
	"golang.org/x/tools":                       "reads the txtar archives that examples of rules are kept in",

	"github.com/inconshreveable/mousetrap": "cobra: told that it was started by a double click, on Windows",
	"github.com/mattn/go-colorable":        "color: terminals of Windows",
	"github.com/spf13/pflag":               "cobra: flags",
	"go.yaml.in/yaml/v3":                   "cobra, for a kind of page that is not written; the tests of workflows",
	"golang.org/x/sys":                     "fsnotify and isatty: calls to the system; the tests' terminals",
	"golang.org/x/text":                    "image: the encodings of fonts",

	"github.com/stretchr/testify": "assertions",
	"github.com/yuin/goldmark":    "reads the Markdown that was written",
	"gonum.org/v1/gonum":          "linear algebra and distributions, to compare with ours",
	"pgregory.net/rapid":          "draws cases for properties",
}
