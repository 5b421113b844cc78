package parts

const (
	careFirst = "First move short and slow, hand near the off switch."
	guideAlt  = "The drivetrain. A: the motor's step angle. B: the driver's microsteps. C: the gears. D: what they drive."
)

// What folded parts hold.
const (
	readingBrief = "where it says so"
	firstBrief   = "what to try"
)
