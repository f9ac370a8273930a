package words

import "strconv"

// The shed card, for the wall.
const (
	ShedWaitsForCup  = "The shed card can be printed when a cup could be mixed and none is running."
	ShedWaitsForTool = "The shed card can be printed once the scale or syringe is set."
	PrintShedCard    = "Print the shed card"
)

// ShedCautions stand on the card.
var ShedCautions = [...]string{
	"Outside this table: no dose.",
	"Goggles and gloves on, eyewash in reach. Splashed: rinse at once, and keep rinsing.",
	"Never two kinds of peroxide, never peroxide on promoter.",
	"One dose a cup; nothing is added later.",
	"The maker's sheet overrules this card.",
}

// ShedCardOf names the card.
func ShedCardOf(material string) string { return "Shed card: " + material }

// ShedTable says what the table is.
func ShedTable(isDrops bool) string {
	if isDrops {
		return "Catalyst in drops, by the temperature of surface and product and the mass of all that cures."
	}
	return "Catalyst by the temperature of surface and product and the mass of all that cures."
}

// ShedLimits says between what the table's doses lie.
func ShedLimits(floor, ceiling string, rows int) string {
	return "At least " + floor + " by mass of all that cures, at most " + ceiling + " by mass of the product. " + strconv.Itoa(rows) + " rows, straight lines between them."
}

// ShedFit says when the material may be put on, now and through the cure.
func ShedFit(least, most, margin, driest, dampest string) string {
	return "Fit to coat: surface " + least + " to " + most + " and " + margin + " above the dew point, air at " + driest + " to " + dampest + " humidity, now and into the evening."
}
