package quantity

import (
	"fmt"
	"regexp"
	"strconv"
)

// Stock is the name of a nominal thickness of sawn stock in quarters of an
// inch, "8/4". It is not a length: what is left of it after surfacing is.
type Stock string

var stockForm = regexp.MustCompile(`^([1-9]\d?)/4$`)

// Quarters is the number of quarters in the name.
func (s Stock) Quarters() (int, error) {
	m := stockForm.FindStringSubmatch(string(s))
	if m == nil {
		return 0, fmt.Errorf(`not a nominal stock; write "4/4" or "8/4"`)
	}
	return strconv.Atoi(m[1])
}

// UnmarshalText implements encoding.TextUnmarshaler.
func (s *Stock) UnmarshalText(text []byte) error {
	*s = Stock(text)
	_, err := s.Quarters()
	return err
}
