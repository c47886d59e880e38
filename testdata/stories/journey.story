Back and forward, as on a walk

open the example
go to "Due"
go to "Pots"
go to "Year"
do "Back"
expect "Find a pot"
do "Back"
do "Forward"
expect "Find a pot"
do "Keys"
expect "Ctrl"
key Escape
do "About Fourturn"
expect "Local codes and licensed practice come first"
