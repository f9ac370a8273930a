package ready

// Sequences is every ready sequence, the most usual first. It must not be changed.
var Sequences = []Sequence{
	{"foam-to-gloss", "Foam to gloss", "foam polyester", []string{
		abraded, wiped,
		"kind fill, card light-polyester-filler, thickness 1 mm",
		"kind sand, by grades, first P80, last P120, tool board, wait 2 h", wiped,
		flowCoat,
		"kind sand, by grades, first P180, last P180, wait 24 h", wiped,
		sprayedGelCoat, wetSanding, cutting, polishing,
	}},
	{"spray-again", "Gel coat sprayed again", "polyester", []string{
		wiped, abraded, wiped,
		sprayedGelCoat, wetSanding, cutting, polishing,
	}},
	{"rolled-gelcoat", "Gel coat rolled, to gloss", "polyester", []string{
		wiped, abraded, wiped,
		"kind coat, card gelcoat, method nap-roller, film 840 µm, release film",
		"kind sand, by grades, first P320, last P1500, wet-from P400, wait 24 h", cutting, polishing,
	}},
	{"flowcoat-inside", "Flow coat inside", "polyester", []string{
		wiped, abraded, wiped,
		flowCoat,
	}},
	{"primer-topcoat", "Putty, primer, two-pack topcoat", "polyester epoxy wood foam polystyrene", []string{
		wiped, abraded, wiped,
		"kind fill, card epoxy-filler, thickness 1 mm",
		"kind sand, by grades, first P80, last P120, tool board, wait 24 h", wiped,
		"kind coat, card primer, method foam-roller, film 450 µm, coats 3",
		"kind sand, by grades, first P220, last P320, wait 24 h", wiped,
		"kind coat, card topcoat, method roll-and-tip, film 270 µm, coats 3",
	}},
	{"fair-only", "Fair only", "polyester epoxy wood foam polystyrene", []string{
		wiped, abraded, wiped,
		"kind fill, card epoxy-filler, thickness 1.5 mm",
		"kind sand, by grades, first P80, last P180, tool board, wait 24 h",
	}},
}

// Steps that several sequences share.
const (
	wiped          = "kind wash"
	abraded        = "kind sand, by grades, first P120, last P120"
	flowCoat       = "kind coat, card flowcoat, method nap-roller, film 400 µm"
	sprayedGelCoat = "kind coat, card gelcoat, method gravity-gun, film 900 µm, release film"
	wetSanding     = "kind sand, by grades, first P400, last P1500, wet-from P400, wait 24 h"
	cutting        = "kind polish, card compound, wait 48 h"
	polishing      = "kind polish, card polish"
)
