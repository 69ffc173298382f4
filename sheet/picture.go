package sheet

import (
	"bytes"

	"brimline/plane"
)

// Hash is the SHA-256 of a picture's bytes.
type Hash [32]byte

// Picture fills the box Box with the picture of that hash.
type Picture struct {
	Hash Hash
	Box  plane.Box
}

// PictureKind says from its first bytes whether a picture is "png" or "jpeg"; "" for neither.
func PictureKind(data []byte) string {
	switch {
	case bytes.HasPrefix(data, []byte("\x89PNG\r\n\x1a\n")):
		return "png"
	case bytes.HasPrefix(data, []byte("\xff\xd8\xff")):
		return "jpeg"
	}
	return ""
}
