package words

import (
	"shedreckoner/calc/sanding"
)

import (
	"shedreckoner/calc/unit"
)

// Sanding, and readings of the film.
const (
	FilmTaken        = "Film taken"
	ForTheTexture    = "of it to flatten the texture"
	SandedWet        = ", wet"
	ByOwnFigure      = ", by your own figure"
	UseThese         = "Use these"
	WhatAGradeTakes  = "What a grade takes: your own figures"
	HowToFindRemoval = "Weigh an offcut, or read the film twice at one spot, before and after one grade. Your figure then stands in place of the assumption."
	AddOwnRemoval    = "Add a figure of my own"
	GradeNotTyped    = "Grade not typed"
	AsCuredGelCoat   = "as cured gel coat"
	ItTakes          = "It takes"
	CombReadings     = "Comb readings, each of one coat"
	AddACombReading  = "Add a comb reading"
	AddAMeasuredFilm = "Add a measured film"
)

// Grades lists the grades that a sanding goes through.
func Grades(list string) string { return "Grades: " + list + "." }

// GradeJump warns of two grades that are too far apart.
func GradeJump(j sanding.Jump) string {
	return "From " + j.From.String() + " to " + j.To.String() + " is a step of " + unit.Number(float64(j.Ratio), 3) + ": " +
		j.To.String() + " may leave " + j.From.String() + " scratches. Put a grade in between."
}

// TakesAtLeast labels what a grade takes.
func TakesAtLeast(grade string) string { return grade + " takes at least" }

// FewestGrades labels what the fewest grades take.
func FewestGrades(list string) string { return "The fewest grades, " + list + ", take" }
