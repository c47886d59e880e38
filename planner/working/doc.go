// Package working holds the trace behind a figure: the formula, the inputs with
// their units, and how far the source of each can be trusted.
//
// A chapter returns its result as a value that remembers its inputs and has a
// method Working that builds the [Trace] when somebody asks. Names are keys such
// as "mix.settling"; the words for them are added at the surface. Formulas are
// written in symbols, which need no translation.
package working
