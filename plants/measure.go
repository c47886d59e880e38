package plants

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"fourturn/planner/quantity"
)

// lengthCodec reads a length with its unit, such as "25 cm".
var lengthCodec = codec[quantity.Length]{
	read: func(r *reader, n *yaml.Node) (quantity.Length, bool) {
		text, ok := r.text(n)
		if !ok {
			return 0, false
		}
		v, err := quantity.ParseLength(text, 0)
		if err != nil {
			r.measure(n, err)
			return 0, false
		}
		return v, true
	},
	write: func(l quantity.Length) *yaml.Node {
		if l == 0 {
			return nil
		}
		return scalar(decimal(l.Centimetres()) + " cm")
	},
}

// spanCodec reads a range of lengths, such as "15-30 cm"; one length is both ends.
var spanCodec = codec[Span]{
	read: func(r *reader, n *yaml.Node) (Span, bool) {
		text, ok := r.text(n)
		if !ok {
			return Span{}, false
		}
		low, high, ranged := strings.Cut(text, "-")
		if ranged {
			low += " " + strings.TrimLeft(strings.TrimSpace(high), "0123456789., ")
		} else {
			high = low
		}
		from, err := quantity.ParseLength(strings.TrimSpace(low), 0)
		if err != nil {
			r.measure(n, err)
			return Span{}, false
		}
		to, err := quantity.ParseLength(strings.TrimSpace(high), 0)
		if err != nil {
			r.measure(n, err)
			return Span{}, false
		}
		return Span{from, to}, true
	},
	write: func(s Span) *yaml.Node {
		switch {
		case s == Span{}:
			return nil
		case s.Low == s.High:
			return lengthCodec.write(s.Low)
		}
		return scalar(decimal(s.Low.Centimetres()) + "-" + decimal(s.High.Centimetres()) + " cm")
	},
}

// temperatureCodec reads a temperature with its unit, such as "-2.2 C" or "28 F".
var temperatureCodec = codec[quantity.Temperature]{
	read: func(r *reader, n *yaml.Node) (quantity.Temperature, bool) {
		text, ok := r.text(n)
		if !ok {
			return 0, false
		}
		v, err := quantity.ParseTemperature(text, quantity.Metric)
		if err == nil && !strings.ContainsAny(text, "CcFf") {
			err = &quantity.ParseError{Kind: quantity.KindTemperature, Fault: quantity.FaultNoUnit, Text: text}
		}
		if err != nil {
			r.measure(n, err)
			return 0, false
		}
		return v, true
	},
	write: func(t quantity.Temperature) *yaml.Node { return scalar(decimal(float64(t)) + " C") },
}

// volumeCodec reads a volume with its unit, such as "0.45 L".
var volumeCodec = codec[quantity.Volume]{
	read: func(r *reader, n *yaml.Node) (quantity.Volume, bool) {
		text, ok := r.text(n)
		if !ok {
			return 0, false
		}
		v, err := quantity.ParseVolume(text, 0)
		if err != nil {
			r.measure(n, err)
			return 0, false
		}
		return v, true
	},
	write: func(v quantity.Volume) *yaml.Node { return scalar(decimal(v.Litres()) + " L") },
}

// measure notes why a measure cannot be read.
func (r *reader) measure(n *yaml.Node, err error) {
	var parse *quantity.ParseError
	if errors.As(err, &parse) {
		r.fault(n, "measure_"+string(parse.Fault), word("text", parse.Text), word("unit", parse.Unit))
		return
	}
	r.fault(n, "measure_not_a_number", word("text", n.Value), word("unit", ""))
}

// decimal writes a number to six decimals without trailing zeros: finer than any
// value in a book, coarser than the rounding of a change of units.
func decimal(x float64) string {
	rounded := math.Round(x*1e6) / 1e6
	if rounded == 0 {
		rounded = 0 // no minus sign on a zero
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}
