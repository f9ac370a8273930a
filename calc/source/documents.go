package source

// The documents.
var (
	SP811 = Document{"SP811", "NIST Special Publication 811, Guide for the Use of the SI", "NIST, 2008", true}

	Geometry = Document{"geometry", "elementary geometry", "any handbook of mathematics", true}

	UFC319006 = Document{"UFC-3-190-06", "UFC 3-190-06 / MIL-HDBK-1110, Protective Coatings and Paints", "US Department of Defense", true}

	BarrassDerrett = Document{"Barrass-Derrett", "Ship Stability for Masters and Mates", "Barrass and Derrett", true}

	WMO8 = Document{"WMO-8", "WMO-No. 8, Guide to Instruments and Methods of Observation", "World Meteorological Organization", true}

	ISO8502_4 = Document{"ISO-8502-4", "ISO 8502-4, Guidance on the estimation of the probability of condensation", "ISO, as reported", true}

	ISO12944_7 = Document{"ISO-12944-7", "ISO 12944-7, Execution and supervision of paint work", "ISO, as reported", true}

	ISO6344 = Document{"ISO-6344", "ISO 6344 / FEPA 43, Coated abrasives, grain size distribution", "ISO and FEPA, through GNU units 2.22", true}

	ISO2431 = Document{"ISO-2431", "ISO 2431, Determination of flow time by use of flow cups", "ISO", false}

	CFR63VVVV = Document{"40-CFR-63-VVVV", "40 CFR 63 Subpart VVVV, Boat Manufacturing", "US EPA", true}

	CFR63WWWW = Document{"40-CFR-63-WWWW", "40 CFR 63 Subpart WWWW, Reinforced Plastic Composites Production", "US EPA", false}

	ToledoVentilation = Document{"Toledo", "Dilution ventilation notes", "University of Toledo", true}

	NIOSH = Document{"NIOSH", "NIOSH Pocket Guide to Chemical Hazards", "NIOSH", true}

	JAPS102 = Document{"JAPS-102", "J. Appl. Polym. Sci. 102 (2006) 1870–1876", "cure of unsaturated polyester", true}

	TCA447 = Document{"TCA-447", "Thermochim. Acta 447 (2006) 167–177", "cure of epoxy with amine", true}

	ASTMD2471 = Document{"ASTM-D2471", "ASTM D2471, Gel time and peak exothermic temperature", "ASTM", true}

	TM551905223 = Document{"TM-55-1905-223", "TM 55-1905-223, technical manual", "US Army", true}

	CompositesManufacturing = Document{"CM-2017", "Composites Manufacturing 02/2017, best practices: proper cure", "ACMA", true}

	ISMP = Document{"ISMP", "List of error-prone dose designations", "Institute for Safe Medication Practices", false}

	InspectionNotes = Document{"coating-inspection", "coating inspection notes, film and coverage", "a coating inspectors' course", true}

	WetFilmSheet = Document{"wet-film-sheet", "wet-film formulae sheet", "a gauge maker", true}

	PaintEstimating = Document{"paint-estimating", "painting estimating guide", "US", true}

	SpreadingBulletin = Document{"spreading-bulletin", "spreading-rate bulletin", "a coating maker", true}

	SpreadingTable = Document{"spreading-table", "spreading rates by volume solids and dry film", "a coating maker", true}

	FlooringBulletin = Document{"flooring-bulletin", "technical bulletin on wet and dry film", "a floor coating maker", true}

	GeorgiaP2AD = Document{"Georgia-P2AD", "transfer efficiency and paint coverage", "Georgia Pollution Prevention Assistance Division", true}

	BlastProfile = Document{"blast-profile", "note on the dead volume of a blast profile", "a coating maker", true}

	ResinSupplier = Document{"resin-supplier", "gel coat needed by area, film and density", "a resin supplier", true}

	DewTable = Document{"dew-table", "table of dew points for building climate", "a reference table", true}

	Psychrolib = Document{"psychrolib", "psychrolib 1.1.1, after the ASHRAE Handbook of Fundamentals 2017", "ASHRAE, through a reference library", true}

	CoatingChart = Document{"coating-chart", "dew point chart for coating work", "US", true}

	CoatingGlossary = Document{"coating-glossary", "glossary of coating terms", "a coating reference", true}

	CODATA = Document{"CODATA", "CODATA recommended values of the fundamental physical constants", "NIST, 2018", true}

	AbulenciaTheodore = Document{"Abulencia-Theodore", "worked problems of ventilation", "Abulencia and Theodore", true}

	OSHAZ2 = Document{"29-CFR-1910-1000", "29 CFR 1910.1000, Air contaminants, Table Z-2", "OSHA", true}

	OSHAConfined = Document{"29-CFR-1910-146", "29 CFR 1910.146, Permit-required confined spaces", "OSHA", false}

	EH40 = Document{"EH40", "EH40, Workplace exposure limits", "HSE, United Kingdom", true}

	SafeWorkAustralia = Document{"AU-WES", "Workplace exposure standards for airborne contaminants", "Safe Work Australia", true}

	ACGIH = Document{"ACGIH", "Threshold Limit Values", "ACGIH, 2020", false}

	TRGS900 = Document{"TRGS-900", "TRGS 900, Arbeitsplatzgrenzwerte", "Germany", false}

	Ramanujan = Document{"Ramanujan-1914", "Modular equations and approximations to π", "S. Ramanujan, Quarterly Journal of Mathematics 45, 1914", false}

	DLMF = Document{"DLMF", "NIST Digital Library of Mathematical Functions", "NIST", false}

	Nicholls = Document{"Nicholls", "Nicholls's Seamanship", "painting of a tank, worked example", true}

	StabilityNotes = Document{"stability-notes", "ship-stability notes, Simpson's rules", "a nautical course", true}

	ITTC = Document{"ITTC", "particulars of the Wigley parabolic hull", "International Towing Tank Conference", false}

	BoxTiao = Document{"Box-Tiao", "Bayesian Inference in Statistical Analysis", "Box and Tiao, 1973", false}

	GelCoatSheet = Document{"gel-coat-sheet", "gel coat application sheet", "a distributor", true}

	Perry8 = Document{"Perry-8", "Perry's Chemical Engineers' Handbook, 8th ed.", "as carried in the data of an open library of chemicals", true}

	NFPA497 = Document{"NFPA-497", "NFPA 497 (2008), classification of flammable liquids, gases, or vapors", "as carried in the data of an open library of chemicals", true}

	LandoltBornstein = Document{"Landolt-Bornstein", "Landolt-Börnstein IV/20, vapour pressure of chemicals", "as carried in the data of an open library of chemicals", true}

	ChemicalDictionary = Document{"chemical-dictionary", "styrene, in a dictionary of chemicals", "chemicaldictionary.org", true}

	PrudentPractices = Document{"prudent-practices", "Procedures for Working with Chemicals in Laboratories", "US National Research Council", true}

	BoardBook = Document{"board-book", "catalyst by volume for a quart of resin", "a surfboard builder's book", true}

	ResinGuide = Document{"resin-guide", "resin selection guide", "a resin maker", true}

	TM1_1500 = Document{"TM-1-1500-204-23", "TM 1-1500-204-23, General Aircraft Maintenance", "US Army", true}

	Practice = Document{"practice", "common practice of the trade", "suppliers' pages, trade magazines, builders' logs", true}

	House = Document{"house", "our own method", "this program", true}
)

