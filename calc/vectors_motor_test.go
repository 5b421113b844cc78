package calc_test

import (
	"encoding/json"
	"errors"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

func pulseRateCase(c vectorCase) (map[string]any, error) {
	f := inputsOf(c)
	speed, hasSpeed, err1 := number(f, unit.Speeds, "mm/s", "speed")
	steps, hasSteps, err2 := number(f, unit.StepsPerLengths, "steps/mm", "steps_per_mm")
	limit, hasLimit, err3 := number(f, unit.PulseRates, "pulses/s", "pulse_limit")
	if err := errors.Join(err1, err2, err3, f.leftOver()); err != nil {
		return nil, err
	}
	if !hasSpeed || !hasSteps || !hasLimit {
		return nil, notOffered("the case does not name speed, steps per mm and a limit")
	}
	rate, top := drive.PulseRate(float64(speed), float64(steps)), drive.TopSpeed(limit, float64(steps))
	return map[string]any{"pulse_rate": float64(rate), "max_speed": top, "speed_is_possible": rate <= limit}, nil
}

func microstepTorqueCase(c vectorCase) (map[string]any, error) {
	f := inputsOf(c)
	q, ok := f.take("microsteps")
	if err := f.leftOver(); err != nil {
		return nil, err
	}
	var microsteps []unit.Count
	if !ok || json.Unmarshal(q.raw(), &microsteps) != nil {
		return nil, notOffered("no list of microsteps")
	}
	var shares []any
	for _, m := range microsteps {
		shares = append(shares, drive.IncrementalTorque(m))
	}
	return map[string]any{"incremental_torque_fraction": shares}, nil
}

func cornerCase(c vectorCase) (map[string]any, error) {
	f := inputsOf(c)
	supply, hasSupply, err1 := number(f, unit.Voltages, "V", "supply_voltage")
	inductance, hasInductance, err2 := number(f, unit.Inductances, "mH", "phase_inductance")
	current, hasCurrent, err3 := number(f, unit.Currents, "A", "phase_current")
	full, hasFull, err4 := number(f, unit.Ratios, "", "full_steps_per_rev")
	steps, hasSteps, err5 := number(f, unit.StepsPerLengths, "steps/mm", "steps_per_mm")
	micro, hasMicro, err6 := number(f, unit.Microsteps, "", "microsteps")
	resistance, _, err7 := number(f, unit.Resistances, "Ω", "phase_resistance", "winding_resistance")
	if err := errors.Join(err1, err2, err3, err4, err5, err6, err7, f.leftOver()); err != nil {
		return nil, err
	}
	if !hasSupply || !hasInductance || !hasCurrent || !hasFull || hasSteps != hasMicro {
		return nil, notOffered("the case does not name supply, inductance, current and full steps")
	}
	corner, ok := drive.CornerOf(supply, drive.Winding{Inductance: inductance, Resistance: resistance}, current, float64(full))
	if !ok {
		return nil, errors.New("the supply does not drive the current")
	}
	got := map[string]any{
		"time_per_full_step": float64(corner.PerFullStep) * 1000, "full_step_rate": corner.FullSteps,
		"corner_speed": corner.Turns, "corner_rpm": corner.Turns * unit.Minute,
	}
	if hasSteps {
		got["corner_linear_speed"] = drive.TopSpeed(unit.PulseRate(corner.FullSteps*float64(micro)), float64(steps))
	}
	return got, nil
}
