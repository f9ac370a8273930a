package module

// Small writes a module of Go's linker so that it compresses well and starts quickly: the same program with the same
// memory, but for what traces tell beside the names of functions of ours.
func Small(module []byte) ([]byte, error) {
	sections, err := Sections(module)
	if err != nil {
		return nil, err
	}
	for i, s := range sections {
		switch s.ID {
		case Code:
			sections[i].Content = shorter(s.Content)
		case Data:
			segments := joined(readSegments(s.Content))
			memory := memoryOf(segments)
			withoutTraces(memory)
			for _, s := range segments {
				copy(s.bytes, memory[s.at:])
			}
			sections[i].Content = writeSegments(segments)
		}
	}
	return Join(sections), nil
}