// Documents is the whole bibliography.
var Documents = []*Document{
	&SP811, &Geometry, &UFC319006, &BarrassDerrett, &WMO8, &ISO8502_4, &ISO12944_7, &ISO6344, &ISO2431, &CFR63VVVV,
	&CFR63WWWW, &ToledoVentilation, &NIOSH, &JAPS102, &TCA447, &ASTMD2471, &TM551905223, &CompositesManufacturing, &ISMP, &Practice, &House,
	&InspectionNotes, &WetFilmSheet, &PaintEstimating, &SpreadingBulletin, &SpreadingTable, &FlooringBulletin, &GeorgiaP2AD, &BlastProfile, &ResinSupplier, &BoxTiao,
	&DewTable, &Psychrolib, &CoatingChart, &CoatingGlossary, &CODATA, &AbulenciaTheodore, &OSHAZ2, &OSHAConfined, &EH40, &SafeWorkAustralia, &ACGIH, &TRGS900,
	&Ramanujan, &DLMF, &Nicholls, &StabilityNotes, &ITTC,
	&GelCoatSheet, &BoardBook, &ResinGuide, &TM1_1500,
	&ThreeJS, &Gonum, &Orb, &GolangGeo, &LPSolver, &D3Ease, &Basak, &Sastry, &Ghoshal,
	&Balagurusamy, &NCERTMaths, &Philoid, &NCERTChem, &Maharashtra, &EngelReid, &IECR2021, &CureChart, &Cengel, &Rajput,
	&Arora, &Nag, &ASHRAE, &EPA749, &OSHAMethod09, &Kuo, &DeNevers, &XyleneSpill, &PaintsCenter,
	&SurveyorNotes, &Reliability, &RMQSI, &MillerFreund, &Sawhney, &CachonTerw, &BayesRules, &BuyingHay, &CoinChange,
	&OReillyAlgo,
	&Perry8, &NFPA497, &LandoltBornstein, &ChemicalDictionary, &PrudentPractices, &Kish,
}
