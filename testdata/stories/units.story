Inches and gallons for those who think in them

open the example
do "US customary units"
go to "Pots"
choose "Half barrel"
expect "3.26 cu ft"
expect no "92.3 L"
undo
expect "92.3 L"
do "US customary units"
do "Metric units"
expect "92.3 L"
