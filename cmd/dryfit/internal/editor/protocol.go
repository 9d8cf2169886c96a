package editor

import "encoding/json"

// The parts of the Language Server Protocol 3.17 that are spoken. Names and
// shapes are the protocol's.

type position struct {
	Line      int `json:"line"`
	Character int `json:"character"`
}

type span struct {
	Start position `json:"start"`
	End   position `json:"end"`
}

// touches reports whether two ranges share a place; that of a cursor counts.
func (s span) touches(o span) bool { return !s.End.before(o.Start) && !o.End.before(s.Start) }

func (p position) before(o position) bool {
	return p.Line < o.Line || p.Line == o.Line && p.Character < o.Character
}

type location struct {
	URI   string `json:"uri"`
	Range span   `json:"range"`
}

// The severities of a diagnostic.
const (
	asError       = 1
	asWarning     = 2
	asInformation = 3
	asHint        = 4
)

type diagnostic struct {
	Range    span      `json:"range"`
	Severity int       `json:"severity"`
	Code     string    `json:"code"`
	Source   string    `json:"source"`
	Message  string    `json:"message"`
	Related  []related `json:"relatedInformation,omitempty"`
}

type related struct {
	Location location `json:"location"`
	Message  string   `json:"message"`
}

type publishParams struct {
	URI         string       `json:"uri"`
	Version     *int         `json:"version,omitempty"`
	Diagnostics []diagnostic `json:"diagnostics"`
}

type initializeParams struct {
	RootURI string `json:"rootUri"`
	Folders []struct {
		URI string `json:"uri"`
	} `json:"workspaceFolders"`
	Capabilities struct {
		General struct {
			PositionEncodings []string `json:"positionEncodings"`
		} `json:"general"`
		Workspace struct {
			WorkspaceEdit struct {
				DocumentChanges bool `json:"documentChanges"`
			} `json:"workspaceEdit"`
			WatchedFiles struct {
				DynamicRegistration bool `json:"dynamicRegistration"`
			} `json:"didChangeWatchedFiles"`
		} `json:"workspace"`
		TextDocument struct {
			Publish struct {
				Related bool `json:"relatedInformation"`
			} `json:"publishDiagnostics"`
			CodeAction struct {
				Literal *json.RawMessage `json:"codeActionLiteralSupport"`
			} `json:"codeAction"`
			Symbols struct {
				Hierarchical bool `json:"hierarchicalDocumentSymbolSupport"`
			} `json:"documentSymbol"`
		} `json:"textDocument"`
	} `json:"capabilities"`
}

type openParams struct {
	Document struct {
		URI     string `json:"uri"`
		Version int    `json:"version"`
		Text    string `json:"text"`
	} `json:"textDocument"`
}

type identifier struct {
	URI string `json:"uri"`
}

type changeParams struct {
	Document struct {
		URI     string `json:"uri"`
		Version int    `json:"version"`
	} `json:"textDocument"`
	Changes []struct {
		Range *span  `json:"range"`
		Text  string `json:"text"`
	} `json:"contentChanges"`
}

type documentParams struct {
	Document identifier `json:"textDocument"`
}

type placeParams struct {
	Document identifier `json:"textDocument"`
	Position position   `json:"position"`
}

type hover struct {
	Contents markup `json:"contents"`
	Range    *span  `json:"range,omitempty"`
}

type markup struct {
	Kind  string `json:"kind"`
	Value string `json:"value"`
}

func inMarkdown(text string) markup { return markup{Kind: "markdown", Value: text} }

// The kinds of a completion.
const (
	kindModule   = 9
	kindProperty = 10
	kindValue    = 12
	kindEnum     = 20
)

type completion struct {
	Label         string   `json:"label"`
	Kind          int      `json:"kind"`
	Detail        string   `json:"detail,omitempty"`
	Documentation *markup  `json:"documentation,omitempty"`
	SortText      string   `json:"sortText"`
	FilterText    string   `json:"filterText,omitempty"`
	Edit          textEdit `json:"textEdit"`
}

type textEdit struct {
	Range   span   `json:"range"`
	NewText string `json:"newText"`
}

// The kinds of a symbol.
const (
	symbolString  = 15
	symbolNumber  = 16
	symbolBoolean = 17
	symbolArray   = 18
	symbolObject  = 19
	symbolKey     = 20 // whose value is not written yet
)

type symbol struct {
	Name      string   `json:"name"`
	Detail    string   `json:"detail,omitempty"`
	Kind      int      `json:"kind"`
	Range     span     `json:"range"`
	Selection span     `json:"selectionRange"`
	Children  []symbol `json:"children,omitempty"`
}

type flatSymbol struct {
	Name     string   `json:"name"`
	Kind     int      `json:"kind"`
	Location location `json:"location"`
	Within   string   `json:"containerName,omitempty"`
}

type actionParams struct {
	Document identifier `json:"textDocument"`
	Range    span       `json:"range"`
	Context  struct {
		Only []string `json:"only"`
	} `json:"context"`
}

const quickFix = "quickfix"

type codeAction struct {
	Title       string        `json:"title"`
	Kind        string        `json:"kind"`
	Diagnostics []diagnostic  `json:"diagnostics"`
	Preferred   bool          `json:"isPreferred"`
	Edit        workspaceEdit `json:"edit"`
}

type workspaceEdit struct {
	Changes         map[string][]textEdit `json:"changes,omitempty"`
	DocumentChanges []documentEdit        `json:"documentChanges,omitempty"`
}

type documentEdit struct {
	Document struct {
		URI     string `json:"uri"`
		Version int    `json:"version"`
	} `json:"textDocument"`
	Edits []textEdit `json:"edits"`
}
