package change

import (
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
)

type (
	jsonRemedy struct {
		Version      string                `json:"version"`
		On           string                `json:"on"`
		Path         string                `json:"path"`
		Verdict      string                `json:"verdict"`
		Strict       bool                  `json:"strict"`
		Reviews      int                   `json:"reviews"`
		LimitReached bool                  `json:"limit_reached"`
		Interrupted  bool                  `json:"interrupted"`
		Whole        bool                  `json:"whole"`
		Open         []report.JSONFinding  `json:"open"`
		Answers      []jsonAnswer          `json:"answers"`
		Alone        []string              `json:"alone"`
		Against      []string              `json:"against"`
		Tied         []string              `json:"tied"`
		Needed       []jsonChange          `json:"needed"`
		Loosened     []report.JSONLoosened `json:"loosened"`
		Each         []jsonCured           `json:"each,omitempty"`
	}
	jsonAnswer struct {
		Changes  []jsonChange      `json:"changes"`
		Size     show.JSONNumber   `json:"size"`
		Verdict  string            `json:"verdict"`
		Counts   report.JSONCounts `json:"counts"`
		Comments []jsonComment     `json:"comments"`
		jsonEffect
	}
	jsonComment struct {
		Line int    `json:"line"`
		Text string `json:"text"`
		Key  string `json:"key"`
	}
	jsonChange struct {
		Key     string `json:"key"`
		Was     any    `json:"was"`
		Assumed bool   `json:"assumed"`
		Value   any    `json:"value"`
	}
	jsonEffect struct {
		Clears []jsonNamed     `json:"clears"`
		Brings []jsonNamed     `json:"brings"`
		Worse  []jsonNamed     `json:"worse"`
		Stays  []string        `json:"stays_clear"`
		Mass   show.JSONNumber `json:"panel_mass_gained"`
		Panels int             `json:"panels_more"`
	}
	jsonNamed struct {
		Rule     string `json:"rule"`
		Severity string `json:"severity"`
		Key      string `json:"key"`
		Message  string `json:"message"`
	}
	jsonCured struct {
		Finding report.JSONFinding `json:"finding"`
		Cures   []jsonCure         `json:"cures"`
	}
	jsonCure struct {
		jsonChange
		Also []jsonChange    `json:"also,omitempty"`
		Size show.JSONNumber `json:"size"`
		jsonEffect
	}
)
