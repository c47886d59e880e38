package climate

// Record is a checked daily series.
type Record struct{}

func (b *base) fromRecord(*Record, Place) error { return &Error{Code: "climate.record_too_short"} }
