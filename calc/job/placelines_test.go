package job_test

// places is what each field of the bench, the day, a cup test, a cup and a
// finished piece of work says: the text, the place that it is read into, and what
// stands there then, in SI. A figure that was read into its neighbour's place would
// be dosed or ordered as that.
const places = `
bench.now | Bench
card = gelcoat | Card | gelcoat
step = buildup.1.step.2 | Step | buildup.1.step.2
amount = 120 g | Amount | 0.12
product-temp = 21 °C | Product | 294.15
surface-temp = 23 °C | Surface | 296.15
film = 410 µm | Film | 0.00041
thinner = 3 % | Thinner | 0.03
pigment = 4 % | Pigment | 0.04
scale-step = 0.1 g | ToolStep | 0.1
catalyst = cumene-peroxide | Catalyst | cumene-peroxide
tin = May | Tin | May
stretch = 2 min | Stretch | 120
mixing = 3 min | Mixing | 180
read-on = 2026-06-01 | ReadOn | 2026-06-01
read-at = 9:30 | ReadAt | 34200
ahead = 14 °C | Ahead | 287.15
mark = 5 mL | Mark | 5
product-was = 11 °C | ProductWas | 284.15
surface-was = 12 °C | SurfaceWas | 285.15
agency = niosh | Agency | niosh
locker = 60 L | Locker | 0.06
flow-wanted = 44 | FlowWanted | 44
flow-cup = 5 | FlowCup | 5

day.today | Day
low = 11 °C | Low | 284.15
high = 29 °C | High | 302.15
sunrise = 5:15 | Sunrise | 18900
read-temp = 21 °C | ReadTemp | 294.15
read-humidity = 63 % | ReadHumidity | 0.63
read-at = 8:00 | ReadAt | 28800
sun = sun | InSun | true
colour = dark | Colour | dark
date = 2026-06-02 | Date | 2026-06-02
work-from = 7:00 | WorkFrom | 25200
work-to = 19:00 | WorkTo | 68400

test.1 | Tests
card = gelcoat | Card | gelcoat
tin = May | Tin | May
day = 2026-05-01 | Day | 2026-05-01
mass = 110 g | Mass | 0.11
temp = 22 °C | Temperature | 295.15
share = 1.6 % | Catalyst | 0.016
minutes = 14 min | Gel | 840

cup.1 | Cups
card = gelcoat | Card | gelcoat
tin = May | Tin | May
step = buildup.1.step.1 | Step | buildup.1.step.1
method = brush | Method | brush
mixed = 501 g | Mixed | 0.501
product = 502 g | Product | 0.502
thinner = 53 g | Thinner | 0.053
wax = 14 g | Wax | 0.014
parts = putty-resin=100.0 | Parts | map[putty-resin:0.1]
catalyst = ketone-peroxide | Catalyst | ketone-peroxide
catalyst-mass = 7 g | DoseMass | 0.007
dose = 7 g | Dose | 7 g
share = 1.7 % | Share | 0.017
film = 420 µm | Film | 0.00042
product-temp = 21 °C | ProductTemp | 294.15
surface-temp = 22 °C | SurfaceTemp | 295.15
air-temp = 23 °C | AirTemp | 296.15
humidity = 64 % | Humidity | 0.64
per-area = 0.6 kg/m² | PerArea | 0.6
day = 2026-06-03 | Day | 2026-06-03
hour = 36300 | Hour | 36300
weighed = 1001 | Weighed | 1001
in = 1002 | In | 1002
ended = 1003 | Ended | 1003
usable = 6 min | Usable | 360
early = 7 min | Early | 420
late = 8 min | Late | 480
kind = test | IsTest | true
end = spread | End | spread
gel = 9 min | Gel | 540
left = 15 g | Left | 0.015
covered = 0.7 m² | Covered | 0.7
fault = sag | Fault | sag
note = thin at the bow | Note | thin at the bow

done.1 | Finished
step = buildup.1.step.1 | Step | buildup.1.step.1
card = gelcoat | Card | gelcoat
method = brush | Method | brush
day = 2026-06-04 | Day | 2026-06-04
hour = 36600 | Hour | 36600
at = 1004 | At | 1004
planned = 2.1 kg | Planned | 2.1
film = 1.9 kg | Film | 1.9
each = 430 µm | Each | 0.00043
used = 2.3 kg | Used | 2.3
temp = 24 °C | Temperature | 297.15
surface = surface.1 surface.2 | Surfaces | [surface.1 surface.2]
cups = cup.1 cup.2 | Cups | [cup.1 cup.2]
`

