package drive_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

func TestDrivetrain(t *testing.T) {
	check := func(d drive.Drivetrain, steps, perMotorTurn, perFullStep, perMicrostep float64) {
		t.Helper()
		assert.NoError(t, d.Check())
		assert.InEpsilon(t, steps, d.Steps(), 1e-15)
		assert.InEpsilon(t, perMotorTurn, d.PerMotorTurn(), 1e-15)
		assert.InEpsilon(t, perFullStep, d.PerFullStep(), 1e-15)
		assert.InEpsilon(t, perMicrostep, d.PerMicrostep(), 1e-15)
	}
	m := drive.Motor{StepAngle: 1.8, Microsteps: 16}
	check(drive.Drivetrain{m, nil, drive.Belt{2, 20}}, 80, 40, 0.2, 0.0125)
	check(drive.Drivetrain{m, nil, drive.Screw{Pitch: 2, Starts: 4}}, 400, 8, 0.04, 0.0025)
	check(drive.Drivetrain{m, nil, drive.Rack{1, 20}}, 160/math.Pi, 20*math.Pi, math.Pi/10, math.Pi/160)
	check(drive.Drivetrain{m, drive.Stages{{10, 30}}, drive.Roller{7.3}}, 9600/(7.3*math.Pi), 7.3*math.Pi/3, 7.3*math.Pi/600, 7.3*math.Pi/9600)
	// a rotary table on a worm of one start and a wheel of 90 teeth: 4° a motor turn
	check(drive.Drivetrain{m, drive.Stages{{1, 90}}, drive.Rotary{}}, 800, 4, 0.02, 0.00125)
	check(drive.Drivetrain{m, drive.Stages{{16, 46}, {20, 36}}, drive.Belt{2, 16}}, 100*46*36/(16*20.), 32*16*20/(46*36.), 0.16*16*20/(46*36.), 0.01*16*20/(46*36.))
}

func TestFullSteps(t *testing.T) {
	check := func(angle unit.Angle, want float64) {
		t.Helper()
		m := drive.Motor{StepAngle: angle, Microsteps: 3}
		assert.Equal(t, want, m.FullSteps())
		assert.Equal(t, 3*want, m.Pulses())
	}
	check(1.8, 200)
	check(0.9, 400)
	check(0.72, 500)
	check(0.36, 1000)
	check(3.75, 96)
	check(7.5, 48)
	check(15, 24)
	check(360/20.4, 20.4) // an odd one keeps its fraction
	check(360./7, 7)
	check(51.42857143, 7) // as many digits as people type: a whole number is meant
	coarse := 1.7         // 211.76: not so few digits
	check(unit.Angle(coarse), 360/coarse)
	coarse = 1.714 // 210.035, near a whole number and still not one
	check(unit.Angle(coarse), 360/coarse)
}

func TestOutputs(t *testing.T) {
	check := func(o drive.Output, name string, angular bool, perTurn float64) {
		t.Helper()
		assert.Equal(t, name, o.Name())
		assert.Equal(t, angular, o.Angular())
		assert.InEpsilon(t, perTurn, drive.PerTurn(o), 1e-15)
	}
	check(drive.Belt{2.032, 18}, "belt", false, 36.576) // inch pitch: 0.080 in
	check(drive.Screw{Pitch: 3, Starts: 2}, "screw", false, 6)
	check(drive.Rack{0.8, 15}, "rack", false, 12*math.Pi)
	check(drive.Roller{11}, "roller", false, 11*math.Pi)
	check(drive.Rotary{}, "rotary", true, 360)
	assert.InEpsilon(t, 8.5, float64(drive.EffectiveDiameter(8.5*math.Pi)), 1e-15)
	assert.InEpsilon(t, 18, drive.PulleyTeeth(drive.PerTurn(drive.Belt{2.032, 18}), 2.032), 1e-15)
	assert.InEpsilon(t, 15, drive.PinionTeeth(drive.PerTurn(drive.Rack{0.8, 15}), 0.8), 1e-15)
	assert.Equal(t, unit.Length(8), drive.Screw{Pitch: 2, Starts: 4}.Lead())
}

// What Check has to refuse: zero, negative, not a number, infinite.
var noSize = []float64{0, -1, math.Copysign(0, -1), math.NaN(), math.Inf(1), math.Inf(-1)}

