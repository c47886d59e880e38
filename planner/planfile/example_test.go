package planfile_test

import (
	"fmt"

	"fourturn/planner"
	"fourturn/planner/planfile"
)

// Everything that is wrong is reported at once, with its place.
func ExampleDecode() {
	_, err := planfile.Decode([]byte(`fourturn: 1
pots:
  trough:
    kind: trough
    top_lenght: 80 cm
    height: 20
`))
	fmt.Println(err)
	// Output:
	// line 5, column 5: pots.trough.top_lenght: unknown key "top_lenght"; did you mean "top_length"?
	// line 6, column 13: pots.trough.height: "20" has no unit; write it as in 35 cm
}

// A save changes the lines whose meaning changed and no other.
func ExampleDocument_Encode() {
	d, err := planfile.Decode([]byte(`fourturn: 1
pots:
  # by the door
  urn: {name: "Urn", height: 14 in}   # heavy
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	plan, err := d.Plan().WithPot("urn", func(p *planner.Pot) { p.Name = "Tall urn" })
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := d.Encode(&plan)
	fmt.Print(string(text), err)
	// Output:
	// fourturn: 1
	// pots:
	//   # by the door
	//   urn: {name: Tall urn, height: 14 in}   # heavy
	// <nil>
}
