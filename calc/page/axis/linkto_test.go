package axis_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/report"
)

// handedTo returns the forms that the links of a report to a page open.
func handedTo(t *testing.T, r report.Report, slug string) []*form.Form {
	t.Helper()
	var forms []*form.Form
	for _, part := range r.Parts {
		for _, b := range part.Blocks {
			all, _ := b.(report.Links)
			for _, l := range all.All {
				if l.Slug == slug {
					forms = append(forms, calctest.Load(t, slug, l.Fragment))
				}
			}
		}
	}
	return forms
}

// Where more is to be measured, a drivetrain is typed once: the page that plans the next test gets its gears, stage
// by stage, and its motor.
func TestDrivetrainIsHandedOver(t *testing.T) {
	f := calctest.Load(t, "measure", "v=1&steps=538.0&asked=80&mark=105&rest=25.4,26.1,24.6&angle=1.8&micro=16&gears=pairs&driving=12,20&driven=54,50")
	require.Empty(t, f.Problems())
	plans := handedTo(t, f.Report(), "plan")
	require.NotEmpty(t, plans)
	for _, plan := range plans {
		assert.Equal(t, "pairs", plan.Text("gears", 0))
		for row, want := range [][2]string{{"12", "54"}, {"20", "50"}} {
			assert.Equal(t, want[0], plan.Text("driving", row))
			assert.Equal(t, want[1], plan.Text("driven", row))
		}
		assert.Equal(t, "16", plan.Text("micro", 0))
		assert.Equal(t, "538", plan.Text("steps", 0))
	}
}
