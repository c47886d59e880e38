package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"fourturn/app/widgets/ink"
)

// curveSteps is into how many straight pieces a curve is cut; at 24 units across,
// the error stays under a hundredth of a unit.
const curveSteps = 12

// parsePath reads path data with absolute M L H V C A Z.
func parsePath(d string) ([]line, error) {
	var (
		lines []line
		at    ink.Point
	)
	for _, step := range splitCommands(d) {
		command, numbers, err := readStep(step)
		if err != nil {
			return nil, err
		}
		if command == 'M' {
			lines = append(lines, line{})
		}
		if len(lines) == 0 {
			return nil, fmt.Errorf("path %q does not begin with M", d)
		}
		current := &lines[len(lines)-1]
		if command == 'Z' {
			current.closed = true
			continue
		}
		points := trace(command, at, numbers)
		current.points = append(current.points, points...)
		at = points[len(points)-1]
	}
	return lines, nil
}

func splitCommands(d string) []string {
	var steps []string
	for _, r := range d {
		switch {
		case strings.ContainsRune("MLHVCAZ", r):
			steps = append(steps, string(r))
		case len(steps) > 0:
			steps[len(steps)-1] += string(r)
		}
	}
	return steps
}

// counts says how many numbers follow each command.
var counts = map[byte]int{'M': 2, 'L': 2, 'H': 1, 'V': 1, 'C': 6, 'A': 7, 'Z': 0}

func readStep(step string) (command byte, numbers []float64, err error) {
	command = step[0]
	for _, field := range strings.Fields(step[1:]) {
		v, err := strconv.ParseFloat(field, 64)
		if err != nil {
			return 0, nil, fmt.Errorf("step %q: %w", step, err)
		}
		numbers = append(numbers, v)
	}
	if len(numbers) != counts[command] {
		return 0, nil, fmt.Errorf("step %q: want %d numbers, have %d", step, counts[command], len(numbers))
	}
	return command, numbers, nil
}

// trace returns the points that one command adds.
func trace(command byte, at ink.Point, n []float64) []ink.Point {
	switch command {
	case 'M', 'L':
		return []ink.Point{{X: n[0], Y: n[1]}}
	case 'H':
		return []ink.Point{{X: n[0], Y: at.Y}}
	case 'V':
		return []ink.Point{{X: at.X, Y: n[0]}}
	case 'C':
		return cubic(at, ink.Point{X: n[0], Y: n[1]}, ink.Point{X: n[2], Y: n[3]}, ink.Point{X: n[4], Y: n[5]})
	case 'A':
		return arc(at, n[0], n[3] != 0, n[4] != 0, ink.Point{X: n[5], Y: n[6]})
	}
	panic("outline: unknown path command")
}

func cubic(a, b, c, d ink.Point) []ink.Point {
	points := make([]ink.Point, curveSteps)
	for i := range points {
		t := float64(i+1) / curveSteps
		u := 1 - t
		k0, k1, k2, k3 := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		points[i] = ink.Point{
			X: k0*a.X + k1*b.X + k2*c.X + k3*d.X,
			Y: k0*a.Y + k1*b.Y + k2*c.Y + k3*d.Y,
		}
	}
	return points
}

// arc follows a circle of radius r from a to b, as SVG's A with equal radii does.
func arc(a ink.Point, r float64, large, sweep bool, b ink.Point) []ink.Point {
	dx, dy := b.X-a.X, b.Y-a.Y
	chord := math.Hypot(dx, dy)
	r = math.Max(r, chord/2)
	height := math.Sqrt(math.Max(0, r*r-chord*chord/4))
	if large == sweep {
		height = -height
	}
	cx, cy := (a.X+b.X)/2-dy/chord*height, (a.Y+b.Y)/2+dx/chord*height
	from := math.Atan2(a.Y-cy, a.X-cx)
	turn := math.Atan2(b.Y-cy, b.X-cx) - from
	if sweep && turn < 0 {
		turn += 2 * math.Pi
	}
	if !sweep && turn > 0 {
		turn -= 2 * math.Pi
	}
	steps := curveSteps + int(math.Abs(turn)*6)
	points := make([]ink.Point, steps)
	for i := range points {
		sin, cos := math.Sincos(from + turn*float64(i+1)/float64(steps))
		points[i] = ink.Point{X: cx + r*cos, Y: cy + r*sin}
	}
	return points
}
