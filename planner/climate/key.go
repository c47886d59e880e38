package climate

// The words of this chapter that a person reads have texts under these keys.

// Key returns the key of the text for the kind of place.
func (k PlaceKind) Key() string { return "climate.kind_" + string(k) }

// Key returns the key of the text for the outcome.
func (o Outcome) Key() string { return "climate.outcome_" + string(o) }

// Key returns the key of the text for the fault of a daily record.
func (f Fault) Key() string { return "climate.fault_" + string(f) }

// Key returns the key of the text for the layout of a daily record.
func (l Layout) Key() string { return "climate.layout_" + string(l) }

// Key returns the key of the text for the unit of a daily record.
func (u Unit) Key() string { return "climate.unit_" + string(u) }

// Key returns the key of the text for how sure a reading of a daily record is.
func (c Certainty) Key() string { return "climate.certainty_" + string(c) }

// Key returns the key of the text for the order of a date's parts.
func (o DateOrder) Key() string { return "climate.order_" + string(o) }

// Key returns the key of the text for what a publisher says of freezes.
func (n FreezeNote) Key() string { return "climate.freeze_note_" + string(n) }
