//go:build !unix

package planfile

import "io/fs"

// folderSyncUnknown says that folders cannot be synced on this system.
const folderSyncUnknown = true

func keepOwner(string, fs.FileInfo) {}
