package module

import "fmt"

// Proven is the toolchain that this package's tests and calc's tests ran on in programs made small. What another one writes
// may look the same and mean something else: of that only the data is joined.
const Proven = "go1.26.8"

// Small writes a module of Go's linker so that it compresses well and starts quickly: the same program with the same
// memory, but for what traces tell beside the names of functions of ours. It says in one line what it left out, if the
// module wasn't made by the toolchain Proven. A module in which anything isn't where that one puts it is an error.
func Small(module []byte) (small []byte, left string, err error) {
	sections, err := sectionsOf(module)
	if err != nil {
		return nil, "", err
	}
	version := toolchain(sections)
	if version != Proven {
		left = fmt.Sprintf("only the data is joined: the code and the tables of %s are left as they are, since %s is what the rewriting was tried with", version, Proven)
	}
	err = guarded(func() {
		for i, s := range sections {
			switch {
			case s.id == codeSection && left == "":
				sections[i].content = shorter(s.content)
			case s.id == dataSection:
				sections[i].content = smallData(s.content, left == "")
			}
		}
	})
	if err != nil {
		return nil, "", fmt.Errorf("the program isn't as %s writes it, and can't be made small: %w", version, err)
	}
	return join(sections), left, nil
}

// smallData joins the data, and leaves traces out if it may.
func smallData(content []byte, mayCut bool) []byte {
	memory := memoryOf(readSegments(content))
	if mayCut {
		withoutTraces(memory)
	}
	return writeSegments(joined(memory))
}

// toolchain is the version that a module's section "producers" says.
//
// Source: WebAssembly tool conventions, ProducersSection.
func toolchain(sections []section) string {
	version := "an unknown toolchain"
	for _, s := range sections {
		if s.id != customSection {
			continue
		}
		guarded(func() { // a section that can't be read says nothing
			if r := newReader(s.content); string(r.vector()) == "producers" {
				for range r.number() {
					field := string(r.vector())
					for range r.number() {
						name, v := string(r.vector()), string(r.vector())
						if field == "language" && name == "Go" {
							version = v
						}
					}
				}
			}
		})
	}
	return version
}
