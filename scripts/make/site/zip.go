package main

import (
	"archive/zip"
	"cmp"
	"compress/flate"
	"io"
	"os"
	"slices"
	"strings"
	"time"

	"striderule/scripts/make/built"
)

// The zip, and its own sum beside it, for whoever fetches it.
const (
	zipName    = built.Zip
	zipSumName = zipName + ".sha256"
)

// zip packs the site, without itself, for whoever wants to host it: unpacked in
// any folder of a web host it is the site. Order and times are fixed: what pages
// name comes before the pages, and the worker, which looks for all of it, last.
func (b *builder) zip() error {
	files, err := siteFiles(b.site)
	if err != nil {
		return err
	}
	slices.SortStableFunc(files, func(one, other string) int { return cmp.Compare(turn(one), turn(other)) })
	out, err := os.Create(b.path(zipName))
	if err != nil {
		return err
	}
	defer out.Close()
	z := zip.NewWriter(out)
	z.RegisterCompressor(zip.Deflate, func(w io.Writer) (io.WriteCloser, error) {
		return flate.NewWriter(w, flate.BestCompression)
	})
	for _, f := range files {
		content, err := os.ReadFile(b.path(f))
		if err != nil {
			return err
		}
		header := &zip.FileHeader{Name: f, Method: zip.Deflate, Modified: time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)}
		header.SetMode(0o644)
		w, err := z.CreateHeader(header)
		if err != nil {
			return err
		}
		if _, err := w.Write(content); err != nil {
			return err
		}
	}
	if err := z.Close(); err != nil {
		return err
	}
	if err := out.Close(); err != nil {
		return err
	}
	packed, err := os.ReadFile(out.Name())
	if err != nil {
		return err
	}
	return os.WriteFile(b.path(zipSumName), []byte(sumLine(packed, zipName)), 0o644)
}

// turn says when a file is unpacked.
func turn(file string) int {
	switch {
	case strings.HasPrefix(file, "web/"):
		return 0
	case strings.HasPrefix(file, "sw.js"):
		return 2
	}
	return 1
}
