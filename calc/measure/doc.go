// Package measure is what readings say about an axis: how far it moved, how
// well that is known, whether the setting should change, and what to do if
// that cannot be told yet.
//
// The pipeline:
//
//  1. Instrument  what was read with: its step, its limits of error, the eye
//  2. Evidence    the readings: Repeated, MarkTest or TwoMeans
//  3. Measured    the length moved, and the Budget of what makes it doubtful
//  4. Corrected   the factor, the error and the new setting, with uncertainty
//  5. Judgement   leave it, change it, measure more; Advice: what would settle it
//  6. NextRun     the band for the run that confirms the change
//
// Beside it: Grubbs points out a reading that does not fit; Fit is a straight
// line through several lengths, ScaleAndOffset takes scale and fixed offset
// apart; Bidirectional is what a reversal of direction costs; SlipTest is the
// error against speed; Drift is the trend over time. The distributions are those of
// calc/distribution; a check of the uncertainty by drawing lots is calc/simulation.
//
// # Map
//
//	what                                   where            source
//	mean, spread                           series.go        JCGM 100, 4.2
//	combined, effective dof, expanded      budget.go        JCGM 100, 5.1.2, G.4, G.6.4
//	the interval that ± shows              interval.go      ours; t and rectangles apart (distribution.Sum)
//	resolution, limits, certificate        instrument.go    JCGM 100, 4.3.3, 4.3.7, F.2.2
//	one instrument for two readings        marktest.go      JCGM 100, 5.2.2, F.1.2.3
//	correction and its uncertainty         correct.go       JCGM 100, 5.1.2
//	probability of conformity, guard bands conformity.go    JCGM 106, 7, 8.3
//	verdict                                verdict.go       JCGM 106, 7, 8
//	what would settle it                   advice.go        the same, run forward
//	uncertainty of a test to come          design.go        the same, run forward
//	prediction of the next run             confirm.go       JCGM 100, 5.1.2
//	outliers                               grubbs.go        Grubbs 1969; ISO 5725-2
//	straight line                          line.go          JCGM 100, H.3
//	lack of fit                            lackfit.go       classical F test with repeats
//	scale and offset                       scale.go         JCGM 100, H.3
//	reversal, repeatability, accuracy      reversal.go      ISO 230-2
//	slip, and the scale at no speed        slip.go, slip_scale.go   JCGM 100, H.3
//	drift                                  drift.go         JCGM 100, H.3
//
// # Units and conventions
//
// Lengths are in mm; of a rotary axis they are angles in degrees. Errors,
// factors, slopes and tolerances are pure numbers (0.005 is 0.5 %), speeds in
// mm/s, times in days. Every u is a standard uncertainty, every U covers 95 %
// on both sides with the t of the real, not rounded, degrees of freedom; those of
// the Guide (Estimate.Expanded) and those that are shown (Estimate.HalfWidth) are
// two things. Every standard deviation has n − 1.
//
// Given numbers, nothing here returns NaN or an infinite one, but for degrees
// of freedom, which are +Inf where nothing was estimated from few readings. What
// cannot be answered is an error; what is doubtful is a Warning with its cure.
package measure
