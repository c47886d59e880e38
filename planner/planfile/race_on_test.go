//go:build race

package planfile

// underRace says that the race detector is on, which makes large inputs take
// minutes without finding more than small ones.
const underRace = true
