package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/air"
	"shedreckoner/calc/buildup"
	"shedreckoner/calc/fault"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/words"
)

// Days, hours and dates: over the ends of months and years, leap years by the Gregorian rule (2000 is one, 2100 is none). (Exact.)
func TestDaysAndHoursAreSaid(t *testing.T) {
	const today = "2026-12-30"
	said(t,
		saying{"0:00", words.Clock(0)}, saying{"7:05", words.Clock(7*3600 + 5*60 + 59)}, saying{"23:59", words.Clock(86399)}, saying{"1:00", words.Clock(25 * 3600)},
		saying{"Today, 30 December", words.DayAhead(0, today)}, saying{"Tomorrow, 31 December", words.DayAhead(1, today)}, saying{"In 2 days, 1 January", words.DayAhead(2, today)}, saying{"In 34 days, 2 February", words.DayAhead(34, today)},
		saying{"In 63 days, 3 March", words.DayAhead(63, today)}, saying{"Tomorrow, 29 February", words.DayAhead(1, "2000-02-28")}, saying{"Tomorrow, 29 February", words.DayAhead(1, "2028-02-28")}, saying{"Tomorrow, 1 March", words.DayAhead(1, "2100-02-28")}, saying{"Tomorrow, 1 March", words.DayAhead(1, "2027-02-28")},
		saying{"In 31 days, 1 May", words.DayAhead(31, "2026-03-31")}, saying{"Tomorrow, 1 July", words.DayAhead(1, "2026-06-30")}, saying{"Tomorrow, 1 October", words.DayAhead(1, "2026-09-30")}, saying{"Tomorrow, 1 December", words.DayAhead(1, "2026-11-30")}, saying{"Tomorrow, 31 August", words.DayAhead(1, "2026-08-30")},
		saying{"Tomorrow", words.DayAhead(1, "")}, saying{"Today", words.DayAhead(0, "2026-13-01")}, saying{"Today", words.DayAhead(0, "2026-0-1")}, saying{"Today", words.DayAhead(0, "2026-05")}, saying{"Today", words.DayAhead(0, "x-05-01")}, saying{"Today", words.DayAhead(0, "2026-05-x")},
		saying{"29 May", words.Date("2026-05-29", today)}, saying{"29 May 2025", words.Date("2025-05-29", today)}, saying{"29 May", words.Date("2025-05-29", "")}, saying{"some day", words.Date("some day", today)},
		saying{"13:30", words.Moment(clock(13, 30), today)}, saying{"0:00", words.Moment(0, today)}, saying{"tomorrow, 31 December at 0:00", words.Moment(unit.Day, today)}, saying{"in 2 days, 1 January at 9:00", words.Moment(clock(57, 0), today)}, saying{"before today", words.Moment(-1, today)},
		saying{"23:59", words.Moment(clock(23, 59)+29, today)}, saying{"0:01", words.Moment(30, today)}, saying{"0:00", words.Moment(29, today)},
	)
}

func step(kind string, card *job.Card) *plan.Step {
	return &plan.Step{Job: &job.Step{Kind: job.FindStepKind(kind)}, Card: card}
}

// Each work has its name: what is put on by its material and which of several it is.
func TestEachWorkHasItsName(t *testing.T) {
	gel := &job.Card{}
	gel.Name = "my gel coat"
	filled := step("sand", nil)
	filled.Fill = &plan.Fill{}
	for want, w := range map[string]*schedule.Work{
		"My gel coat":              {Kind: plan.LayCoat, Step: step("coat", gel), Which: 1, Of: 1},
		"My gel coat, coat 2 of 3": {Kind: plan.LayCoat, Step: step("coat", gel), Which: 2, Of: 3},
		"My gel coat, pass 1 of 2": {Kind: plan.LayFiller, Step: step("fill", gel), Which: 1, Of: 2},
		"Coat 2 of 3":              {Kind: plan.LayCoat, Step: step("coat", nil), Which: 2, Of: 3},
		"Pass":                     {Kind: plan.LayFiller, Step: step("fill", nil), Of: 1},
		"Polish":                   {Kind: plan.PolishLayer, Step: step("polish", nil)}, "May be launched": {Kind: plan.Launch},
		"Sand": {Kind: plan.SandLayer, Step: step("sand", nil)}, "Board the filler": {Kind: plan.SandLayer, Step: filled},
		job.FindStepKind("wash").Name: {Kind: plan.OtherWork, Step: step("wash", nil)},
	} {
		assert.Equal(t, want, words.Work(w))
	}
}

