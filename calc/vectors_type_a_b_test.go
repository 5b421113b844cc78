package calc_test

import (
	"math"

	"striderule/calc/measure"
)

// repeatedOf reads a series with its instrument; the names begin with prefix,
// of a single series with nothing.
func repeatedOf(in facts, prefix string) (measure.Repeated, error) {
	var r measure.Repeated
	readings, err := in.floats(prefix + "readings")
	if err != nil {
		return r, err
	}
	r.Readings = readings
	r.With.Resolution, _ = in.float(prefix + "resolution_d")
	r.With.Accuracy, _ = in.float(prefix + "instrument_halfwidth_a")
	r.With.CertificateU, _ = in.float(prefix + "certificate_U")
	r.With.CertificateK, _ = in.float(prefix + "certificate_k")
	return r, nil
}

// componentKeys are what the set calls the components.
var componentKeys = map[string]string{
	measure.Scatter: "u_typeA", measure.Resolution: "u_resolution",
	measure.Accuracy: "u_instrument", measure.Certificate: "u_certificate",
}

// expandedOf adds effective degrees of freedom, k and U of an estimate.
func expandedOf(got map[string]any, e measure.Estimate) {
	got["veff"], got["k95"] = e.Dof, e.K()
	if !math.IsInf(e.Dof, 1) {
		got["veff_truncated"] = math.Floor(e.Dof)
		got["k95_truncated"], got["U95_truncated"] = e.KTruncated(), e.KTruncated()*e.U
	}
}

// singleCase is a length that was read several times with one instrument.
func singleCase(c vectorCase) (map[string]any, error) {
	in := inputsOf(c)
	r, err := repeatedOf(in, "")
	if err != nil {
		return nil, err
	}
	m, err := r.Measure()
	if err != nil {
		return nil, err
	}
	e := m.Estimate()
	got := map[string]any{"n": len(m.Runs), "mean": m.Length, "u_combined": e.U, "U95": e.Expanded()}
	if len(m.Runs) > 1 {
		got["s"] = m.Scatter
	} else {
		got["uncertainty_available"] = false // none that readings would show
	}
	for _, part := range m.Budget {
		if part.U > 0 || part.ID == measure.Scatter {
			got[componentKeys[part.ID]] = part.U
		}
	}
	expandedOf(got, e)
	return got, in.leftOver()
}

// meanCase is plain numbers, of any sign, and no instrument.
func meanCase(c vectorCase) (map[string]any, error) {
	in := inputsOf(c)
	readings, err := in.floats("readings")
	if err != nil {
		return nil, err
	}
	s := measure.Series(readings)
	if err := s.Check(); err != nil {
		return nil, err
	}
	got := map[string]any{"n": len(s), "mean": s.Mean()}
	if spread, ok := s.Spread(); ok {
		got["s"], got["s_mean"] = spread, spread/math.Sqrt(float64(len(s)))
	} else {
		got["uncertainty_available"] = false
	}
	return got, in.leftOver()
}

// welchCase combines components that are given.
func welchCase(c vectorCase) (map[string]any, error) {
	in := inputsOf(c)
	us, err := in.floats("u_components")
	if err != nil {
		return nil, err
	}
	dofs, err := in.floats("dof_components")
	if err != nil || len(dofs) != len(us) {
		return nil, notOffered("not as many degrees of freedom as components")
	}
	if p, ok := in.float("p"); ok && p != measure.Sure {
		return nil, notOffered("another coverage than 95 %")
	}
	var b measure.Budget
	for i, u := range us {
		b = append(b, measure.Component{U: u, Dof: dofs[i]})
	}
	e := b.Estimate(0)
	got := map[string]any{"u_combined": e.U, "veff": e.Dof, "k": e.K(), "U": e.Expanded()}
	expandedOf(got, e)
	got["U95"] = e.Expanded()
	return got, in.leftOver()
}
