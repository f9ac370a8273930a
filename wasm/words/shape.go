package words

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
)

func shapeSentence(e *surface.Error, field *job.Field, units job.Units) string {
	limit := shown(e.Limit, field, units)
	switch e.Reason {
	case surface.Missing:
		if e.Dim == surface.FacesKey {
			return "Choose the faces that are coated."
		}
		return "Type a figure."
	case surface.NotPositive:
		return "This must be more than zero."
	case surface.TooSmall:
		return "That is too small: at least " + limit + "."
	case surface.TooLarge:
		switch e.Dim {
		case surface.CutOutsKey:
			return "The cut-outs are as large as the surface, or larger. Check their sizes."
		case surface.AreaKey:
			return "The area comes out larger than any boat's. Check the sizes and their units."
		}
		return "That is too large: less than " + limit + "."
	case surface.NotWhole:
		return "Type a whole number."
	case surface.NotAnOption:
		return "Choose one of the answers."
	case surface.TooFew:
		return "Add more: at least " + unit.Number(e.Limit, 3) + " are needed."
	case surface.TooMany:
		return "Too many: at most " + unit.Number(e.Limit, 3) + "."
	case surface.CantClose:
		return "These sides can't close: the longest must be shorter than the other two together (" + limit + ")."
	case surface.Crosses:
		return "Here the outline crosses itself. Type the corners in order, going round."
	case surface.Repeated:
		return "This corner lies on the one before it. Change it or remove it."
	case surface.NotAscending:
		return "Each station must lie beyond the one before it (" + limit + ")."
	case surface.GivenTwice:
		return "This is said twice, in two ways. Empty one of the two."
	}
	return "This can't be measured. Check the figures."
}
