//go:build !linux

package planfile

import "errors"

const smallDisk = 64 << 10

func mountSmall(string) error { return errors.ErrUnsupported }

func unmount(string) {}
