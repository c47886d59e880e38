// Package arrange works out how many plants a pot takes.
//
// Plants of one season stand in a pot closer than in a bed and lean over its rim,
// so the surface they share is the opening widened by half a spacing all round:
// by Steiner's formula for a convex outline of area A and perimeter P,
//
//	S = A + P × s/2 + π × s²/4
//
// where s is the spacing in the pot. In the closest (hexagonal) arrangement each
// plant holds s² × √3/2 of it, and n = S / (s² × √3/2) plants fill the pot.
//
// That the outline be widened by half a spacing is a judgement; with it the count
// agrees with the published counts per pot diameter (Univ. Illinois Extension's
// odd numbers apart, which are a matter of taste) at an ordinary spacing of 25 cm:
// see the table in testdata/published/arrange.csv.
//
// Limits: one spacing a kind, a convex opening, plants of one age. Where each
// plant stands is not worked out here yet.
package arrange
