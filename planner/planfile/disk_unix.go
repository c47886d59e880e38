//go:build unix

package planfile

import (
	"io/fs"
	"os"
	"syscall"
)

const folderSyncUnknown = false

// keepOwner gives a new file the owner and group of the one it replaces. Only
// the superuser may give files away, and others own what they save: a refusal is
// no error.
func keepOwner(path string, like fs.FileInfo) {
	if sys, ok := like.Sys().(*syscall.Stat_t); ok {
		_ = os.Chown(path, int(sys.Uid), int(sys.Gid))
	}
}
