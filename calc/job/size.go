package job

import (
	"errors"
	"strings"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/unit"
)

// PackSize is what is in a pack, exactly as it is sold.
type PackSize struct {
	Amount decimal.Decimal
	Scale  unit.Scale // NoScale: in the card's own basis
}

// sizeScales is what a pack may be written in.
var sizeScales = []unit.Scale{
	unit.InKilogram, unit.InGram, unit.InPound, unit.InOunce,
	unit.InLitre, unit.InMillilitre, unit.InUSGallon, unit.InUSQuart, unit.InUSPint, unit.InUSFluidOunce,
	unit.InImperialGallon, unit.InImperialQuart, unit.InImperialPint, unit.InImperialFluidOunce, unit.InMetre, unit.InFoot, unit.InYard,
}

// ReadSize reads the size of a pack: "5", "2.5 kg", "1 US gal". The number is
// kept exactly. Errors: *unit.ReadError.
func ReadSize(text string) (PackSize, error) {
	text = strings.TrimSpace(text)
	if amount, err := unit.ReadDecimal(text); err == nil {
		return PackSize{amount, unit.NoScale}, nil
	}
	for _, s := range sizeScales {
		for _, word := range append([]string{s.Symbol()}, s.Also()...) {
			at := len(text) - len(word)
			if at <= 0 || !strings.EqualFold(text[at:], word) {
				continue
			}
			if amount, err := unit.ReadDecimal(text[:at]); err == nil {
				return PackSize{amount, s}, nil
			}
		}
	}
	var which *unit.ReadError
	if _, byVolume := unit.Read(text, unit.InLitre); errors.As(byVolume, &which) && which.Cause == unit.WhichUnit {
		return PackSize{}, byVolume // gallons of some kind
	}
	if _, err := unit.Read(text, unit.InKilogram); err != nil { // names the units that fit
		return PackSize{}, err
	}
	return PackSize{}, &unit.ReadError{Text: text, Cause: unit.NotANumber}
}