// more is the same of parts whose figures lie in parts of their own, or are asked for
// under an answer: that is typed before.
const more = `
buildup.1 | Buildups
name = Topsides | Name | Topsides
ground = polyester | Ground | polyester
thin-share = 4 % | Budget.Thin | 0.04
removal-cv = 30 % | Budget.RemovalCV | 0.3
unfair = 21 µm | Budget.Unfairness | 2.1e-05
strip = 26 mm | Budget.Strip | 0.026

surface.1 | Surfaces
name = Bow | Name | Bow
buildup = buildup.2 | Buildup | buildup.2
lies = overhead | Orientation | overhead
inside = locker | Inside | true
by = paced | By | paced
sides = both | Sides | 2
ground = polyester | Ground | polyester
water = below | Prepared.IsBelowWater | true
prepared = washed | Prepared.IsWashed | true
prepared = sanded | Prepared.IsSanded | true
prepared-grade = P220 | Prepared.Grade | 220
ground-age = 3 d | Prepared.Age | 259200
patch = 2026-05-30 | Prepared.Patch | 2026-05-30
count = 3 | Part.Count | 3

putty.1 | Putties
name = Fine | Name | Fine
wanted = 1.5 L | Wanted | 0.0015
air = 5 % | Air | 0.05
against = epoxy-filler | Against | epoxy-filler

removal.1 | Removals | way = weighed
before = 201 g | Before | 0.201
after = 199 g | After | 0.199
area = 0.2 m² | Area | 0.2
cured-density = 1.3 kg/L | Density | 1300
scale-step = 0.1 g | ScaleStep | 0.0001

removal.1 | Removals | way = gauged
grade = P220 | Grade | P220
read-before = 410 µm | ReadBefore | 0.00041
read-after = 380 µm | ReadAfter | 0.00038
gauge-step = 2 µm | GaugeStep | 2e-06

removal.1 | Removals | way = directly
takes = 12 µm | Direct | 1.2e-05

buildup.1.step.1 | Buildups | kind = porous
card = gelcoat | Steps.Card | gelcoat
film = 400 µm | Steps.Film | 0.0004
film-is = cured | Steps.FilmIsCured | true
film-for = each | Steps.FilmIsEach | true
coats = 2 | Steps.Coats | 2
thinner = 5 % | Steps.Thinner | 0.05
thinner-by = volume | Steps.ThinnerByMass | false
goes = 3 | Steps.Sequence.Rounds | 3
go-takes = 60 µm | Steps.Sequence.RoundTakes | 6e-05
release = film | Steps.Sequence.IsUnderFilm | true
wait = 20 h | Steps.Sequence.Wait | 72000
patch = 2026-05-29 | Steps.Sequence.Patch | 2026-05-29
swallowed = 70 µm | Steps.Sequence.Swallowed | 7e-05

buildup.1.step.1 | Buildups | kind = fill
putty = putty.1 | Steps.Putty | putty.1
thickness = 6 mm | Steps.Thickness | 0.006
sanded-off = 30 % | Steps.SandedOff | 0.3
fill-by = spots | Steps.Hollows.By | spots

buildup.1.step.1 | Buildups | kind = sand
taken = 90 µm | Steps.Taken | 9e-05
least = 300 µm | Steps.Sequence.Least | 0.0003

buildup.1.step.1 | Buildups | kind = sand; by = grades
first = P80 | Steps.Sanding.First | P80
last = P220 | Steps.Sanding.Last | P220
grades = P80 P120 | Steps.Sanding.Grades | [P80 P120]
tool = board | Steps.Sanding.Tool | board
wet-from = P320 | Steps.Sanding.WetFrom | P320
scratch = 0.4 | Steps.Sanding.Scratch | 0.4
texture-is = peak | Steps.Sanding.IsPeak | true
texture = 80 µm | Steps.Sanding.Texture | 8e-05
`
