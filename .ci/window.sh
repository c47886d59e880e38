# Drives a program in a real window on a display in memory. Sourced by .ci/e2e.
#
# Nothing here sleeps for a guessed time: each step waits for what it needs, with a
# limit, and fails with the step's name and a last picture in $shots.

work=$(mktemp -d)      # the home of the program, its files and its log
shots=dist/e2e         # pictures taken in this run
kept=testdata/e2e      # pictures that they are compared with
passed=0
step=start
display_pid=
program_pid=

mkdir -p "$shots"
rm -f "$shots"/*.png

finish() {
	local status=$?
	if [ "$status" -ne 0 ]; then
		echo "e2e: failed at: $step" >&2
		[ -z "$display_pid" ] || timeout 20 import -silent -window root "$shots/failed.png" 2>/dev/null || true
		echo "e2e: the last picture is $shots/failed.png; the program said:" >&2
		tail -n 40 "$work/log" >&2 2>/dev/null || true
		echo "e2e: $passed passed, 1 failed"
	fi
	[ -z "$program_pid" ] || kill "$program_pid" 2>/dev/null || true
	[ -z "$display_pid" ] || kill "$display_pid" 2>/dev/null || true
	rm -rf "$work"
	exit "$status"
}
trap finish EXIT

# step NAME: what is tried next, in a person's words.
step() {
	[ "$step" = start ] || passed=$((passed + 1))
	step=$1
	echo "e2e: $step"
}

fail() { echo "e2e: $*" >&2; exit 1; }

# within SECONDS COMMAND...: waits until the command succeeds.
within() {
	local tries=$(($1 * 10))
	shift
	until "$@"; do
		tries=$((tries - 1))
		[ "$tries" -gt 0 ] || return 1
		[ -z "$program_pid" ] || kill -0 "$program_pid" 2>/dev/null || return 1
		sleep 0.1
	done
}

# open_display WIDTH HEIGHT: a display of its own, which no desktop of the person
# can disturb.
open_display() {
	Xvfb -displayfd 3 -screen 0 "${1}x${2}x24" -dpi 96 -nolisten tcp +extension GLX \
		3>"$work/display" >"$work/xvfb.log" 2>&1 &
	display_pid=$!
	within 20 has_line "$work/display" || fail "no display: $(cat "$work/xvfb.log")"
	DISPLAY=:$(tr -d '[:space:]' <"$work/display")
	export DISPLAY
	unset WAYLAND_DISPLAY XAUTHORITY
	export LIBGL_ALWAYS_SOFTWARE=1
	# The same picture on every machine: one scale, and no desktop that says light or dark.
	unset LC_ALL LC_MESSAGES LANGUAGE
	export FYNE_SCALE=1 FYNE_THEME=light DBUS_SESSION_BUS_ADDRESS=disabled:
	export HOME=$work/home
	export XDG_CONFIG_HOME=$HOME/config XDG_DATA_HOME=$HOME/data XDG_STATE_HOME=$HOME/state XDG_CACHE_HOME=$HOME/cache
	mkdir -p "$XDG_CONFIG_HOME" "$XDG_DATA_HOME" "$XDG_STATE_HOME" "$XDG_CACHE_HOME"
}

# has_line FILE: is there a whole line? The number of a display comes in pieces.
has_line() { grep -q . "$1" 2>/dev/null && [ "$(wc -l <"$1")" -gt 0 ]; }

# start COMMAND...: starts the program and waits for its window to be drawn.
start() {
	# The language is set for the program alone: bash complains where the machine lacks it.
	env LANG=en_US.UTF-8 "$@" >>"$work/log" 2>&1 </dev/null &
	program_pid=$!
	within 60 find_window || fail "no window appeared"
	# Without a window manager nobody else hands out the focus.
	within 10 xdotool windowfocus "$window" 2>/dev/null || fail "the window takes no keys"
	within 30 is_drawn || fail "the window stays empty"
}

# is_drawn: does the window show more than the colour of its ground?
is_drawn() {
	look "$work/now.png"
	[ "$(identify -format %k "$work/now.png")" -gt 16 ]
}

find_window() {
	window=$(xdotool search --onlyvisible --pid "$program_pid" 2>/dev/null | tail -n 1)
	[ -n "$window" ]
}

# leaves KEYS...: presses the keys that end the program and waits until it has ended
# without a fault.
leaves() {
	local pid=$program_pid tries=200
	xdotool key --clearmodifiers --delay 40 "$@"
	while kill -0 "$pid" 2>/dev/null; do
		tries=$((tries - 1))
		[ "$tries" -gt 0 ] || fail "the program does not end"
		sleep 0.1
	done
	program_pid=
	wait "$pid" || fail "the program ended with code $?"
	# Without a desktop the toolkit cannot watch the desktop's theme, and says so. It
	# also watches its own file of preferences, and now and then reads it while it is
	# writing it; the next event reads it whole.
	if grep -v -e 'watch theme settings' -e 'Preferences load error' "$work/log" | grep -E 'Fyne error|panic|DATA RACE' >&2; then
		fail "the program complained"
	fi
}

# crashes: ends the program at once, as a power cut does, when its journal is at rest.
crashes() {
	sleep 2
	kill -KILL "$program_pid"
	wait "$program_pid" 2>/dev/null || true
	program_pid=
}

press() { xdotool key --clearmodifiers --delay 40 "$@"; settle; }
write() { xdotool type --clearmodifiers --delay 20 "$1"; settle; }
click() { xdotool mousemove "$1" "$2" click 1; settle; }

# drag X1 Y1 X2 Y2: in small moves, as a hand does.
drag() {
	xdotool mousemove "$1" "$2" mousedown 1
	local i
	for i in 1 2 3 4 5 6 7 8; do
		xdotool mousemove $(($1 + ($3 - $1) * i / 8)) $(($2 + ($4 - $2) * i / 8))
		sleep 0.03
	done
	xdotool mouseup 1
	settle
}

# look FILE: takes a picture of the window. A window that is gone must not make it
# wait for a person to point at another.
look() { timeout 20 import -silent -window "$window" "$1" || fail "the window is gone"; }

# settle: waits until the picture stands still; a blinking cursor may blink.
settle() {
	local tries=40
	look "$work/now.png"
	while :; do
		mv "$work/now.png" "$work/before.png"
		sleep 0.15
		look "$work/now.png"
		[ "$(different "$work/before.png" "$work/now.png" 0%)" -gt 100 ] || return 0
		tries=$((tries - 1))
		[ "$tries" -gt 0 ] || fail "the picture does not come to rest"
	done
}

# different A B FUZZ: the number of pixels that differ by more than the fuzz.
different() {
	local count
	count=$(compare -metric AE -fuzz "$3" "$1" "$2" null: 2>&1) || true
	# A large number is written as 1.23e+06; other text means that they cannot be compared.
	printf '%.0f' "$count" 2>/dev/null || echo 999999999
}

# picture NAME: takes a picture and compares it with the one that is kept. One
# pixel in a thousand may differ clearly: letters are drawn by the program itself and
# are the same everywhere, but rounded corners are drawn by the machine's OpenGL.
picture() {
	settle
	cp "$work/now.png" "$shots/$1.png"
	if [ -n "${E2E_UPDATE:-}" ]; then
		mkdir -p "$kept"
		cp "$shots/$1.png" "$kept/$1.png"
		return
	fi
	[ -f "$kept/$1.png" ] || fail "there is no $kept/$1.png to compare with; look at $shots/$1.png and run: E2E_UPDATE=1 make e2e"
	alike "$kept/$1.png" "$shots/$1.png" "$shots/$1-difference.png"
}

# alike A B DIFFERENCE: fails where two pictures differ, and draws where.
alike() {
	local width height allowed count
	read -r width height < <(identify -format '%w %h\n' "$1")
	allowed=$((width * height / 1000))
	count=$(different "$1" "$2" 15%)
	if [ "$count" -gt "$allowed" ]; then
		compare -fuzz 15% "$1" "$2" "$3" || true
		fail "$2 differs from $1 in $count pixels, allowed are $allowed; look at $3"
	fi
}

# same_picture A B: two pictures of this run show the same above the status line,
# which tells what was done last.
same_picture() {
	local name
	for name in "$1" "$2"; do
		cp "$shots/$name.png" "$work/$name.png"
		mogrify -gravity south -chop 0x30 "$work/$name.png"
	done
	alike "$work/$1.png" "$work/$2.png" "$shots/$1-$2-difference.png"
}

# file_holds FILE PATTERN: waits until the file is there and has a line like that.
file_holds() { within 10 grep -Eqs -- "$2" "$1" || fail "$(basename "$1") has no line like: $2"; }

# file_lacks FILE PATTERN: waits until the file has no line like that.
file_lacks() { within 10 lacks "$1" "$2" || fail "$(basename "$1") still has a line like: $2"; }
lacks() { ! grep -Eqs -- "$2" "$1"; }

# done_well: the end of the story.
done_well() {
	passed=$((passed + 1))
	step=end
	echo "e2e: $passed passed, 0 failed"
}
