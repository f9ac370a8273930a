// Package module takes WebAssembly modules apart and puts them together again, as far as packing and measuring the page's
// program need it. A damaged module panics: it was built a moment ago.
//
// Source: WebAssembly Core Specification, 5.5 Modules and 7.4.1 Name Section.
package module

import (
	"bytes"
	"encoding/binary"
	"errors"
)

// The sections that are looked into.
const (
	Custom = 0
	Import = 2
	Code   = 10
	Data   = 11
)

// header is the magic number and the version.
const header = "\x00asm\x01\x00\x00\x00"

// Section is a part of a module.
type Section struct {
	ID      byte
	Content []byte
}

// Sections takes a module apart.
func Sections(module []byte) ([]Section, error) {
	content, found := bytes.CutPrefix(module, []byte(header))
	if !found {
		return nil, errors.New("not a WebAssembly module")
	}
	var list []Section
	for r := NewReader(content); r.Len() > 0; {
		id, content := r.Part()
		list = append(list, Section{byte(id), content})
	}
	return list, nil
}

// Join puts a module together.
func Join(sections []Section) []byte {
	module := []byte(header)
	for _, s := range sections {
		module = appendVector(append(module, s.ID), s.Content)
	}
	return module
}

func appendVector(to, content []byte) []byte {
	return append(appendNumber(to, len(content)), content...)
}

// Reader reads a section's content.
type Reader struct{ *bytes.Reader }

// NewReader reads from the beginning of the content.
func NewReader(content []byte) Reader { return Reader{bytes.NewReader(content)} }

// Number reads an unsigned number.
func (r Reader) Number() int {
	n, err := binary.ReadUvarint(r) // LEB128, as in the module
	if err != nil {
		panic(err)
	}
	return int(n)
}

// Vector reads a length and as many bytes.
func (r Reader) Vector() []byte {
	b := make([]byte, r.Number())
	if n, err := r.Read(b); n < len(b) {
		panic(err)
	}
	return b
}

// Part reads a numbered part: a section, or a part of the name section.
func (r Reader) Part() (id int, content []byte) {
	id = r.Number()
	return id, r.Vector()
}

func (r Reader) skip(want ...byte) {
	for _, w := range want {
		if b, err := r.ReadByte(); b != w {
			panic(errors.Join(errors.New("not written by Go's linker"), err))
		}
	}
}
