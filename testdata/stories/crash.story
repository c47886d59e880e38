The power goes out before anything was saved

open the example
go to "Pots"
choose "Half barrel"
press "This pot"; set "Name" to "Barrel by the gate"
expect unsaved work
crash and start again
expect "Unsaved work from an earlier time is still here"
press "Look at it…"
press "Bring it back"
go to "Pots"
expect "Barrel by the gate"
expect unsaved work
