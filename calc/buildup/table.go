package buildup

// demands is what each ground needs before a layer of each kind goes on it. An
// empty cell asks for nothing. Below water see underWater. Source: common practice.
var demands = [grounds][columns][]Demand{
	PolystyreneFoam: {
		styrenics: {another(Refuse, EpoxyInstead)}, // styrene dissolves it
		epoxies:   {},
		twoPacks:  {another(Refuse, EpoxyBetween)}, // so does solvent
	},
	OtherFoam: {
		styrenics: {another(Note, SkimFirst)},
		epoxies:   {},
		twoPacks:  {another(Refuse, FillerBetween)},
	},
	BareWood: {
		styrenics: {another(Ask, EpoxyBetween)}, // a weak bond
		epoxies:   {dry},
		twoPacks:  {another(Refuse, SealerBetween)},
	},
	Laminate: {
		styrenics: {keyed},
		epoxies:   {aged(laminateCured, Note), keyed},
		twoPacks:  {keyed, another(Ask, PrimerBetween)},
	},
	TalcFiller: {
		styrenics: {dry},
		epoxies:   {},
		twoPacks:  {another(Ask, PrimerBetween)},
	},
	FreshEpoxy: {
		styrenics: {aged(epoxyCured, Refuse)},
		epoxies:   {inWindow},
		twoPacks:  {inWindow},
	},
	CuredEpoxy: {
		styrenics: {washed, abraded, patched},
		epoxies:   {abraded},
		twoPacks:  {wiped, abraded},
	},
	OldPaint: {
		styrenics: {another(Refuse, StripPaint)},
		epoxies:   {abraded, ragged},
		twoPacks:  {ragged},
	},
	BareMetal: {
		styrenics: {another(Refuse, EpoxyBetween)},
		epoxies:   {abraded, promptly},
		twoPacks:  {another(Refuse, PrimerBetween)},
	},
	WaxedCoat: {
		styrenics: {flatted, wiped},
		epoxies:   {flatted, wiped},
		twoPacks:  {flatted, wiped},
	},
	UnwaxedCoat: {
		styrenics: {inWindow}, // while tacky, else sanded
		epoxies:   {aged(laminateCured, Ask), keyed},
		twoPacks:  {keyed, another(Ask, PrimerBetween)},
	},
	TwoPackCoat: {
		styrenics: {another(Refuse, StripPaint)},
		epoxies:   {abraded},
		twoPacks:  {inWindow},
	},
}

// Demands gives what a ground needs before a layer of the material goes on.
func Demands(g Ground, m Material) []Demand {
	if g < 0 || g >= grounds || m < 0 || m >= materials {
		return nil
	}
	return demands[g][m.column()]
}
