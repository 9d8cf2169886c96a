package making

import (
	"dryfit/cmd/dryfit/internal/report/show"
)

type jsonRaiseState struct {
	Holds  bool              `json:"holds"`
	Why    string            `json:"why,omitempty"`
	Lifts  []show.JSONNumber `json:"lifts"`
	Straps []show.JSONNumber `json:"straps"`
}

type jsonRaiseLoss struct {
	What string `json:"what"`
	jsonRaiseState
}

type jsonRaiseStep struct {
	Name     string `json:"name"`
	Released string `json:"release"`
	jsonRaiseState
	Lost []jsonRaiseLoss `json:"lost"`
}

type jsonPick struct {
	Panel         int              `json:"panel"`
	Order         []int            `json:"order"`
	ByBalance     bool             `json:"by_balance"`
	BalancedAfter *int             `json:"balanced_after"`
	SecureAfter   *int             `json:"secure_after"`
	Pull          *show.JSONNumber `json:"pull"`
	Steps         []jsonRaiseStep  `json:"steps"`
}

type jsonReferred struct {
	Rule string `json:"rule"`
	Text string `json:"text"`
}

type jsonRaiseFigure struct {
	Key     string          `json:"key"`
	Name    string          `json:"name"`
	Value   show.JSONNumber `json:"value"`
	Unit    string          `json:"unit"`
	Formula string          `json:"formula,omitempty"`
	Method  string          `json:"method,omitempty"`
}
