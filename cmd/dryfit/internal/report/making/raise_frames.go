package making

import (
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/model/result/raising"
)

type jsonFrame struct {
	Panel   int             `json:"panel"`
	Piece   *int            `json:"piece"`
	Name    string          `json:"name"`
	Release string          `json:"release"`
	Weight  show.JSONNumber `json:"weight"`
	With    string          `json:"with"`
	Carried []jsonShare     `json:"carried"`
	After   []jsonStage     `json:"after"`
	Also    []jsonShare     `json:"also"`
	Centre  jsonCentre      `json:"centre"`
	Forks   []jsonFork      `json:"forks"`
	Base    *jsonBase       `json:"base"`
	Hands   []jsonHands     `json:"hands"`
	Crew    int             `json:"crew"`
	People  jsonPeople      `json:"people"`
	Clear   show.JSONNumber `json:"clear"`
	Gap     jsonGap         `json:"gap"`
	Unknown []string        `json:"unknown"`
	Until   string          `json:"until"`
}

type jsonShare struct {
	What  string          `json:"what"`
	Force show.JSONNumber `json:"force"`
}

type jsonStage struct {
	Name    string      `json:"name"`
	Carried []jsonShare `json:"carried"`
}

type jsonCentre struct {
	Across  show.JSONNumber `json:"across"`
	Along   show.JSONNumber `json:"along"`
	Up      show.JSONNumber `json:"up"`
	FromEnd show.JSONNumber `json:"from_end"`
}

type jsonFork struct {
	Across   show.JSONNumber `json:"across"`
	Height   show.JSONNumber `json:"height"`
	ToCentre show.JSONNumber `json:"to_centre"`
}

type jsonBase struct {
	Before show.JSONNumber `json:"before"`
	After  show.JSONNumber `json:"after"`
	End    show.JSONNumber `json:"end"`
}

type jsonHands struct {
	For   string `json:"for"`
	Takes int    `json:"takes"`
}

type jsonPeople struct {
	Are  string          `json:"are"`
	Away show.JSONNumber `json:"away"`
	At   []jsonPerson    `json:"at"`
}

type jsonPerson struct {
	Across show.JSONNumber `json:"across"`
	Along  show.JSONNumber `json:"along"`
}

type jsonGap struct {
	What string          `json:"what"`
	Size show.JSONNumber `json:"size"`
}

// frames are those of the sheet, each force of both edge ribs together.
func frames(list []raising.Frame) []jsonFrame {
	out := []jsonFrame{}
	for i := range list {
		out = append(out, frameOf(&list[i]))
	}
	return out
}

func frameOf(f *raising.Frame) jsonFrame {
	number := func(v float64) show.JSONNumber { return show.JSONNumber(v) }
	out := jsonFrame{
		Panel: f.Panel, Name: f.Name, Release: f.Release, Weight: number(f.Weight), With: f.With, Carried: shares(f.Carried),
		After: []jsonStage{}, Also: shares(f.Also), Forks: []jsonFork{}, Hands: []jsonHands{}, Crew: f.Crew,
		Centre: jsonCentre{number(f.Centre.Across), number(f.Centre.Along), number(f.Centre.Up), number(f.Centre.FromEnd)},
		People: jsonPeople{Are: f.People.Are, Away: number(f.People.Away), At: []jsonPerson{}},
		Clear:  number(f.Top), Gap: jsonGap{f.Gap.What, number(f.Gap.Size)}, Unknown: append([]string{}, f.Unknown...), Until: f.Until,
	}
	if f.Piece > 0 {
		out.Piece = &f.Piece
	}
	for _, s := range f.After {
		out.After = append(out.After, jsonStage{s.Name, shares(s.Carried)})
	}
	for _, k := range f.Forks {
		out.Forks = append(out.Forks, jsonFork{number(k.Across), number(k.Height), number(k.ToCentre)})
	}
	if b := f.Base; b != nil {
		out.Base = &jsonBase{number(b.Before), number(b.After), number(b.End)}
	}
	for _, h := range f.Hands {
		out.Hands = append(out.Hands, jsonHands{h.For, h.Takes})
	}
	for _, p := range f.People.At {
		out.People.At = append(out.People.At, jsonPerson{number(p.Y), number(p.Z)})
	}
	return out
}

func shares(list []raising.Share) []jsonShare {
	out := []jsonShare{}
	for _, s := range list {
		out = append(out, jsonShare{s.What, show.JSONNumber(s.Force)})
	}
	return out
}
