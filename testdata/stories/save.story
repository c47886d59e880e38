A plan is saved, and it is the same at the next start

open the example
save as "terrace.yaml"
expect no unsaved work
go to "Pots"
choose "Half barrel"
press "This pot"; set "Name" to "Barrel by the gate"
expect unsaved work
key Ctrl+S
expect "Barrel by the gate" in the file "terrace.yaml"
quit and start again
go to "Pots"
expect "Barrel by the gate"
expect no unsaved work
