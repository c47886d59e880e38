package planfile

import _ "embed"

//go:embed schema.json
var schema string

// Schema returns the JSON Schema (draft 2020-12) of the current version, for
// other programs that read or write plans. It describes the shape of a file; what
// it cannot say (references, ranges of numbers) [Decode] checks.
func Schema() string { return schema }
