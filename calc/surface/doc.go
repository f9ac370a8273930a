// Package surface turns shapes that can be measured in a shed into area and
// edge length.
//
// Everything there is to know of a shape is one entry of the table Shapes: what
// to measure, the letter of each measure on the sketch, the sum, the sketch
// itself, and the keys under which all that is saved. Form, checks and saved
// text follow from the entry.
//
// The area is that of one side. The edge is every line at which the surface
// ends: where tape goes, and where sanding goes through first. Where the
// measures don't settle the edge, the shortest one they allow is given, with
// the note EdgeAtLeast.
//
// Total takes cut-outs off a measured surface and multiplies it by count and
// sides.
//
//	topic                                   file          source
//	flat shapes                             flat.go       elementary geometry
//	edge of an ellipse, to 0.04 %           flat.go       Ramanujan 1914
//	triangle by its sides                   sides.go      elementary geometry
//	polygon by corners                      polygon.go    elementary geometry
//	tube, frustum, cap                      round.go      elementary geometry
//	ellipsoid                               ellipsoid.go  NIST DLMF 19.33
//	box with chosen faces                   box.go        elementary geometry
//	strip, small pieces, measured directly  plain.go      elementary geometry
//	girths at stations                      girths.go     Barrass and Derrett
//	where the stations stand                placing.go    elementary geometry
//	Simpson's rules over even spacing       stations.go   Barrass and Derrett
//
// Range: lengths from 1 mm to 100 m, areas from 0.1 mm² to 10 000 m². What lies
// outside is refused with an *Error that names the measure and the limit.
package surface
