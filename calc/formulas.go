package calc

// A Formula is one line of the model with where it comes from.
type Formula struct {
	Name, Text, Source string
}

// Formulas are what the pages compute with, for the method page and for who
// wants to do it by hand.
var Formulas = []Formula{
	{"Full steps per motor turn", "N = 360° / step angle", "definition; IEC 60034-20-1, step angle"},
	{"Gear ratio", "G = product over all stages of (teeth on the driven side / teeth on the motor side); worm: wheel teeth / starts", "ISO 1122-1, gear ratio"},
	{"Travel per output turn, belt", "P = pitch · pulley teeth", "geometry of the pitch line"},
	{"Travel per output turn, screw", "P = lead = pitch · starts", "ISO 5408, lead; ISO 2904 for Tr8x8(P2), ISO 261 for M8x1.25"},
	{"Travel per output turn, rack", "P = π · module · pinion teeth", "ISO 54, module"},
	{"Travel per output turn, roller", "P = π · effective diameter", "geometry; the diameter is where it grips"},
	{"Travel per output turn, rotary axis", "P = 360°", "definition"},
	{"Travel per motor turn", "R = P / G", "geometry"},
	{"Steps per mm (or per degree)", "S = N · m / R, with m microsteps per full step", "geometry"},
	{"From one convention to the other", "S = N · m / R and R = N · m / S; P = R · G", "the same, solved"},
	{"Travel per full step and per microstep", "R / N and R / (N · m)", "the same"},
	{"Length fed in a mark test", "fed = mark − remaining", "difference of two readings"},
	{"Mean of n runs", "sum of the lengths / n", "JCGM 100, 4.2.1"},
	{"Spread of n runs", "square root of (sum of (length − mean)² / (n − 1))", "JCGM 100, 4.2.2"},
	{"Error", "e = measured / commanded − 1; negative: it moved too little", "definition"},
	{"Correction", "c = commanded / measured; S new = S · c, R new = R / c, P new = P / c", "S is steps per commanded mm: to move more, send more"},
	{"Standard uncertainty of a reading", "scatter s/√n of the runs; step d/√12 of each reading; limits ±a/√3; combined as the root of the sum of squares", "JCGM 100, 4.2.3, 4.3.7, 5.1.2"},
	{"One instrument for mark and remaining", "an error of its zero cancels; one of its scale acts on the difference", "JCGM 100, 5.2.2"},
	{"Expanded uncertainty", "U = k · u, with k the two-sided 95 % point of Student's t at the effective degrees of freedom: those of Welch and Satterthwaite, not rounded", "JCGM 100, 6.2.1, G.4, G.6.4"},
	{"Verdict", "leave it if P(|e| ≤ T) ≥ 95 %; change it if P(e > T) or P(e < −T) is; not with this instrument if the part of u that no number of runs reduces is above T/1.96; measure more otherwise", "JCGM 106, 7 and 8; the words are ours"},
	{"A test to come", "u of its error from the scatter to expect and the step and limits of the instrument; n runs of one length: s/√n; at several speeds: that of the line at no speed; of several lengths: that of its slope", "JCGM 100, 4.2.3, H.3.3, run forward"},
	{"What the hot end must melt", "π/4 · (filament's diameter)² · feed speed", "geometry; the volume that goes in comes out"},
	{"A run that stands out", "Grubbs, two-sided at 5 %: pointed out, never dropped by itself", "ISO 5725-2, 7.3.4"},
	{"Scale and fixed offset", "measured = a + b · commanded, least squares; the setting takes b alone", "JCGM 100, H.3"},
	{"Slip", "e = e₀ + slope · speed; the setting takes e₀ if the slope is real and the line fits, the slow runs that agree if it does not fit, all runs otherwise", "JCGM 100, H.3; lack of fit by the F test"},
	{"Lost on reversal", "mean of the positions reached going up, less that coming down, for each target; the largest is the reversal value", "ISO 230-2"},
	{"Check by drawing lots", "each cause drawn from its distribution 200,000 times; the middle 95 % of the results", "JCGM 101, 7"},
	{"After a swap", "new = old · (value from the new parts / value from the old parts); what did not change cancels", "keeps the correction that a measurement put into the old value"},
	{"Section of one printed line", "A = h · (w − h) + π · h² / 4 = h · (w − r), with the rounding r = h · (1 − π/4)", "geometry: flat between two half-rounds"},
	{"Thickness of a wall of n lines", "n · s + r, with lines spaced s = w − r unless stated; a wall without gaps holds h · (thickness − r)", "geometry"},
	{"Flow factor from a wall", "new = old · n · s / (measured − r); one line: old · A(set) / A(measured). With gaps only the outer flanks tell: old · s / (measured − (n − 1) · s − r)", "geometry; ratio of what should be there to what is"},
	{"Flow factor from a mass", "new = old · expected / measured; expected from a stated length: L · π/4 · d² · density", "geometry; divided by the old factor where the stated amount contains it"},
	{"Flow factor from the filament's diameter", "new = old · (diameter as set / measured)²", "geometry; or enter the measured diameter, never both"},
	{"Effective diameter that a setting implies", "D = P / π", "the roller's formula, solved"},
	{"Pulse rate", "f = v · S; the speed at a limit is v = f / S; an acceleration a takes a · S pulses/s²", "S is microsteps per mm"},
	{"Torque behind one microstep", "holding torque · sin(90° / m): for one small step, not what is lost", "torque against displacement taken as a sine, a full step being 90 electrical degrees"},
	{"Ideal corner speed", "n = V / (2 · L · I · N) turns per second, with supply V, phase inductance L as wired, peak phase current I: a rule of thumb", "V = L · di/dt, the current swinging from −I to +I in a full step; no resistance, no back-EMF"},
	{"Part that a setting implies", "pulley teeth = P / pitch; pinion teeth = P / (π · module); lead = P; gear ratio = P / R; driven teeth = gear ratio · teeth on the motor side", "the same formulas, solved"},
	{"Usual leads", "0.5, 0.7, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5 and 3 mm, above them whole millimetres", "coarse pitches of ISO 261; the rest is our choice"},
}

