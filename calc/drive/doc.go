// Package drive is the drivetrain between a motor and its work: what moves by
// how much, and what a controller must be told about it.
//
//	Motor      step angle and microsteps
//	Stage      a tooth pair, or a worm and its wheel; stages multiply
//	Output     Belt, Screw, Rack, Roller, Rotary, Drum, MovingPulley,
//	           Differential: what one output turn moves
//	Drivetrain all of them: the value that the parts give
//	Setting    the fact that a controller stores, in one of three conventions
//	Parts      any subset of a drivetrain, before and after a swap
//
// Symbols: N = 360°/step angle full steps per motor revolution, m microsteps
// per full step, G motor turns per output turn, P travel per output turn,
// R = P/G travel per motor revolution, S = N·m/R steps per unit of travel.
//
// Travel is in millimetres; of a rotary axis it is in degrees. Products of
// counts stay whole numbers until the last division and π enters last
// (exact.go), so results lie within a few units in the last place.
package drive
