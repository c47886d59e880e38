package plants

// Maybe is a value that a plant may not have: cut stems have no heat limit. The
// zero Maybe is unknown.
type Maybe[T any] struct {
	value T
	known bool
}

// Some returns a known value.
func Some[T any](v T) Maybe[T] { return Maybe[T]{value: v, known: true} }

// Get returns the value and whether it is known.
func (m Maybe[T]) Get() (T, bool) { return m.value, m.known }

// Known reports whether there is a value.
func (m Maybe[T]) Known() bool { return m.known }

// Or returns the value, or other where it is not known.
func (m Maybe[T]) Or(other T) T {
	if m.known {
		return m.value
	}
	return other
}
