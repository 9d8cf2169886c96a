package layout

// PieceKind is what a piece is for.
type PieceKind uint8

// The kinds of piece.
const (
	Rib PieceKind = iota + 1
	HalfRib
	Rail
	HalfRail
	SkinSheet
	LooseTenon
	Hanger
	Let // a fitting let into a coffer
)

var pieceNames = [...]string{Rib: "rib", HalfRib: "half rib", Rail: "rail", HalfRail: "half rail", SkinSheet: "skin", LooseTenon: "tenon", Hanger: "strap", Let: "fitting"}

// String is the kind's name in lists and sentences.
func (k PieceKind) String() string { return pieceNames[k] }
