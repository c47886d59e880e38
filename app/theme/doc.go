// Package theme is Fourturn's look: colours, type, spacing, icons and drawings.
//
// # Idea
//
// A well-made field notebook: quiet, warm, exact. The page is paper, text is ink,
// and colour is kept for what it can tell. Nothing shines, floats or fades.
//
//   - Paper and ink. By day the ground is warm off-white and text brown-black, by
//     lamplight charcoal and cream. Cards are slightly lighter paper with a ruled
//     edge, not boxes with shadows: the eye should rest on what is written.
//   - The rail on the left is the notebook's cover with index tabs. The tab of the
//     open room has the colour of the page, so that the two become one sheet, and a
//     ribbon marks it.
//   - The pen. Whatever can be opened is written in ink blue: a figure whose working
//     can be seen, a link, and the ring around what has the focus.
//   - Pencil. What is estimated is underlined with dots and carries the sign ≈. What
//     was measured or read in a source has a firm line. Colour says nothing here.
//   - Watercolour. A kind of planting has a strong colour for its edge and a pale
//     wash of the same hue for its ground. Text is always ink on a wash, and each
//     kind has a hatch of its own, so that a photocopy still reads.
//   - Four signs for what the planner has to say: a ringed i for a note, a diamond
//     for a caution (somebody can be hurt), a triangle for a warning (the plan will
//     disappoint), an octagon for an error. Shape, word and colour say the same.
//
// # Type
//
// Headings are set in Vollkorn, a sturdy bread-and-butter serif, as in a good
// handbook; formulas and asides in its italic. All else is Open Sans, a humanist
// sans that stays clear at small sizes. The figures of both are lining and have
// one width, so that columns of numbers align without asking for it (the toolkit
// cannot ask; assets/fonts/README.md says what was done). Sizes go up by about a fifth: 12, 14, 17, 20, 22, 28. The
// text scale multiplies them and the icons between 0.8 and 2.
//
// # Rhythm
//
// Distances are multiples of 8, halved where things belong together. They do not
// grow with the text: who needs larger letters needs the room for them. What can
// be pressed is at least 32 high.
//
// # Contrast, as numbers
//
// Text keeps 4.5:1 and meaningful lines 3:1 against every ground they are used on
// (Web Content Accessibility Guidelines 2.2, success criteria 1.4.3 and 1.4.11);
// with high contrast, 7:1 (1.4.6) and 4.5:1. Ruled lines and washes are decoration
// and exempt. The strong colours of the colour-safe set stay apart by a difference
// of at least 20 in CIE L*a*b* (1976) for normal eyes and for each kind of missing
// cone, simulated by the matrices of Machado, Oliveira and Fernandes, "A
// Physiologically-based Model for Simulation of Color Vision Deficiency" (2009).
// The tests of this package hold all of it.
//
// # Limits
//
// The toolkit cannot colour strokes of icons, so they are outlined beforehand (see
// the program in outline). Text set in Vollkorn has no other font to fall back on:
// it covers Latin and Greek letters and the usual signs of formulas.
package theme
