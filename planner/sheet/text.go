package sheet

import (
	"bytes"
	"strings"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

// decoded returns the text of a file with the ends of lines as one sign.
func decoded(data []byte) string {
	text := string(data)
	switch {
	case bytes.HasPrefix(data, []byte{0xff, 0xfe}), bytes.HasPrefix(data, []byte{0xfe, 0xff}):
		text = through(unicode.UTF16(unicode.LittleEndian, unicode.UseBOM), data)
	case !isUTF8(data):
		text = through(charmap.Windows1252, data)
	}
	text = strings.TrimPrefix(text, "\ufeff")
	return strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
}

// through decodes; what cannot be decoded becomes the replacement character.
func through(from encoding.Encoding, data []byte) string {
	text, err := from.NewDecoder().Bytes(data)
	if err != nil {
		return strings.ToValidUTF8(string(data), "\uFFFD")
	}
	return string(text)
}
