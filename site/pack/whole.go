package pack

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"fmt"
	"io"
	"path"

	"shedreckoner/site"
)

// wholeFile is how a file of the folder is known to be whole.
type wholeFile struct {
	Address string   // beside sw.js
	Type    string   // that it is kept with, whatever the host called it
	Sums    []string // SHA-256 of its bytes, in hexadecimal: as shipped, and where a host may unpack it on the way, unpacked
}

// whole describes a file of the folder.
func whole(name string, data []byte) (wholeFile, error) {
	w := wholeFile{Address: name, Type: site.Type(name), Sums: []string{sum(data)}}
	switch {
	case name == "index.html":
		w.Address = "./" // what a visitor asks for; hosts redirect the file's own name
	case path.Base(name) == programName:
		r, err := gzip.NewReader(bytes.NewReader(data))
		if err != nil {
			return w, fmt.Errorf("%s: %w", name, err)
		}
		unpacked, err := io.ReadAll(r)
		if err != nil {
			return w, fmt.Errorf("%s: %w", name, err)
		}
		w.Sums = append(w.Sums, sum(unpacked))
	}
	return w, nil
}

func sum(data []byte) string {
	s := sha256.Sum256(data)
	return hex.EncodeToString(s[:])
}

// integrity names a file's bytes as an integrity attribute does. A policy puts quotes around it.
func integrity(data []byte) string {
	s := sha256.Sum256(data)
	return "sha256-" + base64.StdEncoding.EncodeToString(s[:])
}
