Someone who sees badly makes the window fit

open the example
do "Dark page"
do "High contrast"
do "Colours for colour-blind eyes"
do "Larger text"
do "Larger text"
do "Smaller text"
do "Usual text"
do "Page as the system"
do "Light page"
make the window small
expect "Due"
