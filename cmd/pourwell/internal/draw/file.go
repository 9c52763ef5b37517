package draw

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/crc32"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/chart"
)

// A File is where a figure goes.
type File struct {
	Name      string
	Overwrite bool // replace even what is no chart of ours
}

// A chart bears a mark near its start, by which it may be replaced: as SVG a
// comment behind the first line, as PNG a chunk of text behind the header.
const (
	mark       = "pourwell chart"
	headerEnds = 33 // bytes: the signature and the chunk IHDR
	marked     = 512
)

// write draws f beside the file and moves it there, so that the file is whole
// or as it was.
func (file File) write(f chart.Figure) error {
	mode, err := file.replaces()
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := chart.Write(&b, chart.Format(file.Name), f); err != nil {
		return err
	}
	beside := filepath.Join(filepath.Dir(file.Name), ".pourwell-"+strconv.FormatUint(rand.Uint64(), 36))
	if err := save(beside, mode, withMark(b.Bytes())); err != nil {
		return file.failed(err)
	}
	if err := os.Rename(beside, file.Name); err != nil {
		_ = os.Remove(beside) // the first error counts
		return file.failed(err)
	}
	return nil
}

// save writes a new file, whole and on disk, or none. Its mode is what the
// system gives a new file unless one is given.
func save(name string, mode fs.FileMode, data []byte) error {
	w, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = w.Write(data)
	if err == nil && mode != 0 {
		err = w.Chmod(mode)
	}
	if err == nil {
		err = w.Sync()
	}
	if closed := w.Close(); err == nil {
		err = closed
	}
	if err != nil {
		_ = os.Remove(name) // likewise
	}
	return err
}

// failed says that the file asked for cannot be written, whichever was tried.
func (file File) failed(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		err = path.Err
	case errors.As(err, &link):
		err = link.Err
	}
	return &fs.PathError{Op: "write", Path: file.Name, Err: err}
}

// replaces returns the mode of the file that a new one would replace, 0 if
// there is none, and an error if it must not be: only a chart of ours is, or
// any file for Overwrite. A link is not followed: what it points at stays.
func (file File) replaces() (fs.FileMode, error) {
	usage := func(what, hint string) error {
		return &calc.UsageError{What: fmt.Sprintf("--plot %q %s", file.Name, what), Hint: hint}
	}
	if chart.Format(file.Name) == "" {
		return 0, usage("ends in neither .svg nor .png", "name it for example curve.svg")
	}
	if err := calc.CheckText("--plot", file.Name); err != nil {
		return 0, err
	}
	info, err := os.Lstat(file.Name)
	switch {
	case os.IsNotExist(err):
		return 0, nil
	case err != nil:
		return 0, err
	case info.Mode()&fs.ModeSymlink != 0 && file.Overwrite:
		return 0, nil
	case info.Mode()&fs.ModeSymlink != 0:
		return 0, usage("is a link", "name the file itself, or add --overwrite to put a chart in the place of the link")
	case !info.Mode().IsRegular():
		return 0, usage("is there and no file", "name it for example curve.svg")
	case !file.Overwrite && !isChart(file.Name):
		return 0, usage("is there and no chart of pourwell", "take another name, or add --overwrite to replace it")
	}
	return info.Mode().Perm(), nil
}

// isChart reports whether the file bears our mark.
func isChart(name string) bool {
	f, err := os.Open(name)
	if err != nil {
		return false
	}
	defer f.Close()
	head, _ := io.ReadAll(io.LimitReader(f, marked))
	return (bytes.HasPrefix(head, []byte("<?xml")) || bytes.HasPrefix(head, []byte("\x89PNG"))) && bytes.Contains(head, []byte(mark))
}

// withMark returns the bytes of a figure with our mark in them.
func withMark(data []byte) []byte {
	at := bytes.IndexByte(data, '\n') + 1
	comment := []byte("<!-- " + mark + " -->\n")
	if !bytes.HasPrefix(data, []byte("<?xml")) {
		at, comment = headerEnds, textChunk("Software\x00"+mark)
	}
	return append(append(append([]byte{}, data[:at]...), comment...), data[at:]...)
}

// textChunk returns a chunk tEXt of a PNG file: length, type, text, and the
// check sum of the latter two (ISO/IEC 15948, 5.3 and 11.3.4.3; from memory).
func textChunk(text string) []byte {
	chunk := binary.BigEndian.AppendUint32(nil, uint32(len(text)))
	chunk = append(chunk, "tEXt"+text...)
	return binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(chunk[4:]))
}
