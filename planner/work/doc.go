// Package work is about work on pots: when it is done, and by whom.
//
// # Crew visits
//
// Change-outs of many pots fall on shared visit days. A job may be done on any of its
// own good days, each of which loses some display; a visit to a place on a day costs
// a trip. PlanVisits chooses for each job a day so that
//
//	Σ loss of the jobs + trip × number of (place, day) visits
//
// is small, with the minutes of all jobs and trips of a day within the crew's. Without
// a limit on minutes, and where the loss of each job only grows away from its best
// day, the answer is the best: between two visits next to each other a job goes to the
// better of them, which a dynamic programme over the days of each place decides.
// With a limit the problem contains bin packing; then the answer is a repaired and
// improved one, searched to the end on small cases, and stands beside a lower bound:
// no other plan of visits is better by more than [Visits.Gap]. The bound is the larger
// of that without the limit and of a Lagrangian relaxation of the limit, whose parts,
// facility location problems of a place each, are bounded by dual ascent (Erlenkotter
// 1978, Operations Research 26:992-1009; from memory).
//
// Limits: a crew's day is a number of minutes, without an order of the day's trips or
// the way between places; a job is done in one go.
package work
