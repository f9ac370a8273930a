package source

// What checks alone rest on: reference libraries, run outside the tree with the
// call that stands beside the row, and worked examples of other trades. Of a book
// "as worked in TC" the example was read in the Python Textbook Companions
// (FOSSEE, IIT Bombay), which work it with the book's own data.
var (
	ThreeJS   = Document{"three", "three.js 0.187.0, geometry of meshes and curves", "npm, reference library", true}
	Gonum     = Document{"gonum", "Gonum 0.17.0, numerical library", "Go module, reference library", true}
	Orb       = Document{"orb", "orb 0.14.0, planar geometry", "Go module, reference library", true}
	GolangGeo = Document{"golang-geo", "golang/geo of 18 August 2026, geometry on the sphere", "Go module, reference library", true}
	LPSolver  = Document{"lp-solver", "javascript-lp-solver 1.0.3, integer programmes", "npm, reference library", true}
	D3Ease    = Document{"d3-ease", "d3-ease 3.0.2, easing curves", "npm, reference library", true}

	Basak        = Document{"Basak", "Surveying and Levelling", "N. N. Basak, as worked in TC", true}
	Sastry       = Document{"Sastry", "Introductory Methods of Numerical Analysis", "S. S. Sastry, as worked in TC", true}
	Ghoshal      = Document{"Ghoshal", "Introduction to Chemical Engineering", "Ghoshal, Sanyal and Datta, as worked in TC", true}
	Balagurusamy = Document{"Balagurusamy", "Numerical Methods", "E. Balagurusamy, as worked in TC", true}
	NCERTMaths   = Document{"NCERT-X", "NCERT Mathematics, class X", "NCERT, India", true}
	Philoid      = Document{"philoid-29761", "worked answer on the frustum of a cone", "an answer page, 29761", true}
	NCERTChem    = Document{"NCERT-XII", "NCERT Chemistry, class XII, question 4.8", "an answer page", true}
	Maharashtra  = Document{"Maharashtra-XII", "Maharashtra Board, chemistry, class XII", "an answer page, 157817", true}
	EngelReid    = Document{"Engel-Reid", "Thermodynamics, Statistical Thermodynamics and Kinetics", "Engel and Reid, as worked in TC", true}
	IECR2021     = Document{"IECR-2021", "Ind. Eng. Chem. Res. 2021, ie1c02963", "Matušková, Vinklárek and Honzíček, cobalt in unsaturated polyester", true}
	CureChart    = Document{"cure-chart", "cure chart of a two-part epoxy coating", "a coating maker", true}

	Cengel       = Document{"Cengel-Boles", "Thermodynamics, An Engineering Approach", "Çengel and Boles, as worked in TC", true}
	Rajput       = Document{"Rajput", "Engineering Thermodynamics", "R. K. Rajput, as worked in TC", true}
	Arora        = Document{"Arora", "Thermodynamics", "C. P. Arora, as worked in TC", true}
	Nag          = Document{"Nag", "Engineering Thermodynamics", "P. K. Nag, as worked in TC", true}
	ASHRAE       = Document{"ASHRAE-2017", "ASHRAE Handbook, Fundamentals 2017", "ASHRAE, as quoted in psychrolib's tests", true}
	EPA749       = Document{"EPA-749-F-95-019a", "Chemical summary for styrene, EPA 749-F-95-019a", "US EPA, 1994", true}
	OSHAMethod09 = Document{"OSHA-09", "OSHA Method 09, styrene", "OSHA, 1980", true}
	Kuo          = Document{"Kuo", "Practical Design Calculations for Groundwater and Soil Remediation", "J. Kuo, 2nd ed.", true}
	DeNevers     = Document{"de-Nevers", "Fluid Mechanics for Chemical Engineers", "N. de Nevers, as worked in TC", true}
	XyleneSpill  = Document{"xylene-spill", "worked answer on m-xylene spilt in a room", "an answer page, 108801", true}

	PaintsCenter  = Document{"paints-center", "coverage with transfer efficiency, October 2003", "Paints and Coatings Resource Center", true}
	SurveyorNotes = Document{"surveyor-notes", "surveyor's notes on paint", "a marine surveyor", true}

	Reliability  = Document{"reliability", "reliability, documentation on stress–strength interference", "an open library", true}
	RMQSI        = Document{"RMQSI", "interference stress/strength analysis", "RMQSI", true}
	MillerFreund = Document{"Miller-Freund", "Probability and Statistics for Engineers", "Miller and Freund, as worked in TC", true}
	Sawhney      = Document{"Sawhney", "Mechanical Measurements", "A. K. Sawhney, as worked in TC", true}
	CachonTerw   = Document{"Cachon-Terwiesch", "Matching Supply with Demand, solutions", "Cachon and Terwiesch, 3rd ed.", true}
	BayesRules   = Document{"Bayes-Rules", "Bayes Rules!, chapter 5", "Johnson, Ott and Dogucu, lecture notes", true}
	BuyingHay    = Document{"USACO-hay", "USACO November 2008, Silver, Buying Hay", "USA Computing Olympiad", true}
	CoinChange   = Document{"coin-change", "notes on changing money with the fewest coins", "several courses", true}
	Kish         = Document{"Kish", "note on Kish's effective number of unequal weights", "an answer page", true}
	OReillyAlgo  = Document{"DAA-O'Reilly", "Design and Analysis of Algorithms, App. D", "O'Reilly", true}
)
