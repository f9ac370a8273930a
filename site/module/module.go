// Package module takes WebAssembly modules apart and puts them together again, as far as packing and measuring the page's
// program need it. What isn't as Go's linker writes it is an error, and nothing of it is changed.
//
// Source: WebAssembly Core Specification, 5.5 Modules and 7.4.1 Name Section.
package module

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"runtime"
)

// The sections that are looked into.
const (
	customSection = 0
	importSection = 2
	codeSection   = 10
	dataSection   = 11
)

// header is the magic number and the version.
const header = "\x00asm\x01\x00\x00\x00"

// section is a part of a module.
type section struct {
	id      byte
	content []byte
}

// sectionsOf takes a module apart.
func sectionsOf(module []byte) ([]section, error) {
	content, found := bytes.CutPrefix(module, []byte(header))
	if !found {
		return nil, errors.New("not a WebAssembly module")
	}
	var list []section
	err := guarded(func() {
		for r := newReader(content); r.Len() > 0; {
			id, content := r.part()
			list = append(list, section{byte(id), content})
		}
	})
	return list, err
}

// join puts a module together.
func join(sections []section) []byte {
	module := []byte(header)
	for _, s := range sections {
		module = appendVector(append(module, s.id), s.content)
	}
	return module
}

func appendVector(to, content []byte) []byte {
	return append(appendNumber(to, len(content)), content...)
}

// damage is what is wrong with a module; what reads one panics with it.
type damage struct{ error }

func damaged(format string, args ...any) { panic(damage{fmt.Errorf(format, args...)}) }

// guarded runs f, and gives the damage that it met: an index out of range is damage too.
func guarded(f func()) (err error) {
	defer func() {
		switch p := recover().(type) {
		case nil:
		case damage:
			err = p.error
		case runtime.Error:
			err = p
		default:
			panic(p)
		}
	}()
	f()
	return nil
}

// reader reads a section's content, and panics with the damage that it meets.
type reader struct{ *bytes.Reader }

func newReader(content []byte) reader { return reader{bytes.NewReader(content)} }

// number reads an unsigned number.
func (r reader) number() int {
	n, err := binary.ReadUvarint(r) // LEB128, as in the module
	if err != nil || int(n) < 0 {
		damaged("a number is cut off or too large (%v)", err)
	}
	return int(n)
}

// next reads so many bytes.
func (r reader) next(n int) []byte {
	if n > r.Len() {
		damaged("%d bytes are too few for %d", r.Len(), n)
	}
	b := make([]byte, n)
	r.Read(b)
	return b
}

// vector reads a length and as many bytes.
func (r reader) vector() []byte { return r.next(r.number()) }

// part reads a numbered part: a section, or a part of the name section.
func (r reader) part() (id int, content []byte) {
	id = r.number()
	return id, r.vector()
}

func (r reader) skip(want ...byte) {
	if got := r.next(len(want)); !bytes.Equal(got, want) {
		damaged("bytes % x where Go's linker writes % x", got, want)
	}
}
