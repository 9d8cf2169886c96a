package sums

import (
	"dryfit/cmd/dryfit/internal/report/show"
)

// jsonModel is the frames of the straps, for a frame program. Nodes, members and
// springs are numbered from 1 in their order.
type jsonModel struct {
	Units  jsonUnits   `json:"units"`
	Frames []jsonFrame `json:"frames"`
}

type jsonUnits struct {
	Length string `json:"length"`
	Force  string `json:"force"`
	Angle  string `json:"angle"`
}

type jsonFrame struct {
	Key      string        `json:"key"`
	Name     string        `json:"name"`
	Section  jsonSection   `json:"section"`
	Nodes    []jsonPoint   `json:"nodes"`
	Members  []jsonMember  `json:"members"`
	Supports []jsonSupport `json:"supports"`
	Springs  []jsonSpring  `json:"springs"`
	Weight   jsonWeight    `json:"self_weight"`
	Cases    []jsonCase    `json:"cases"`
}

type jsonSection struct {
	E     show.JSONNumber `json:"E"`
	G     show.JSONNumber `json:"G"`
	A     show.JSONNumber `json:"A"`
	I     show.JSONNumber `json:"I"`
	Shear show.JSONNumber `json:"shear_area"`
}

type jsonPoint struct {
	X show.JSONNumber `json:"x"`
	Y show.JSONNumber `json:"y"`
}

type jsonMember struct {
	From      int  `json:"from"`
	To        int  `json:"to"`
	HingeFrom bool `json:"hinge_from"`
	HingeTo   bool `json:"hinge_to"`
}

type jsonSupport struct {
	Node  int    `json:"node"`
	Holds string `json:"holds"`
}

type jsonSpring struct {
	Name      string          `json:"name"`
	Node      int             `json:"node"`
	Toward    jsonPoint       `json:"toward"`
	Stiffness show.JSONNumber `json:"stiffness"`
	Works     string          `json:"works"`
}

type jsonWeight struct {
	Nodes   []jsonNodeLoad   `json:"nodes"`
	Members []jsonMemberLoad `json:"members"`
}

type jsonNodeLoad struct {
	Node int `json:"node"`
	jsonPoint
	Couple show.JSONNumber `json:"couple"`
}

type jsonMemberLoad struct {
	Member int `json:"member"`
	jsonPoint
}

type jsonCase struct {
	Key      string            `json:"key"`
	Name     string            `json:"name"`
	Springs  []jsonForce       `json:"springs"`
	Supports []show.JSONNumber `json:"supports"`
	Moves    []jsonMove        `json:"moves"`
}

type jsonForce struct {
	Spring int             `json:"spring"`
	Longer show.JSONNumber `json:"longer"`
	Force  show.JSONNumber `json:"force"`
	Slack  bool            `json:"slack"`
}

type jsonMove struct {
	jsonPoint
	Turn show.JSONNumber `json:"turn"`
}
