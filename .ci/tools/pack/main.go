// Command pack puts a folder into a .tar.gz or .zip whose bytes follow from its
// files alone: sorted, of one date, owned by nobody. It refuses a folder whose
// pages link to what is not in it.
package main

import (
	"archive/tar"
	"archive/zip"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "pack:", err)
		os.Exit(1)
	}
}

func run(args []string) error {
	if len(args) != 2 {
		return errors.New("usage: SOURCE_DATE_EPOCH=SECONDS pack FOLDER ARCHIVE")
	}
	epoch, err := strconv.ParseInt(os.Getenv("SOURCE_DATE_EPOCH"), 10, 64)
	if err != nil {
		return fmt.Errorf("SOURCE_DATE_EPOCH: %w", err)
	}
	if err := broken(os.DirFS(args[0])); err != nil {
		return err
	}
	out, err := os.Create(args[1])
	if err != nil {
		return err
	}
	defer out.Close()
	if err := pack(args[0], out, strings.HasSuffix(args[1], ".zip"), time.Unix(epoch, 0).UTC()); err != nil {
		return err
	}
	return out.Close()
}

// adder begins a file of an archive.
type adder func(name string, info fs.FileInfo) (io.Writer, error)

func pack(folder string, out io.Writer, zipped bool, date time.Time) error {
	if zipped {
		z := zip.NewWriter(out)
		return errors.Join(walk(folder, zipAdder(z, date)), z.Close())
	}
	g, err := gzip.NewWriterLevel(out, gzip.BestCompression)
	if err != nil {
		return err
	}
	t := tar.NewWriter(g)
	return errors.Join(walk(folder, tarAdder(t, date)), t.Close(), g.Close())
}

func zipAdder(z *zip.Writer, date time.Time) adder {
	return func(name string, info fs.FileInfo) (io.Writer, error) {
		h := &zip.FileHeader{Name: name, Method: zip.Deflate, Modified: date}
		h.SetMode(mode(info))
		return z.CreateHeader(h)
	}
}

func tarAdder(t *tar.Writer, date time.Time) adder {
	return func(name string, info fs.FileInfo) (io.Writer, error) {
		return t, t.WriteHeader(&tar.Header{
			Typeflag: tar.TypeReg, Name: name, Size: info.Size(), Mode: int64(mode(info)), ModTime: date, Format: tar.FormatUSTAR,
		})
	}
}

// mode is what everybody may do: what the umask took from the builder does not
// show.
func mode(info fs.FileInfo) fs.FileMode {
	if info.Mode()&0o100 != 0 {
		return 0o755
	}
	return 0o644
}

// walk adds all files of a folder, under the folder's name.
func walk(folder string, add adder) error {
	within := os.DirFS(folder)
	return fs.WalkDir(within, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		w, err := add(path.Join(filepath.Base(folder), name), info)
		if err != nil {
			return err
		}
		src, err := within.Open(name)
		if err != nil {
			return err
		}
		defer src.Close()
		_, err = io.Copy(w, src)
		return err
	})
}
