package plants

import "fourturn/planner/quantity"

// Span is a range of lengths, both ends included.
type Span struct {
	Low, High quantity.Length
}

// Weeks is a range of weeks, both ends included.
type Weeks struct {
	Low, High float64
}
