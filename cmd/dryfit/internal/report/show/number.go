package show

import (
	"encoding/json"
	"math"
	"strconv"

	"dryfit/spec/quantity"
)

// significant is how many digits of a float JSON carries, so that the last
// bits, which differ between processors, do not reach a reader.
const significant = 9

// JSONNumber is a float64 rounded to nine significant digits.
type JSONNumber float64

// MarshalJSON implements json.Marshaler.
func (n JSONNumber) MarshalJSON() ([]byte, error) {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(quantity.Steady(float64(n)), 'g', significant, 64), 64)
	if err != nil {
		return nil, err
	}
	return json.Marshal(rounded)
}

// JSONNumberOf is a value for a document; nil where there is none.
func JSONNumberOf(v quantity.Value) *JSONNumber {
	if v.Unit == 0 || math.IsNaN(v.SI) || math.IsInf(v.SI, 0) {
		return nil
	}
	n := JSONNumber(v.SI)
	return &n
}
