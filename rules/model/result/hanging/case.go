package hanging

import (
	"fmt"
	"strings"
)

// Kind is what a case of the frame shows.
type Kind uint8

// The kinds of case.
const (
	// Raised: on the lifts, no strap fixed.
	Raised Kind = iota + 1
	// FirstHung: on the straps alone, as when the lifts come down.
	FirstHung
	// FirstHungAlone: each piece of a split arch by itself, before it is joined.
	FirstHungAlone
	// Packed: with ledgers that bear.
	Packed
	// Seated: with ledgers that bear, packed to the measured seats of one panel.
	Seated
	// StrapLost: one strap taken away.
	StrapLost
	// StrapLostPacked: one strap taken away, with ledgers that bear.
	StrapLostPacked
	// StrapSet: one strap set long or short.
	StrapSet
	// FramingMoved: the framing of all but the end straps moved down or up.
	FramingMoved
	// FeetBlocked: the feet held.
	FeetBlocked
	// LiftDown: on all straps, as they were fixed on the lifts, and all lifts but one;
	// one strap set long or short where Strap names one.
	LiftDown
	// LiftsDown: the same, all lifts down.
	LiftsDown
	// InSeason: the rib bent by a season that came after it was hung, and one
	// strap set long or short where Strap names one.
	InSeason
)

// Way is the direction of a change of length.
type Way int8

// The directions: a strap that is longer lowers its point, as framing that moves
// down does.
const (
	Longer  Way = +1
	Shorter Way = -1
)

// ID tells one case from the others.
type ID struct {
	Kind   Kind
	Strap  int    // from the left foot, from 1, of a case of one strap
	Way    Way    // of a change of length
	Hung   string // state of the wood when it was hung, of a case of a season: "shop", "dry", "wet"
	Lift   int    // that is down, from 1
	Part   int    // piece of a split arch by itself, from 1, of a case with lifts down
	Season string // that came: "dry", "wet"
	At     string // of measured seats, whose: "panel 2"
}

// words are the names of the ways: of a strap's length, and of framing.
var words = map[Way]struct{ strap, framing string }{
	Longer: {"longer", "down"}, Shorter: {"shorter", "up"},
}

// Key is the case's part of a figure's key: "strap-set-2-longer".
func (id ID) Key() string {
	switch id.Kind {
	case Raised:
		return "raised"
	case FirstHung:
		return "first-hung"
	case FirstHungAlone:
		return "first-hung-alone"
	case Packed:
		return "packed"
	case Seated:
		return "packed-" + strings.ReplaceAll(id.At, " ", "-")
	case StrapLost:
		return fmt.Sprintf("strap-lost-%d", id.Strap)
	case StrapLostPacked:
		return fmt.Sprintf("strap-lost-%d-packed", id.Strap)
	case StrapSet:
		return fmt.Sprintf("strap-set-%d-%s", id.Strap, words[id.Way].strap)
	case FramingMoved:
		return "framing-moved-" + words[id.Way].framing
	case FeetBlocked:
		return "feet-blocked"
	case LiftDown, LiftsDown:
		return id.downKey()
	case InSeason:
		key := "season-" + id.Season + "-hung-" + id.Hung
		if id.Strap > 0 {
			key += "-" + id.set().Key()
		}
		return key
	}
	panic(fmt.Sprintf("hanging: no case of kind %d", id.Kind))
}

// Words say which case it is, in a sentence.
func (id ID) Words() string {
	switch id.Kind {
	case Raised:
		return "on the lifts"
	case FirstHung:
		return "as first hung"
	case FirstHungAlone:
		return "as first hung, each piece alone"
	case Packed:
		return "with the ledgers packed"
	case Seated:
		return fmt.Sprintf("with the ledgers packed to the measured seats of %s", id.At)
	case StrapLost:
		return fmt.Sprintf("with strap %d lost", id.Strap)
	case StrapLostPacked:
		return fmt.Sprintf("with strap %d lost and the ledgers packed", id.Strap)
	case StrapSet:
		return fmt.Sprintf("with strap %d set %s", id.Strap, words[id.Way].strap)
	case FramingMoved:
		return fmt.Sprintf("with the framing between the end straps moved %s", words[id.Way].framing)
	case FeetBlocked:
		return "with the feet held"
	case LiftDown, LiftsDown:
		return id.down()
	case InSeason:
		said := fmt.Sprintf("in the %s season, hung as it left the shop", id.Season)
		if id.Hung != "shop" {
			said = fmt.Sprintf("in the %s season, hung in the %s season", id.Season, id.Hung)
		}
		if id.Strap > 0 {
			said += ", " + id.set().Words()
		}
		return said
	}
	panic(fmt.Sprintf("hanging: no case of kind %d", id.Kind))
}

// set is the strap's part of a case of a season, or with lifts down.
func (id ID) set() ID { return ID{Kind: StrapSet, Strap: id.Strap, Way: id.Way} }
