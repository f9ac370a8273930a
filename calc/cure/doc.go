// Package cure answers what makes a mix go off: how much catalyst a cup gets, how soon it
// gels, how large a cup may be, and when nothing may be mixed at all.
//
//	topic                                            file
//	catalyst over the temperature of the surface     table.go
//	temperatures that refuse a dose                  shed.go
//	families of peroxide                             peroxide.go
//	what is in a cup                                 mix.go
//	the dose, and the smallest cup of a tool         dose.go, refusals.go, tool.go, amount.go
//	doses by volume                                  volume.go
//	gel time and its band                            gel.go
//	the builder's cup tests                          cuptest.go, line.go
//	time in hand, the largest cup                    work.go
//	a day in cups                                    cups.go
//	systems of a fixed ratio, parts on a tool        ratio.go, weigh.go
//	what helps against heat and cold                 remedy.go, cold.go
//	a timed test over the table's end                hot.go
//	a cup that doesn't go off                        stuck.go
//
// Only Cup.Dose makes a dose, and every refusal is in it. What could hurt is refused, with
// the figures that say why: nothing is read beyond the ends of a table, nothing is clamped
// to a limit, nothing is added to a cup later, and grams and millilitres are separate types.
// No amounts of promoter appear anywhere. The maker's sheet takes precedence over all of it.
//
// Sources: J. Appl. Polym. Sci. 102 (2006) 1870–1876 and Thermochim. Acta 447
// (2006) 167–177 for gel time over temperature, ASTM D2471 for its dependence on
// the mass, Composites Manufacturing 02/2017 for the range of catalyst. The power
// of the catalyst and the sums of time in hand are assumptions, and marked so.
package cure

import "shedreckoner/calc/working"

// Rules is every rule of the package.
func Rules() []*working.Rule {
	return working.List(
		&position, &onLine,
		allThatCures, &productShare,
		&dose, &DoseVolume, &ofWhole, &ceilingOfWhole, &smallest, onMark, &toolShare,
		&scaleError, &syringeError, &dropError,
		&VolumeOfVolume, &ShareByMass,
		&byCatalyst, &byTemperature, &bothFactors, &gelOfDose, &gelOfRatio, &MostMass,
		testedTime, testedEnd, testedEnergy, testedEnergyEnd, meanTemperature, meanCatalyst, lightest,
		&usableLeft, &spreading, &forArea, &inTime, &largestByTime, &largestUntimed, &largestBatch,
		&cupCount, &cupsLoss, cupEach, wholeGrams,
		&masses.a, &masses.b, &volumes.a, &volumes.b,
		&massRatio, &volumeRatio, &VolumeOf, &massOf,
		&gain, &spared, &inTray, &lowest, &apart,
		&scrape,
	)
}
