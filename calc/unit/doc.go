// Package unit holds the quantities that the sums take and give, and reads and
// writes them as people do.
//
// A quantity is a float64 in SI base units with a type of its own. Constants
// multiply in and divide out:
//
//	film := unit.WetFilm(0.4 * unit.Millimetre)
//	mils := unit.Length(film) / unit.Mil
//
// The types keep apart what is mixed up at the bench: wet and dry film, shares
// by volume and by mass, a temperature and a temperature difference, US and
// imperial gallons. They can't catch a length used where another length was
// meant, nor a wrong number.
//
// A Scale is a unit that people write: Read takes text to a quantity, Write
// gives a quantity back as text that can't be misread.
//
// Conversions are exact by definition. Source: NIST SP 811, appendix B.
package unit