// What is to heed of a work: nothing where there is nothing; by when it must be done only where the hours end within two of it.
func TestWhatToHeedIsSaidWhereItMatters(t *testing.T) {
	const today = "2026-05-29"
	notes := func(w schedule.Work) []string { return words.WorkNotes(&w, today) }
	assert.Empty(t, notes(schedule.Work{From: clock(9, 0), To: clock(12, 0)}))
	assert.Equal(t, []string{"Sand a key first: this ground is always sanded before the next layer."}, notes(schedule.Work{NeedsKey: true}))
	assert.Equal(t, []string{"Outside its window, which ended today, 29 May at 7:00: sand a key first."}, notes(schedule.Work{NeedsKey: true, Closed: clock(7, 0)}))
	assert.Contains(t, notes(schedule.Work{IsLong: true})[0], "split the surface")
	assert.Equal(t, []string{words.MaskAfresh}, notes(schedule.Work{Masking: schedule.Masking{IsLate: true, Off: clock(9, 0), IsLast: true}}))
	assert.Empty(t, notes(schedule.Work{Masking: schedule.Masking{Off: clock(9, 0)}}), "masking stays until the session's last coat")
	assert.Equal(t, []string{"Masking off at the latest tomorrow, 30 May at 9:00: then paper tape and film stick for good. Check your roll."}, notes(schedule.Work{Masking: schedule.Masking{Off: clock(33, 0), IsLast: true}}))
	assert.Equal(t, []string{"Masking off at the latest tomorrow, 30 May at 9:00: in this heat paper tape and film bake on."}, notes(schedule.Work{Masking: schedule.Masking{Off: clock(33, 0), IsLast: true, IsHot: true}}))

	assert.Empty(t, notes(schedule.Work{Masking: schedule.Masking{IsLast: true}}), "nothing is masked")

	dark := schedule.Work{From: clock(15, 0), BeginBy: clock(16, 59), StopBy: clock(18, 0)}
	assert.Equal(t, []string{"Begin by 16:59, stop at 18:00: dark, or the end of the working day."}, notes(dark))
	dark.BeginBy = clock(17, 0)
	assert.Empty(t, notes(dark), "two hours are time enough")
	dark.StopBy, dark.BeginBy = 0, 0
	assert.Empty(t, notes(dark), "it may go on another day")
	for condition, why := range map[air.Condition]string{air.TooNearDew: "dew comes before it has cured", air.TooCold: "it gets too cold before it has cured", air.TooHot: "the surface gets too hot", air.TooDamp: "the air gets too damp", air.TooDry: "the air gets too dry"} {
		assert.Equal(t, []string{"Begin by 17:00, stop at 18:00: " + why + "."}, notes(schedule.Work{From: clock(9, 0), BeginBy: clock(17, 0), StopBy: clock(18, 0), Closing: []air.Finding{{Condition: condition}}}))
	}
	said(t, saying{"At these temperatures the layer below never cures: warm the shed.", words.ScheduleStop(schedule.ErrNeverCures)}, saying{"On a day like this no working hour is fit for the material: Cup says why.", words.ScheduleStop(schedule.ErrNoWindow)},
		saying{"The calendar ends here: there is more work than it holds.", words.ScheduleStop(schedule.ErrTooLong)}, saying{"The day's figures don't fit together.", words.ScheduleStop(errUnheard{})})
}

