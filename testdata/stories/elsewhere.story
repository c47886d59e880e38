Somebody else changes the file while it is open

open the example
save as "terrace.yaml"
go to "Pots"
choose "Half barrel"
press "This pot"; set "Name" to "Barrel by the gate"
in "terrace.yaml" somebody writes "Wide bowl by the well" for "Wide bowl"
come back to the window
press "Look at the changes…"; press "Bring it in"
expect "Barrel by the gate"
expect "Wide bowl by the well"
save
expect "Barrel by the gate" in the file "terrace.yaml"
expect "Wide bowl by the well" in the file "terrace.yaml"
