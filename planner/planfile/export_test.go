package planfile

// UnderRace says that the race detector is on.
const UnderRace = underRace
