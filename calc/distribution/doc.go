// Package distribution is the distributions of which intervals and tests are made: Student's t
// and Fisher's F, χ², a sum of rectangles, and a sum of all of them with its half-width.
//
//	what                                   where            source
//	Student's t                            student.go       JCGM 100, G.3; A&S 26.7; Hill 1970
//	F                                      student.go       A&S 26.6
//	sums of rectangles                     rectangles.go    volume of a box cut by a plane
//	scatter and rectangles together        sum.go           ours; t and rectangles apart
//	χ² over its degrees of freedom         chisquare.go     Wilson and Hilferty 1931
//
// All are pure numbers. Degrees of freedom are real, and above 0; +Inf is the normal
// distribution. Functions with an error take anything and refuse what has no answer; those
// without, which a sheet asks hundreds of times, say what they take.
package distribution