func TestCheckRefuses(t *testing.T) {
	good := drive.Drivetrain{drive.Motor{1.8, 16}, drive.Stages{{12, 54}}, drive.Roller{8.5}}
	assert.NoError(t, good.Check())
	refuse := func(d drive.Drivetrain, want error) {
		t.Helper()
		err := d.Check()
		assert.ErrorIs(t, err, want)
		for _, other := range []error{drive.ErrMotor, drive.ErrStage, drive.ErrOutput, drive.ErrNoOutput, drive.ErrExtreme} {
			assert.Equal(t, other == want, errors.Is(err, other), "%v", err)
		}
	}
	with := func(change func(*drive.Drivetrain)) drive.Drivetrain {
		d := good
		change(&d)
		return d
	}
	for _, bad := range noSize {
		l := unit.Length(bad)
		refuse(with(func(d *drive.Drivetrain) { d.Motor.StepAngle = unit.Angle(bad) }), drive.ErrMotor)
		refuse(with(func(d *drive.Drivetrain) { d.Output = drive.Belt{l, 20} }), drive.ErrOutput)
		refuse(with(func(d *drive.Drivetrain) { d.Output = drive.Screw{Pitch: l, Starts: 4} }), drive.ErrOutput)
		refuse(with(func(d *drive.Drivetrain) { d.Output = drive.Rack{l, 20} }), drive.ErrOutput)
		refuse(with(func(d *drive.Drivetrain) { d.Output = drive.Roller{l} }), drive.ErrOutput)
	}
	for _, bad := range []unit.Count{0, -1} {
		refuse(with(func(d *drive.Drivetrain) { d.Motor.Microsteps = bad }), drive.ErrMotor)
		refuse(with(func(d *drive.Drivetrain) { d.Stages = drive.Stages{{12, 54}, {bad, 54}} }), drive.ErrStage)
		refuse(with(func(d *drive.Drivetrain) { d.Stages = drive.Stages{{12, bad}} }), drive.ErrStage)
		refuse(with(func(d *drive.Drivetrain) { d.Output = drive.Belt{2, bad} }), drive.ErrOutput)
		refuse(with(func(d *drive.Drivetrain) { d.Output = drive.Screw{Pitch: 2, Starts: bad} }), drive.ErrOutput)
		refuse(with(func(d *drive.Drivetrain) { d.Output = drive.Rack{1, bad} }), drive.ErrOutput)
	}
	refuse(with(func(d *drive.Drivetrain) { d.Output = nil }), drive.ErrNoOutput)
	refuse(with(func(d *drive.Drivetrain) { d.Motor.StepAngle = 5e-324 }), drive.ErrMotor) // infinitely many steps
	// each part can be, but steps per mm would be infinite
	refuse(with(func(d *drive.Drivetrain) { d.Output = drive.Roller{5e-324} }), drive.ErrExtreme)
	refuse(with(func(d *drive.Drivetrain) { d.Output = drive.Belt{math.MaxFloat64, 20} }), drive.ErrExtreme)

	all := drive.Drivetrain{Output: drive.Belt{}, Stages: drive.Stages{{}}}.Check()
	assert.ErrorIs(t, all, drive.ErrMotor, "all faults are told at once")
	assert.ErrorIs(t, all, drive.ErrStage)
	assert.ErrorIs(t, all, drive.ErrOutput)
}

// The demonstration machine: teeth 12 on the motor side, 54 on the driven one,
// 538.0 steps/mm, 80 mm commanded, marked at 105 mm, three runs.
func ExampleSetting_In() {
	motor := drive.Motor{StepAngle: 1.8, Microsteps: 16}
	gears := drive.Stages{{Driving: 12, Driven: 54}}
	now := drive.Setting{Convention: drive.StepsPerUnit, Value: 538}
	fed := ((105 - 28.7) + (105 - 28.9) + (105 - 28.6)) / 3
	next := now.Corrected(80 / fed)
	for _, c := range drive.Conventions {
		fmt.Println(unit.Trim(now.In(c, motor, gears).Value, 6), "→", unit.Trim(next.In(c, motor, gears).Value, 10))
	}
	fmt.Println(unit.Trim(float64(drive.EffectiveDiameter(next.In(drive.TravelPerOutputTurn, motor, gears).Value)), 3))
	// Output:
	// 538 → 564.3356643
	// 5.94796 → 5.670384139
	// 26.7658 → 25.51672862
	// 8.12
}
