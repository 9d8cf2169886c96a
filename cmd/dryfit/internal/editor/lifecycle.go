package editor

import (
	"encoding/json"
	"slices"

	"dryfit/cmd/dryfit/internal/editor/wire"
	"dryfit/rules/model/standards"
)

func (s *server) initialize(p initializeParams) (any, error) {
	s.client, s.phase = p, running
	s.bytes = slices.Contains(p.Capabilities.General.PositionEncodings, "utf-8")
	encoding := "utf-16"
	if s.bytes {
		encoding = "utf-8"
	}
	root := p.RootURI
	if len(p.Folders) > 0 {
		root = p.Folders[0].URI
	}
	s.folder, _ = pathOf(root)
	type object = map[string]any
	return object{
		"capabilities": object{
			"positionEncoding":       encoding,
			"textDocumentSync":       object{"openClose": true, "change": 1, "save": true},
			"hoverProvider":          true,
			"completionProvider":     object{"triggerCharacters": []string{".", "=", "\"", "[", "{"}},
			"codeActionProvider":     object{"codeActionKinds": []string{quickFix}},
			"documentSymbolProvider": true,
			"definitionProvider":     true,
		},
		"serverInfo": object{"name": "dryfit", "version": s.Version},
	}, nil
}

// watch asks to be told of standards that change, where the client can.
func (s *server) watch() {
	if !s.client.Capabilities.Workspace.WatchedFiles.DynamicRegistration {
		return
	}
	type object = map[string]any
	s.write(wire.Outgoing{Version: "2.0", ID: "watch-standards", Method: "client/registerCapability", Params: object{
		"registrations": []object{{
			"id": "watch-standards", "method": "workspace/didChangeWatchedFiles",
			"registerOptions": object{"watchers": []object{{"globPattern": "**/" + standards.FileName}}},
		}},
	}})
}

// cancel answers a request that still waits for a review. One that has been
// answered can't be cancelled, which is no mistake of the client's.
func (s *server) cancel(p struct {
	ID json.RawMessage `json:"id"`
},
) (any, error) {
	id, _ := wire.IDOf(p.ID)
	for _, d := range s.documents {
		d.waiting = slices.DeleteFunc(d.waiting, func(w waiting) bool {
			if string(w.id) != string(id) {
				return false
			}
			s.answer(w.id, nil, wire.Faulty(wire.CodeCancelled, "cancelled"))
			return true
		})
	}
	return nil, nil
}
