package planfile

// What a plan file may hold. A plan of 10,000 pots with four plantings of three
// kinds each takes about 8 MB and 1.6 million YAML nodes by the count below; these
// limits leave room above that and keep a hostile file to some hundred megabytes
// of memory.
const (
	MaxBytes = 32 << 20 // of a file
	MaxNodes = 2 << 20  // an upper bound of the nodes, counted before parsing
	MaxDepth = 24       // of nested mappings and lists; the format itself nests 7 deep

	MaxID       = 64     // characters of an id
	MaxName     = 200    // characters of a name, a title, a client
	MaxNotes    = 20_000 // characters of notes and of a log entry's text
	MaxProblems = 100    // problems reported for one file; the rest are counted
)
