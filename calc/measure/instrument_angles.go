package measure

// AngleInstruments are the usual kinds for an axis that turns, from the coarse to the fine:
// what is said of an Instrument in mm is in degrees here.
//
// All of it are our own rounded assumptions. A protractor of the common size has a line for
// each degree. Its centre sits off the axis by half a millimetre, at lines some 60 mm away:
// that is 0.5°. Index marks on the rim are seen to meet or not to meet by half a millimetre,
// which is 0.5° at a radius of 57 mm, and they are laid out no better than that. A digital
// angle gauge of the common kind shows 0.1° and is stated as good to 0.2°. The eye finds a
// pointer between two lines to half their distance, of degrees (0.5/√3), and two marks to half
// of what they are seen to meet by; a display needs no eye, but the gauge is set on anew. None
// has a longest reading, as full turns are counted.
var AngleInstruments = []Instrument{
	{ID: "protractor", Resolution: 1, Eye: 0.3, Usual: 0.5},
	{ID: "rim", Resolution: 0.5, Eye: 0.15, Usual: 0.5},
	{ID: "gauge-0.1", Resolution: 0.1, Eye: 0.05, Usual: 0.2},
}
