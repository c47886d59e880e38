package main

import (
	"encoding/xml"
	"fmt"
	"math"
	"strings"

	"fourturn/app/widgets/ink"
)

// drawing is the part of SVG that the icons use.
type drawing struct {
	ViewBox     string  `xml:"viewBox,attr"`
	StrokeWidth float64 `xml:"stroke-width,attr"`
	Shapes      []shape `xml:",any"`
}

type shape struct {
	XMLName xml.Name
	Fill    string  `xml:"fill,attr"`
	D       string  `xml:"d,attr"`
	CX      float64 `xml:"cx,attr"`
	CY      float64 `xml:"cy,attr"`
	R       float64 `xml:"r,attr"`
	RX      float64 `xml:"rx,attr"`
	RY      float64 `xml:"ry,attr"`
	X       float64 `xml:"x,attr"`
	Y       float64 `xml:"y,attr"`
	Width   float64 `xml:"width,attr"`
	Height  float64 `xml:"height,attr"`
}

// line is a run of points, perhaps joined end to start.
type line struct {
	points []ink.Point
	closed bool
}

// Outline returns the SVG with each stroke replaced by the shapes that cover it.
// A filled shape keeps its inside and loses its stroke.
func Outline(source []byte) ([]byte, error) {
	var d drawing
	if err := xml.Unmarshal(source, &d); err != nil {
		return nil, err
	}
	var path strings.Builder
	for _, s := range d.Shapes {
		lines, err := s.lines()
		if err != nil {
			return nil, err
		}
		for _, l := range lines {
			if s.Fill != "" && s.Fill != "none" {
				write(&path, clockwise(l.points))
				continue
			}
			for _, piece := range ink.Outline(d.StrokeWidth, l.closed, l.points...) {
				write(&path, clockwise(piece))
			}
		}
	}
	out := fmt.Sprintf("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"24\" height=\"24\" viewBox=%q><path fill=\"#000000\" d=%q/></svg>\n",
		d.ViewBox, strings.TrimSpace(path.String()))
	return []byte(out), nil
}

// clockwise returns the points so ordered that all shapes unite when filled.
func clockwise(points []ink.Point) []ink.Point {
	area := 0.0
	for i, p := range points {
		q := points[(i+1)%len(points)]
		area += p.X*q.Y - q.X*p.Y
	}
	if area >= 0 {
		return points
	}
	turned := make([]ink.Point, len(points))
	for i, p := range points {
		turned[len(points)-1-i] = p
	}
	return turned
}

func write(b *strings.Builder, points []ink.Point) {
	for i, p := range points {
		letter := 'L'
		if i == 0 {
			letter = 'M'
		}
		fmt.Fprintf(b, "%c%.2f %.2f", letter, p.X, p.Y)
	}
	b.WriteString("Z ")
}

func (s shape) lines() ([]line, error) {
	switch s.XMLName.Local {
	case "path":
		return parsePath(s.D)
	case "circle":
		return []line{{points: oval(s.CX, s.CY, s.R, s.R), closed: true}}, nil
	case "ellipse":
		return []line{{points: oval(s.CX, s.CY, s.RX, s.RY), closed: true}}, nil
	case "rect":
		x, y := s.X+s.Width, s.Y+s.Height
		return []line{{points: []ink.Point{{X: s.X, Y: s.Y}, {X: x, Y: s.Y}, {X: x, Y: y}, {X: s.X, Y: y}}, closed: true}}, nil
	}
	return nil, fmt.Errorf("unknown element %q", s.XMLName.Local)
}

func oval(cx, cy, rx, ry float64) []ink.Point {
	const n = 32
	points := make([]ink.Point, n)
	for i := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		points[i] = ink.Point{X: cx + rx*cos, Y: cy + ry*sin}
	}
	return points
}
