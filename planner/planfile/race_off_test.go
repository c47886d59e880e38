//go:build !race

package planfile

const underRace = false
