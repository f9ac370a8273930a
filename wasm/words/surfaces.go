package words

import (
	"strconv"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/surface"
)

// The Surfaces screen and a surface's sheet.
const (
	Surfaces       = "Surfaces"
	AreaInAll      = "Total area"
	PageName       = "Shed Reckoner"
	WhatItIs       = "What to order, how thick, how much catalyst, for composite boats built by hand."
	AddASurface    = "Add a surface"
	OnlyACup       = "Only mix a cup"
	LookAtMadeUp   = "Look at a made-up job"
	AddOneLike     = "Add one like"
	NextSurface    = "Next surface"
	NotMeasured    = "–"
	UnnamedSurface = "Unnamed surface"
	EveryShape     = "Every shape"
	WhichShape     = "Which shape?"
	OtherShape     = "Another shape"
	SketchOf       = "Sketch of the shape: " // and its name
	NotToScale     = "not to scale"
	Called         = "called"
	CoatedFaces    = "Faces that are coated"
	HowManyAlike   = "how many alike"
	CutOut         = "Cut-out"
	AddCutOut      = "+ cut-out"
	Ground         = "Ground"
	WhatItGets     = "What it gets"
	NoBuildup      = "nothing yet"
	OrStartOne     = "Or start one"
	EmptyBuildup   = "An empty one"
	SayTheGround   = "Say the ground: the build-up is checked against it."
	EdgeForTape    = "Edge, for tape"
	SeeTheBuildup  = "See the build-up"
	ForYoungGround = "For epoxy and laminate less than a few weeks old."
	OneSideOnly    = "A girth over one side counts once. For both sides of a hull, take two alike."
	AllRoundOnce   = "A girth the whole way round counts both sides already."
)

// BeforeATin is what to mind before a tin is opened.
var BeforeATin = [...]string{
	"The maker's sheet and local rules overrule this page.",
	"Peroxide catalyst blinds: goggles and gloves on, eyewash in reach.",
	"Styrene vapour burns and harms: moving air, no flame, no spark.",
	"Dust: mask P2 or P3. Isocyanate: never sprayed without an air-fed mask.",
}

// MoreShapes is the way to the shapes that aren't seen.
func MoreShapes(n int) string { return strconv.Itoa(n) + " more" }

// ShapeTile is the short name of a shape under its picture.
func ShapeTile(s *surface.Shape) string {
	switch s.Key {
	case "rectangle":
		return "flat"
	case "girths":
		return "girths"
	case "box":
		return "box"
	}
	return s.Name
}

// Gets says which build-up a surface gets.
func Gets(name string) string {
	if name == "" {
		name = NoBuildup
	}
	return "gets " + name
}

// Under says what a surface lies on and how: "ground: laminate, washed and
// sanded, P120; flat, facing up".
func Under(s *job.Surface) string {
	ground := NotSaid
	if g, known := job.GroundByKey(s.Ground); known {
		ground = g.String()
	}
	parts := []string{"ground: " + ground}
	switch p := s.Prepared; {
	case p.IsWashed && p.IsSanded:
		parts = append(parts, "washed and sanded")
	case p.IsWashed:
		parts = append(parts, "washed")
	case p.IsSanded:
		parts = append(parts, "sanded")
	default:
		parts = append(parts, "as found")
	}
	if s.Prepared.Grade > 0 {
		parts = append(parts, "P"+strconv.Itoa(s.Prepared.Grade))
	}
	switch s.Orientation {
	case job.OnWall:
		parts = append(parts, "a wall")
	case job.Overhead:
		parts = append(parts, "overhead")
	default:
		parts = append(parts, "flat up")
	}
	if s.Prepared.IsBelowWater {
		parts = append(parts, "below the waterline")
	}
	if s.Inside {
		parts = append(parts, "inside")
	}
	return strings.Join(parts, ", ")
}

// SurfaceLine is the small line under a surface's name in the list.
func SurfaceLine(s *job.Surface, buildup string) string {
	parts := []string{buildup}
	if buildup == "" {
		parts[0] = "gets nothing yet"
	}
	switch n := len(s.Cutouts); {
	case n == 1:
		parts = append(parts, "1 cut-out")
	case n > 1:
		parts = append(parts, strconv.Itoa(n)+" cut-outs")
	}
	if n := int(s.Part.Count.Value); n > 1 {
		parts = append(parts, strconv.Itoa(n)+" alike")
	}
	if s.Sides.Value > 1 {
		parts = append(parts, "both sides")
	}
	return strings.Join(parts, " · ")
}

// YetToType says which figure a sum waits for.
func YetToType(field string) string { return "Still to be typed: " + field + "." }

// ThingsToCheck counts what is asked about on a build-up.
func ThingsToCheck(n int) string {
	if n == 1 {
		return "1 thing to check on the build-up."
	}
	return strconv.Itoa(n) + " things to check on the build-up."
}

var noteWords = map[surface.Note]string{
	surface.EdgeAtLeast:     "The edge is the shortest that these measures allow.",
	surface.NoEdge:          "No edge was given, so no tape is counted for it.",
	surface.ByFirstRule:     "Taken by Simpson's first rule.",
	surface.BySecondRule:    "Taken by Simpson's second rule.",
	surface.ByTrapezoids:    "Taken by trapezoids: an even spacing would be more exact.",
	surface.GirthsReadLow:   "Stations measured straight read 1 to 2 % low on beamy ends.",
	surface.CornersNotEdges: "Inside a box the corners are hollow: only open rims are counted as edge.",
}

// SurfaceNote is something to be said beside a measured surface.
func SurfaceNote(n surface.Note) string { return noteWords[n] }

// SurfaceNumber names a surface that nobody has named yet.
func SurfaceNumber(id string) string { return "Surface " + id }

// AddA adds a row of what a shape is measured by.
func AddA(row string) string { return "Add a " + row }

// WhereItLies heads the areas beside the list of surfaces.
const WhereItLies = "Where the area is"