// A sign says what the log has and what it should have been, in the job's own units; what avoids it next time says the same limit.
func TestASignSaysWhatItIsAndShouldBe(t *testing.T) {
	cause := func(key string) *fault.Cause {
		for i := range fault.Causes {
			if fault.Causes[i].Key == key {
				return &fault.Causes[i]
			}
		}
		t.Fatal(key)
		return nil
	}
	deg := func(c float64) float64 { return float64(celsius(c)) }
	cold := &fault.Found{Cause: cause("cold"), Known: true, Sign: fault.Sign{Got: deg(12), Limit: deg(15), Scale: unit.InCelsius}}
	thick := &fault.Found{Cause: cause("thick"), Known: true, Sign: fault.Sign{Got: 900e-6, Limit: 600e-6, Scale: unit.InMicrometre, IsCeiling: true, IsPlanned: true}}
	said(t,
		saying{"Surface: 12 °C; should be at least 15 °C.", words.SignText(cold, job.Units{})}, saying{"Surface: 53.6 °F; should be at least 59 °F.", words.SignText(cold, american())},
		saying{"Next time: keep the surface, through the cure too, at no less than 15 °C.", words.NextText(cold, job.Units{})},
		saying{"Next time: keep the surface, through the cure too, at no less than what the card says.", words.NextText(&fault.Found{Cause: cause("cold")}, job.Units{})},
		saying{"Wet film of one coat, as planned: 900 µm; should be at most 600 µm.", words.SignText(thick, job.Units{})}, saying{"Next time: wet, by the comb, at most 23.6 mil.", words.NextText(thick, american())},
		saying{"Cups before it from this tin: 2.", words.SignText(&fault.Found{Cause: cause("settled"), Known: true, Sign: fault.Sign{Got: 2, Scale: unit.InPure}}, job.Units{})},
		saying{"The part stood dark in the sun.", words.SignText(&fault.Found{Cause: cause("dark"), Known: true, Sign: fault.Sign{IsFact: true}}, job.Units{})},
		saying{"Next time: dry every washed tool before it meets the cup.", words.NextText(&fault.Found{Cause: cause("acetone")}, job.Units{})},
	)
}

