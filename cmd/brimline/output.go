package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// writeFile makes the whole output first and then puts it in place of the file in one step, so that
// nobody finds half of one. Pipes and devices are written as they are.
func writeFile(path string, fill func(io.Writer) error) error {
	var b bytes.Buffer
	if err := fill(&b); err != nil {
		return fmt.Errorf("making %s: %w", path, err)
	}
	info, err := os.Stat(path)
	if err == nil && info.IsDir() {
		return refuse("writing %s: it is a folder", path)
	}
	if err == nil && !info.Mode().IsRegular() {
		return os.WriteFile(path, b.Bytes(), 0o666)
	}
	mode := fs.FileMode(0o666)
	if err == nil {
		mode = info.Mode().Perm()
	}
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	return replace(path, b.Bytes(), mode)
}

// folder refuses a file in a folder that is not there; said is what the person typed.
func folder(said, path string) error {
	dir := filepath.Dir(path)
	info, err := os.Stat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return refuse("%s: there is no folder %s", said, dir)
	case err != nil:
		return refuse("%s: %s: %v", said, dir, bare(err))
	case !info.IsDir():
		return refuse("%s: %s is no folder", said, dir)
	}
	return nil
}

// bare is what the system said without the name that it was asked about, which may be one of ours.
func bare(err error) error {
	var e *fs.PathError
	if errors.As(err, &e) {
		return e.Err
	}
	return err
}

// replace writes beside the file and renames. A file that is there keeps its rights.
func replace(path string, data []byte, mode fs.FileMode) error {
	beside := filepath.Join(filepath.Dir(path), fmt.Sprintf(".%s.%d.part", filepath.Base(path), os.Getpid()))
	f, err := os.OpenFile(beside, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if errors.Is(err, fs.ErrPermission) {
		return refuse("writing %s: %v", path, bare(err))
	}
	if err != nil {
		return fmt.Errorf("writing %s: %w", path, bare(err))
	}
	_, err = f.Write(data)
	if e := f.Sync(); err == nil {
		err = e
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err == nil {
		err = os.Rename(beside, path)
	}
	if err != nil {
		os.Remove(beside)
		return fmt.Errorf("writing %s: %w", path, err)
	}
	return nil
}
