package buildup

// demands is what each ground needs before a layer of each kind goes on it. An
// empty cell asks for nothing. Below water see underWater. Source: common practice.
var demands = [grounds][columns][]Demand{
	PolystyreneFoam: {
		styrenics: {{Requirement: Another, Severity: Refuse, Fix: EpoxyInstead}}, // styrene dissolves it
		epoxies:   {},
		twoPacks:  {{Requirement: Another, Severity: Refuse, Fix: EpoxyBetween}}, // so does solvent
	},
	OtherFoam: {
		styrenics: {{Requirement: Another, Severity: Note, Fix: SkimFirst}},
		epoxies:   {},
		twoPacks:  {{Requirement: Another, Severity: Refuse, Fix: FillerBetween}},
	},
	BareWood: {
		styrenics: {{Requirement: Another, Severity: Ask, Fix: EpoxyBetween}}, // a weak bond
		epoxies:   {dry},
		twoPacks:  {{Requirement: Another, Severity: Refuse, Fix: SealerBetween}},
	},
	Laminate: {
		styrenics: {keyed},
		epoxies:   {{Requirement: Age, Severity: Refuse, Fix: WaitLonger, Least: laminateCured, Unknown: Note}, keyed},
		twoPacks:  {keyed, {Requirement: Another, Severity: Ask, Fix: PrimerBetween}},
	},
	TalcFiller: {
		styrenics: {dry},
		epoxies:   {},
		twoPacks:  {{Requirement: Another, Severity: Ask, Fix: PrimerBetween}},
	},
	FreshEpoxy: {
		styrenics: {{Requirement: Age, Severity: Refuse, Fix: WaitLonger, Least: epoxyCured, Unknown: Refuse}},
		epoxies:   {inWindow},
		twoPacks:  {inWindow},
	},
	CuredEpoxy: {
		styrenics: {washed, abraded, patched},
		epoxies:   {abraded},
		twoPacks:  {wiped, abraded},
	},
	OldPaint: {
		styrenics: {{Requirement: Another, Severity: Refuse, Fix: StripPaint}},
		epoxies:   {abraded, ragged},
		twoPacks:  {ragged},
	},
	BareMetal: {
		styrenics: {{Requirement: Another, Severity: Refuse, Fix: EpoxyBetween}},
		epoxies:   {abraded, promptly},
		twoPacks:  {{Requirement: Another, Severity: Refuse, Fix: PrimerBetween}},
	},
	WaxedCoat: {
		styrenics: {flatted, wiped},
		epoxies:   {flatted, wiped},
		twoPacks:  {flatted, wiped},
	},
	UnwaxedCoat: {
		styrenics: {inWindow}, // while tacky, else sanded
		epoxies:   {{Requirement: Age, Severity: Refuse, Fix: WaitLonger, Least: laminateCured, Unknown: Ask}, keyed},
		twoPacks:  {keyed, {Requirement: Another, Severity: Ask, Fix: PrimerBetween}},
	},
	TwoPackCoat: {
		styrenics: {{Requirement: Another, Severity: Refuse, Fix: StripPaint}},
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
