package planfile

import "syscall"

const smallDisk = 64 << 10

func mountSmall(folder string) error {
	return syscall.Mount("tmpfs", folder, "tmpfs", 0, "size=64k")
}

func unmount(folder string) { _ = syscall.Unmount(folder, syscall.MNT_DETACH) }
