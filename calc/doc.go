// Package calc is the suite without its screen: calculators that put a small
// machine's steps/mm right after a hardware change.
//
// Data goes round one way:
//
//	fragment -> Form -> Sheet -> drive, measure -> Report -> a view
//	typing   -> Form -> fragment
//
// A sheet.Page declares a Sheet; a Sheet declares its Fields and solves itself; a
// form.Form holds a sheet's text as typed and what is wrong with it; a report.Report is
// the answer as data. Here is the registry of pages, and the door for everybody outside.
//
// # Rooms
//
//	word, lists              sentences as templates; short lists
//	unit                     quantities, text in and text out
//	distribution             Student's t, F, χ², sums of rectangles
//	drive, measure           the drivetrain; what readings say
//	simulation               the same by drawing lots
//	report, sheet            what an answer is; what a calculator is, whatever it is about
//	link, form               the codec and its mender; the text as typed
//	page/axis, page/trial    what several calculators ask of an axis, and of a test
//	page/calibrate ...       the calculators, a folder each; none imports another
//	calc                     the registry
//	logbook                  what is kept, as text
//
// A room imports those above it in this list only: TestRooms, in app, holds that.
//
// # Map
//
//	question                               where            formula                source
//	what should the setting be?            page/calibrate   drive.Setting          S' = S·c, R' = R/c
//	how well is that known?                page/calibrate   measure.Budget         JCGM 100
//	does drawing lots say the same?        report           simulation.MonteCarlo  JCGM 101
//	is the error real, what next?          page/calibrate   measure.Scale.Judge    JCGM 106
//	is it slip, or a fixed offset?         calibrate/kinds  measure.SlipTest, Fit  JCGM 100, H.3
//	backlash, and does it come back?       calibrate/kinds  measure.Bidirectional  ISO 230-2
//	is it a common mistake?                calibrate/apply  drive.ReadRatio        ratios of parts
//	the same fact the other way?           page/convert     drive.Setting.In       S = N·m/R
//	what value do the parts give?          page/parts       drive.PerTurn, Setting S = N·m·G/P
//	which part does a setting imply?       axis/implied     drive.PulleyTeeth      P over pitch, π·module, π
//	which numbers does a swap move?        page/swap        drive.Rescale          ratios of parts
//	how long a test, how many runs?        page/plan        measure.Test.RunsFor   JCGM 100, run forward
//	are walls as thick as they should be?  page/flow        drive.BeadArea         geometry; JCGM 100, 106
//	how many pulses, what is the limit?    page/rate        drive.PulseRate        f = v·S
//	where does torque fall off?            page/rate        drive.CornerOf         V = L·di/dt + R·i
//	how is a sheet carried by a link?      link, form       -                      RFC 3986 for escapes
//
// # Symbols
//
//	N  full steps per motor turn      m  microsteps per full step
//	G  motor turns per output turn    P  travel per output turn
//	R  travel per motor turn, P/G     S  steps per mm or degree, N·m/R
//	c  correction, commanded/measured e  error, measured/commanded - 1
//
// # Bibliography
//
//	JCGM 100:2008  Evaluation of measurement data - Guide to the expression of
//	               uncertainty in measurement
//	JCGM 101:2008  Supplement 1 - Propagation of distributions using a Monte
//	               Carlo method
//	JCGM 106:2012  The role of measurement uncertainty in conformity assessment
//	ISO 230-2      Test code for machine tools - Determination of accuracy and
//	               repeatability of positioning of numerically controlled axes
//	ISO 261        ISO general purpose metric screw threads - General plan
//	ISO 2904       ISO metric trapezoidal screw threads - Basic dimensions
//	ISO 5408       Screw threads - Vocabulary
//	ISO 5296       Synchronous belt drives - Pitch codes MXL to XXH
//	ISO 13050      Synchronous belt drives - Curvilinear tooth profile systems
//	ISO 17396      Synchronous belt drives - Metric pitch, tooth profiles T and AT
//	ISO 54         Cylindrical gears - Modules
//	ISO 1122-1     Vocabulary of gear terms - Definitions related to geometry
//	ISO 80000-3    Quantities and units - Space and time
//	RFC 3986       Uniform Resource Identifier: Generic Syntax
package calc
