package module

// Function is a function of a module, with its name in the custom section "name", or without one.
type Function struct {
	Name string
	Body []byte
}

// functionNames is the part of the custom section "name" that names functions.
const functionNames = 1

// Functions gives the functions that a module has itself, in their order.
func Functions(module []byte) ([]Function, error) {
	sections, err := sectionsOf(module)
	if err != nil {
		return nil, err
	}
	var list []Function
	err = guarded(func() {
		imported, names := 0, map[int]string{}
		for _, s := range sections {
			r := newReader(s.content)
			switch s.id {
			case importSection:
				imported = r.number() // Go imports functions only
			case codeSection:
				for range r.number() {
					list = append(list, Function{Body: r.vector()})
				}
			case customSection:
				if string(r.vector()) == "name" {
					names = readNames(r)
				}
			}
		}
		for i := range list {
			list[i].Name = names[imported+i]
		}
	})
	return list, err
}

// readNames gives the names by the index of the function, imported ones first.
func readNames(r reader) map[int]string {
	names := make(map[int]string)
	for r.Len() > 0 {
		id, content := r.part()
		if id != functionNames {
			continue
		}
		part := newReader(content)
		for range part.number() {
			index := part.number()
			names[index] = string(part.vector())
		}
	}
	return names
}
