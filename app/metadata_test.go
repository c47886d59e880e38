package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// TestMetadataAgreesWithFyneAppToml holds the program's own idea of its name to the
// file that the packaging reads.
func TestMetadataAgreesWithFyneAppToml(t *testing.T) {
	text, err := os.ReadFile("../FyneApp.toml")
	if err != nil {
		t.Fatal(err)
	}
	file := readTOML(t, string(text))
	own := metadata()
	for key, inProgram := range map[string]string{
		"Details.ID":        own.ID,
		"Details.Name":      own.Name,
		"Details.Version":   own.Version,
		"Details.Build":     strconv.Itoa(own.Build),
		"Migrations.fyneDo": strconv.FormatBool(own.Migrations["fyneDo"]),
	} {
		if file[key] != inProgram {
			t.Errorf("%s is %q in FyneApp.toml and %q in the program", key, file[key], inProgram)
		}
	}
	icon, err := os.ReadFile(filepath.Join("..", filepath.FromSlash(file["Details.Icon"])))
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(icon, own.Icon.Content()) {
		t.Error("the icon of FyneApp.toml is not the one in the program")
	}
}

// readTOML reads the single values of a TOML file as "Table.Key". It knows no more
// of TOML than FyneApp.toml uses.
func readTOML(t *testing.T, text string) map[string]string {
	t.Helper()
	values, table := map[string]string{}, ""
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		switch {
		case line == "" || strings.HasPrefix(line, "#"):
		case strings.HasPrefix(line, "["):
			table = strings.Trim(line, "[]")
		default:
			key, value, ok := strings.Cut(line, " = ")
			if !ok {
				t.Fatalf("FyneApp.toml: %q is no key with a value", line)
			}
			values[table+"."+key] = strings.Trim(value, `"`)
		}
	}
	return values
}

// What a Linux desktop reads says the same as the program.
func TestTheDesktopReadsTheSame(t *testing.T) {
	for file, wants := range map[string][]string{
		"../assets/linux/" + appID + ".desktop":      {"\nName=" + appName + "\n", "\nIcon=" + appID + "\n", "\nExec=fourturn %f\n"},
		"../assets/linux/" + appID + ".metainfo.xml": {"<id>" + appID + "</id>", `<release version="` + appVersion + `"`, "<name>" + appName + "</name>"},
		"../assets/linux/" + appID + ".mime.xml":     {"*.fourturn.yaml"},
	} {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range wants {
			if !strings.Contains(string(text), want) {
				t.Errorf("%s lacks %q", file, want)
			}
		}
	}
}
