A trough is made longer, and it was better before

open the example
go to "Pots"
choose "Long trough under the window"
expect "28.8 L"
set "Length" to "120 cm"
expect no "Long trough under the window, trough, 28.8 L"
undo
expect "Long trough under the window, trough, 28.8 L"
redo
expect no "Long trough under the window, trough, 28.8 L"