// What a check of the build-up says, on both sides of its limit, and what it rests on.
func TestAFindingSaysWhatWasFoundAndItsLimit(t *testing.T) {
	um := unit.InMicrometre
	f := func(change func(*buildup.Finding)) *plan.Finding {
		b := buildup.Finding{Ground: buildup.Laminate}
		change(&b)
		return &plan.Finding{Finding: b}
	}
	ground := buildup.Laminate.String()
	for want, found := range map[string]*plan.Finding{
		"A coat of 900 µm wet is over the card's largest, 600 µm: it sags and traps air.": f(func(b *buildup.Finding) { b.Rule, b.Got, b.Limit, b.Scale = buildup.WetFilm, 900e-6, 600e-6, um }),
		"A coat of 200 µm wet is thin: under 300 µm it may wrinkle or stay soft.": f(func(b *buildup.Finding) {
			b.Rule, b.Severity, b.Got, b.Limit, b.Scale = buildup.WetFilm, buildup.Ask, 200e-6, 300e-6, um
		}),
		"A coat of 200 µm wet is under the card's least, 300 µm: it wrinkles or stays soft.": f(func(b *buildup.Finding) {
			b.Rule, b.Severity, b.Got, b.Limit, b.Scale = buildup.WetFilm, buildup.Refuse, 200e-6, 300e-6, um
		}),
		"Thinner and wax solution together come to 12 %, over 10 %.": f(func(b *buildup.Finding) {
			b.Rule, b.Got, b.Limit, b.Scale = buildup.Thinning, 0.12, 0.1, unit.InPercent
		}),
		"Wax solution at 4 % is over 3 %: the next coat bonds badly.":   f(func(b *buildup.Finding) { b.Rule, b.Got, b.Limit, b.Scale = buildup.Waxing, 0.04, 0.03, unit.InPercent }),
		"Wax solution at 1 % is under 2 %: the surface may stay tacky.": f(func(b *buildup.Finding) { b.Rule, b.Got, b.Limit, b.Scale = buildup.Waxing, 0.01, 0.02, unit.InPercent }),
		"Sanded after 3 h, before 12 h are up: too soft, the paper clogs.": f(func(b *buildup.Finding) {
			b.Rule, b.Got, b.Limit, b.Scale = buildup.SandSoon, 3*3600, 12*3600, unit.InHour
		}),
		"More is taken off here than there is.":                             f(func(b *buildup.Finding) { b.Rule, b.Got, b.Limit, b.Scale = buildup.MeanLeft, -1e-6, 250e-6, um }),
		"Mean film left 0 µm, less than the 250 µm asked for.":              f(func(b *buildup.Finding) { b.Rule, b.Got, b.Limit, b.Scale = buildup.MeanLeft, 0, 250e-6, um }),
		"The thin side is left with 90 µm, less than the 250 µm asked for.": f(func(b *buildup.Finding) { b.Rule, b.Got, b.Limit, b.Scale = buildup.ThinLeft, 90e-6, 250e-6, um }),
		"7 % of the area is expected to be sanded through here; 5 % was allowed.": f(func(b *buildup.Finding) {
			b.Rule, b.Got, b.Limit, b.Scale = buildup.GoThrough, 0.07, 0.05, unit.InPercent
		}),
		"Film left 900 µm is over 800 µm: it may crack.": f(func(b *buildup.Finding) { b.Rule, b.Got, b.Limit, b.Scale = buildup.CrackLimit, 900e-6, 800e-6, um }),
		"The ground (" + ground + ") was last sanded with P80.": f(func(b *buildup.Finding) {
			b.Rule, b.Requirement, b.Fix, b.Got, b.Limit = buildup.OnGround, buildup.Sanding, buildup.OtherGrade, 80, 180
		}),
		"The ground (" + ground + ") isn't sanded.": f(func(b *buildup.Finding) {
			b.Rule, b.Requirement, b.Fix = buildup.OnGround, buildup.Sanding, buildup.SandFirst
		}),
		"The ground (" + ground + ") isn't washed.":            f(func(b *buildup.Finding) { b.Rule, b.Requirement = buildup.OnGround, buildup.Washing }),
		"Gel coat on " + ground + ": no test patch is logged.": f(func(b *buildup.Finding) { b.Rule, b.Requirement = buildup.OnGround, buildup.TestPatch }),
		"The age of the ground (" + ground + ") isn't given. It needs 48 h at 20 °C.": f(func(b *buildup.Finding) {
			b.Rule, b.Requirement, b.IsUnknown, b.Limit, b.Scale = buildup.OnGround, buildup.Age, true, 48*3600, unit.InHour
		}),
		"The ground (" + ground + ") is 5 h old. It needs 48 h at 20 °C.": f(func(b *buildup.Finding) {
			b.Rule, b.Requirement, b.Got, b.Limit, b.Scale = buildup.OnGround, buildup.Age, 5*3600, 48*3600, unit.InHour
		}),
		"After 2 h the coat below can't take another yet: 4 h at the soonest.": f(func(b *buildup.Finding) {
			b.Rule, b.Requirement, b.Fix, b.Got, b.Limit, b.Scale = buildup.OnGround, buildup.Window, buildup.WaitLonger, 2*3600, 4*3600, unit.InHour
		}),
		"After 50 h the coat below no longer takes another without sanding: 24 h at the latest.": f(func(b *buildup.Finding) {
			b.Rule, b.Requirement, b.Got, b.Limit, b.Scale = buildup.OnGround, buildup.Window, 50*3600, 24*3600, unit.InHour
		}),
		"The waiting time isn't given: was the coat below (" + ground + ") still open for the next one?": f(func(b *buildup.Finding) { b.Rule, b.Requirement, b.IsUnknown = buildup.OnGround, buildup.Window, true }),
		"Gel coat bonds badly to " + ground + ".":                                                        f(func(b *buildup.Finding) { b.Rule, b.Fix = buildup.OnGround, buildup.EpoxyBetween }),
		ground + " soaks up resin and moves under Gel coat.":                                             f(func(b *buildup.Finding) { b.Rule, b.Fix = buildup.OnGround, buildup.SealerBetween }),
		"Gel coat without wax stays tacky where air gets at it: it can't be left open or sanded.":        f(func(b *buildup.Finding) { b.Rule = buildup.OpenCoat }),
	} {
		what, fix, _ := words.Finding(found, "Gel coat", job.Units{})
		assert.Equal(t, want, plainly(what))
		if found.Fix == buildup.OtherGrade {
			assert.Equal(t, "Sand with P180.", fix)
		}
	}
	for want, near := range map[string]buildup.Near{
		"Put it on in one coat.": {Coats: 1}, "Put it on in 3 coats.": {Coats: 3}, "No film holds: the card's least is over its largest. Change one of the two on the card.": {},
		"The least that holds is 800 µm in 2 coats.": {Above: 800e-6, AboveCoats: 2}, "The nearest wet films that hold are 600 µm in one coat and 800 µm in 2 coats.": {Below: 600e-6, BelowCoats: 1, Above: 800e-6, AboveCoats: 2},
	} {
		_, fix, _ := words.Finding(f(func(b *buildup.Finding) {
			b.Rule, b.Severity, b.Fix, b.Near, b.Scale = buildup.WetFilm, buildup.Refuse, buildup.MoreCoats, near, um
		}), "", job.Units{})
		assert.Equal(t, want, plainly(fix))
		_, fix, _ = words.Finding(f(func(b *buildup.Finding) {
			b.Rule, b.Severity, b.Fix, b.Near, b.Scale = buildup.WetFilm, buildup.Ask, buildup.MoreCoats, near, um
		}), "", job.Units{})
		assert.Equal(t, "Put it on in more coats.", fix, "what is only asked keeps its own fix")
	}
	common := f(func(b *buildup.Finding) { b.Source, b.Mark = source.Practice.At("a place"), source.CommonPractice })
	_, _, rests := words.Finding(common, "", job.Units{})
	assert.Equal(t, "a place – "+source.CommonPractice.String(), rests, "practice is said by the mark alone")
	printed := f(func(b *buildup.Finding) { b.Source, b.Mark = source.UFC319006.At("2.1"), source.Published })
	_, _, rests = words.Finding(printed, "", job.Units{})
	assert.Equal(t, source.UFC319006.At("2.1").String()+" – "+source.Published.String(), rests)
	mil, _, _ := words.Finding(f(func(b *buildup.Finding) { b.Rule, b.Got, b.Limit, b.Scale = buildup.CrackLimit, 900e-6, 800e-6, um }), "", american())
	assert.Equal(t, "Film left 35.4 mil is over 31.5 mil: it may crack.", plainly(mil))
}

// A working says of what went into it what it is and where it comes from.
func TestAWorkingSaysWhatWentIn(t *testing.T) {
	said(t, saying{": dry film 400 µm, gel coat", words.GivenAs(working.Source{Symbol: "DFT", Name: "dry film", Value: "400 µm", Origin: "gel coat"})}, saying{"dry film 400 µm", words.GivenAs(working.Source{Name: "dry film", Value: "400 µm"})},
		saying{"All of it: one step before", words.StepsBefore(1)}, saying{"All of it: 2 steps before", words.StepsBefore(2)}, saying{"and 3 more", words.AndMore(3)})
}
