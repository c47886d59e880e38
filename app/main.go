// Command fourturn plans container plantings through the four seasons. Without a
// command it opens its window; with one it works on the command line and needs no
// display.
package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"text/tabwriter"
	"time"

	"fourturn/app/words"
	"fourturn/planner/civil"
)

// Exit codes of the command line.
const (
	exitGood  = 0
	exitFault = 1 // the plan, a file or the machine is at fault
	exitUsage = 2 // the command was not understood
)

// terminal is what a command may use of the world.
type terminal struct {
	out   io.Writer
	err   io.Writer
	words *words.Words
	now   func() time.Time

	ownBook    string   // file of the person's own plant book; "" reads none
	bookFaults []string // what is wrong with it
}

func (t *terminal) today() civil.Date { return civil.Of(t.now()) }

// say writes a line for a person to the standard output.
func (t *terminal) say(key string, args ...words.A) { fmt.Fprintln(t.out, t.words.T(key, args...)) }

// complain writes a line for a person to the standard error.
func (t *terminal) complain(key string, args ...words.A) {
	fmt.Fprintln(t.err, t.words.T(key, args...))
}

// command is one word that the command line understands.
type command struct {
	name  string
	usage string // the words behind the name, the same in every language
	about string // key of a line that says what it does
	run   func(t *terminal, args []string) int
}

func commands() []command {
	return []command{
		{"figures", "PLAN [--json] [--today DATE]", "command.figures", runFigures},
		{"check", "PLAN [--today DATE]", "command.check", runCheck},
		{"calendar", "PLAN -o FILE [--today DATE]", "command.calendar", runCalendar},
		{"demo", "--out FOLDER", "command.demo", runDemo},
		{"gallery", "--out FOLDER", "command.gallery", runGallery},
		{"help", "", "command.help", runHelp},
	}
}

func main() {
	t := &terminal{out: os.Stdout, err: os.Stderr, words: words.New(words.Preferred(os.Getenv)), ownBook: ownBookFile()}
	now, err := clock(os.Getenv)
	if err != nil {
		t.complain("command.bad_today", words.A{"name": todayVariable, "text": os.Getenv(todayVariable)})
		os.Exit(exitUsage)
	}
	t.now = now
	os.Exit(run(t, os.Args[1:]))
}

// run carries out a command line and returns the exit code.
func run(t *terminal, args []string) int {
	if len(args) == 0 {
		return openWindow(t, "")
	}
	switch args[0] {
	case "--version", "-version", "version":
		fmt.Fprintf(t.out, "fourturn %s\n", metadata().Version)
		return exitGood
	case "--help", "-h":
		return runHelp(t, nil)
	}
	for _, c := range commands() {
		if c.name == args[0] {
			return c.run(t, args[1:])
		}
	}
	if len(args) == 1 && looksLikeFile(args[0]) {
		return openWindow(t, args[0])
	}
	t.complain("command.unknown", words.A{"word": args[0]})
	help(t, t.err)
	return exitUsage
}

// looksLikeFile reports whether a word on the command line is a plan to open: a
// file that is there, or a name that ends as plans do.
func looksLikeFile(word string) bool {
	if strings.HasPrefix(word, "-") {
		return false
	}
	info, err := os.Stat(word)
	return err == nil && info.Mode().IsRegular() || strings.HasSuffix(word, ".yaml") || strings.HasSuffix(word, ".yml")
}

func runHelp(t *terminal, args []string) int {
	if len(args) > 0 {
		return usage(t, "help")
	}
	help(t, t.out)
	return exitGood
}

func help(t *terminal, w io.Writer) {
	fmt.Fprintln(w, t.words.T("command.about"))
	fmt.Fprintln(w)
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintf(table, "  fourturn [PLAN]\t%s\n", t.words.T("command.window"))
	for _, c := range commands() {
		fmt.Fprintf(table, "  fourturn %s\t%s\n", strings.TrimSpace(c.name+" "+c.usage), t.words.T(c.about))
	}
	fmt.Fprintf(table, "  fourturn --version\t%s\n", t.words.T("command.version"))
	table.Flush()
}

// usage says how a command is written and returns the exit code for that.
func usage(t *terminal, name string) int {
	for _, c := range commands() {
		if c.name == name {
			t.complain("command.usage", words.A{"usage": strings.TrimSpace("fourturn " + c.name + " " + c.usage)})
		}
	}
	return exitUsage
}
