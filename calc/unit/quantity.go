package unit

// Dimension says what a number measures, so that litres are never taken for
// millimetres. It doesn't tell wet film from dry film or mass shares from volume
// shares: the Go types do that.
type Dimension int

// The dimensions that a field or a formula can have.
const (
	Pure Dimension = iota // a bare number: share, factor, count, ratio
	LengthDim
	AreaDim
	VolumeDim
	MassDim
	DensityDim
	TemperatureDim
	DifferenceDim
	TimeDim
	AreaPerVolumeDim
	MassPerAreaDim
	AreaPerTimeDim
	MolarEnergyDim
	ViscosityDim
	VolumePerTimeDim
	MassPerTimeDim
	AngleDim
	MassPerMassDim
	PressureDim
	MolarMassDim
)

// Quantity is any measured value of this package: a float64 in SI base units.
type Quantity interface {
	~float64
	Dimension() Dimension
}

// The quantities. Each is a float64 in SI base units (metre, square metre,
// cubic metre, kilogram, kelvin, second), like time.Duration is an int64 in
// nanoseconds. Where a basis matters, it is part of the type's name.
type (
	Length                float64 // m
	WetFilm               float64 // m, thickness as put on
	DryFilm               float64 // m, thickness once cured
	Area                  float64 // m²
	Volume                float64 // m³
	Mass                  float64 // kg
	Density               float64 // kg/m³
	Temperature           float64 // K
	TemperatureDifference float64 // K
	Time                  float64 // s
	SpreadingRate         float64 // m²/m³, area covered by a volume
	MassPerArea           float64 // kg/m²
	SpreadingSpeed        float64 // m²/s, area covered in a time
	MolarEnergy           float64 // J/mol
	KinematicViscosity    float64 // m²/s
	AirFlow               float64 // m³/s
	MassFlow              float64 // kg/s
	Angle                 float64 // rad
	Emission              float64 // kg/kg, mass given off by a mass of product
	Pressure              float64 // Pa
	MolarMass             float64 // kg/mol
	SolidsByVolume        float64 // 0–1, cured volume ÷ wet volume
	SolidsByMass          float64 // 0–1, cured mass ÷ wet mass
	ByVolume              float64 // volume of one thing ÷ volume of another
	ByMass                float64 // mass of one thing ÷ mass of another
	Share                 float64 // 0–1, part of a whole of the same kind
	Factor                float64 // a multiplier or a bare number
)

func (Length) Dimension() Dimension                { return LengthDim }
func (WetFilm) Dimension() Dimension               { return LengthDim }
func (DryFilm) Dimension() Dimension               { return LengthDim }
func (Area) Dimension() Dimension                  { return AreaDim }
func (Volume) Dimension() Dimension                { return VolumeDim }
func (Mass) Dimension() Dimension                  { return MassDim }
func (Density) Dimension() Dimension               { return DensityDim }
func (Temperature) Dimension() Dimension           { return TemperatureDim }
func (TemperatureDifference) Dimension() Dimension { return DifferenceDim }
func (Time) Dimension() Dimension                  { return TimeDim }
func (SpreadingRate) Dimension() Dimension         { return AreaPerVolumeDim }
func (MassPerArea) Dimension() Dimension           { return MassPerAreaDim }
func (SpreadingSpeed) Dimension() Dimension        { return AreaPerTimeDim }
func (MolarEnergy) Dimension() Dimension           { return MolarEnergyDim }
func (KinematicViscosity) Dimension() Dimension    { return ViscosityDim }
func (AirFlow) Dimension() Dimension               { return VolumePerTimeDim }
func (MassFlow) Dimension() Dimension              { return MassPerTimeDim }
func (Angle) Dimension() Dimension                 { return AngleDim }
func (Emission) Dimension() Dimension              { return MassPerMassDim }
func (Pressure) Dimension() Dimension              { return PressureDim }
func (MolarMass) Dimension() Dimension             { return MolarMassDim }
func (SolidsByVolume) Dimension() Dimension        { return Pure }
func (SolidsByMass) Dimension() Dimension          { return Pure }
func (ByVolume) Dimension() Dimension              { return Pure }
func (ByMass) Dimension() Dimension                { return Pure }
func (Share) Dimension() Dimension                 { return Pure }
func (Factor) Dimension() Dimension                { return Pure }

// Of gives the quantity of n of the scale: Of[WetFilm](400, InMicrometre).
func Of[Q Quantity](n float64, s Scale) Q { return Q(s.SI(n)) }
