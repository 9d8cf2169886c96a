package engine

// Severity is what a finding means for the spec.
type Severity uint8

// The severities, and there are no others.
const (
	// Note: worth knowing.
	Note Severity = iota + 1
	// Query: buildable, but outside the standards; to be answered.
	Query
	// Hold: cannot be built, carried, raised or closed as specified.
	Hold
	// Refer: for a licensed engineer, the authority or the local code. It is
	// neither accepted away nor switched off.
	Refer
)

// String is the word that reports print.
func (s Severity) String() string {
	switch s {
	case Note:
		return "note"
	case Query:
		return "query"
	case Hold:
		return "hold"
	case Refer:
		return "refer"
	default:
		return "no severity"
	}
}