// A Term is a word of the glossary.
type Term struct {
	Word, Meaning string
}

// Glossary is what the suite's words mean.
var Glossary = []Term{
	{"axis", "one motor-driven motion: a feed axis (filament through an extruder) or a travel axis (X, Y, Z, a rotary table)"},
	{"steps per mm", "microsteps that the controller sends for one millimetre; also per inch or per degree"},
	{"travel per motor turn", "how far the axis goes when the motor turns once"},
	{"travel per output turn", "how far it goes when the shaft behind the gears turns once; the gear ratio is then an entry of its own"},
	{"convention", "which of these facts a controller stores"},
	{"step angle", "how far a motor turns with one full step; 1.8° is 200 full steps per turn"},
	{"microsteps", "into how many parts the driver divides a full step"},
	{"pulse rate", "microsteps that the controller sends in one second"},
	{"holding torque", "what it takes to turn a motor that stands under its full current out of its place"},
	{"phase inductance", "how much a winding of the motor resists a change of its current; in its data sheet, in mH"},
	{"back-EMF", "the voltage that a turning motor makes itself, against the supply"},
	{"gear ratio", "motor turns for one output turn"},
	{"stage", "one pair of gears, or of pulleys with a belt between two shafts; the ratios of several stages multiply"},
	{"worm", "a screw that turns a wheel; its starts stand for the teeth on the motor side"},
	{"pitch, lead, starts", "of a screw: pitch from thread to thread, lead what one turn moves, starts the number of threads side by side; of a belt: pitch from tooth to tooth"},
	{"effective diameter", "the diameter at which a drive roller really grips"},
	{"commanded and measured length", "what was asked for, and what moved"},
	{"run", "one commanded move with its reading, marked anew"},
	{"error", "measured over commanded, less one; negative where it moved too little"},
	{"set aside", "said of a reading that stays on view and does not count"},
	{"scatter, spread", "how much runs differ among themselves; as a figure, their standard deviation"},
	{"accuracy, limits of error", "how far from the true length an instrument may read, as its maker states; its step is another matter"},
	{"uncertainty, ±", "how far off a result may still be: 95 of 100 such intervals hold the true value"},
	{"tolerance", "how large an error does not matter to you"},
	{"slip", "filament that the roller does not take along; it grows with speed and is no matter of the setting"},
	{"slack, play", "what a drive turns through before anything moves, after a change of direction"},
	{"retraction", "pulling filament back a little, so that nothing oozes while the head travels"},
	{"correction", "commanded over measured: what steps per mm are multiplied with"},
	{"open-path test", "a feed test in which the filament does not pass the hot end"},
	{"Bowden tube", "a guide tube from a drive that sits away from the hot end"},
	{"slicing step", "the program that turns a model into moves, and reckons how much filament they take"},
	{"flow factor", "how much the slicing step scales the plastic; 1.00 is as computed. It belongs to one material and profile"},
	{"line, bead", "one printed strand of plastic: flat above and below, round at both sides"},
	{"sheet", "the entries of one page; a link carries them"},
}
