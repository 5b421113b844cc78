package machine_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	_ "striderule/calc/calctest/cases"
	"striderule/calc/form"
	"striderule/calc/machine"
)

const heron = "v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05&angle=1.8&micro=16&gears=pairs&driving=12&driven=54&line=M92%20E%7Bvalue%7D&machine=Heron&axisname=extruder&id=k3x9&set=2026-11-29"

func read(t *testing.T, text string) machine.Axis {
	t.Helper()
	a, ok := machine.Read(text)
	require.True(t, ok, text)
	return a
}

// An axis is a sheet without readings, and stays what it is through its own link.
func TestAxisOfASheet(t *testing.T) {
	f := calctest.Load(t, "measure", strings.NewReplacer("&angle", "&rest=28.7,28.9&aside=,yes&restagain=25&angle", "M92", "M999").Replace(heron))
	a, ok := machine.Of(f)
	require.True(t, ok)
	assert.NotContains(t, a.Fragment(), "line", "nobody has accepted what came with a link")
	a = read(t, heron)
	assert.Equal(t, heron, a.Fragment())
	assert.Equal(t, "Heron extruder", a.Title())
	assert.Equal(t, "538.0 steps/mm", a.Shown())
	assert.Equal(t, "1.8° motor, 16 microsteps, 12 teeth on the motor, 54 driven, 80 mm commanded, mark at 105 mm", a.Brief())
	assert.Equal(t, "2000 steps/in", a.WithSetting("steps", "2000 steps/in", "").Shown())
	assert.Equal(t, form.Current{Key: "steps", Text: "538.0", Shown: "538.0 steps/mm", Date: "2026-11-29"}, a.Current())
	for _, not := range []string{"", "v=1&machine=Heron", "v=1&steps=538.0", "v=1&steps=&machine=Heron", "%%%", "steps=80&steps=90", "v=2&steps=80&machine=Heron", "steps=80&machine=Heron"} {
		_, ok := machine.Read(not)
		assert.False(t, ok, not)
	}
}

func TestAxisWithAnotherSetting(t *testing.T) {
	a := read(t, heron).WithSetting("steps", "564.3", "2026-12-01")
	assert.Equal(t, strings.NewReplacer("538.0", "564.3", "2026-11-29", "2026-12-01").Replace(heron), a.Fragment())
	a = a.WithSetting("turn", "5.67", "2026-12-02")
	key, text := a.Setting()
	assert.Equal(t, []string{"turn", "5.67"}, []string{key, text}, "the controller stores it the other way now")
	assert.NotContains(t, a.Fragment(), "steps")
}

// A swap brings the parts up to date with the setting.
func TestAxisAfterASwap(t *testing.T) {
	f := calctest.Load(t, "swap", "v=1&changed=angle,gears")
	a := read(t, heron)
	a.Into(f)
	f.Set("anglenew", 0, "0.9")
	f.Set("gearsnew", 0, "ratio")
	f.Set("rationew", 0, "3")
	require.Equal(t, "717.3333", f.Report().Set)
	a = a.Swapped(f).WithSetting(f.Report().SetKey, f.Report().Set, "2026-12-01")
	assert.Equal(t, strings.NewReplacer("steps=538.0", "steps=717.3333", "angle=1.8", "angle=0.9", "gears=pairs&driving=12&driven=54", "gears=ratio&ratio=3", "2026-11-29", "2026-12-01").Replace(heron), a.Fragment())
	assert.Equal(t, a, a.Swapped(calctest.Load(t, "measure", "v=1&angle=7")), "another page swaps nothing")
}

func TestIsAxis(t *testing.T) {
	assert.True(t, machine.IsAxis(heron))
	for _, other := range []string{"", "v=1", "v=1&steps=538.0", heron + "&rest=28.7", strings.Replace(heron, "v=1", "v=2", 1)} {
		assert.False(t, machine.IsAxis(other), other)
	}
}

// One tap fills in what a page can use.
func TestAxisIntoEachPage(t *testing.T) {
	plover := read(t, "v=1&axis=travel&as=turn&turn=36&angle=1.8&micro=16&machine=Plover&axisname=X")
	for _, c := range []struct{ slug, before, heron, plover string }{
		{"measure", "v=1&steps=1&rest=28.7,28.9", strings.NewReplacer("&tool", "&rest=28.7,28.9&tool", "538.0", "1").Replace(heron), "v=1&axis=travel&as=turn&turn=36&angle=1.8&micro=16&machine=Plover&axisname=X"},
		{"plan", "v=1&wanted=0.3", "v=1&wanted=0.3&tool=caliper-0.05&asked=80&steps=538.0&angle=1.8&micro=16&gears=pairs&driving=12&driven=54&machine=Heron&axisname=extruder&id=k3x9&set=2026-11-29", "v=1&axis=travel&wanted=0.3&as=turn&turn=36&angle=1.8&micro=16&machine=Plover&axisname=X"},
		{"convert", "v=1&name=Other&steps=10", "v=1&name=Other,Heron%20extruder&steps=10,538.0&angle=,1.8&micro=,16&ratio=,54:12", "v=1&name=Other,Plover%20X&as=,turn&steps=10&turn=,36&angle=,1.8&micro=,16"},
		{"rate", "", "v=1&name=Heron%20extruder&moves=feed&steps=538.0&angle=1.8&micro=16", "v=1&name=Plover%20X&as=turn&turn=36&angle=1.8&micro=16"},
		{"parts", "", "v=1&name=Heron%20extruder&angle=1.8&micro=16&gears=pairs&driving=12&driven=54", "v=1&name=Plover%20X&angle=1.8&micro=16"},
		{"swap", "v=1&changed=angle&anglenew=0.9", "v=1&changed=angle&moves=feed&steps=538.0&angle=1.8&anglenew=0.9&microkept=16&gearskept=pairs&drivingkept=12&drivenkept=54&machine=Heron&axisname=extruder&id=k3x9&set=2026-11-29", "v=1&changed=angle&as=turn&turn=36&angle=1.8&anglenew=0.9&microkept=16&machine=Plover&axisname=X"},
		{"flow", "v=1&flow=1.05", "v=1&flow=1.05&tool=caliper-0.05&machine=Heron&axisname=extruder&id=k3x9", "v=1&flow=1.05&machine=Plover&axisname=X"},
	} {
		t.Run(c.slug, func(t *testing.T) {
			f := calctest.Load(t, c.slug, c.before)
			undo := read(t, heron).Into(f)
			assert.Equal(t, c.heron, f.Fragment())
			f.Put(undo)
			assert.Equal(t, calctest.Load(t, c.slug, c.before).Fragment(), f.Fragment())
			plover.Into(f)
			assert.Equal(t, c.plover, f.Fragment())
			plover.Into(f)
			assert.Equal(t, c.plover, f.Fragment(), "twice is once")
		})
	}
}

// Readings stay with the test that they are from.
func TestAxisBesideReadings(t *testing.T) {
	f := calctest.Load(t, "measure", "v=1&steps=80&asked=100&mark=120&rest=25,25.1&tool=caliper-0.02&angle=0.9")
	read(t, heron).Into(f)
	assert.Equal(t, "v=1&steps=80&asked=100&mark=120&rest=25,25.1&tool=caliper-0.02&angle=1.8&micro=16&gears=pairs&driving=12&driven=54&line=M92%20E%7Bvalue%7D&machine=Heron&axisname=extruder&id=k3x9&set=2026-11-29", f.Fragment())
	f.SetCurrent(read(t, heron).Current())
	assert.True(t, f.IsSettingAsked(), "which of the two they were made with")

	// What was set by these readings is no reason to correct it once more.
	f = calctest.Load(t, "measure", "v=1&steps=415&asked=100&mark=120&rest=21.3,21.5,21.2&tool=caliper-0.05")
	set := read(t, "v=1&steps=420.6&asked=100&mark=120&tool=caliper-0.05&machine=Bench&id=b1&set=2026-12-01")
	require.Equal(t, "420.6", f.Report().Set)
	set.Into(f)
	f.SetCurrent(set.Current())
	require.NotNil(t, f.Report().Answer)
	assert.Equal(t, "415", f.Text("steps", 0))
	assert.Equal(t, "420.6", f.Report().Set)

	// Without a setting the sheet takes the machine's; so does one of another sort of axis.
	f = calctest.Load(t, "measure", "v=1&asked=80&mark=105&rest=25,25.1")
	read(t, heron).Into(f)
	assert.Equal(t, "538.0", f.Text("steps", 0))
	f = calctest.Load(t, "measure", "v=1&axis=travel&steps=80&asked=80&moved=79.8")
	read(t, heron).Into(f)
	assert.Equal(t, "538.0", f.Text("steps", 0))
}

// What a sheet says of its axis is kept with what was set.
func TestAxisIsUpdated(t *testing.T) {
	a := read(t, "v=1&steps=538.0&angle=1.8&machine=Heron&id=k3x9&set=2026-11-29")
	f := calctest.Load(t, "measure", "v=1&steps=500&asked=80&rest=28&tool=caliper-0.05&micro=16&machine=Other&id=b&set=2020-01-01")
	want := "v=1&steps=500&asked=80&tool=caliper-0.05&angle=1.8&micro=16&machine=Heron&id=k3x9&set=2026-11-29"
	assert.Equal(t, want, a.Updated(f).Fragment(), "its names are its own, whatever a link has")
	f.SetMachine(a)
	assert.Equal(t, want, a.Updated(f).Fragment())
}

// A club's list goes through a link; what does not fit is said.
func TestAxesThroughALink(t *testing.T) {
	axes := []machine.Axis{read(t, heron), read(t, "v=1&axis=travel&steps=88.9&machine=Plover&axisname=X"), read(t, "v=1&axis=rotary&stepsdeg=80&gears=pairs&driving=20,18&driven=40,36&machine=Plover&axisname=table&id=a")}
	fragment, fit := machine.Join(axes, 4000)
	assert.Equal(t, 3, fit)
	all, left := machine.Split(fragment)
	assert.Equal(t, axes, all)
	assert.Zero(t, left)
	short, fit := machine.Join(axes, len(fragment)-1)
	assert.Equal(t, 2, fit)
	some, _ := machine.Split(short)
	assert.Equal(t, axes[:2], some)
	_, fit = machine.Join(axes, 10)
	assert.Zero(t, fit)
	for fragment, names := range map[string]int{
		"": 0, "v=1&machine=,," + strings.Repeat(",", 10000): 10003, "v=1&machine=Heron,Plover&steps=415": 1,
		"v=1&machine=A" + strings.Repeat(",A", 59) + "&steps=1" + strings.Repeat(",1", 59): 10,
	} {
		all, left := machine.Split(fragment)
		assert.Equal(t, names, left, "%.40s", fragment)
		assert.LessOrEqual(t, len(all), machine.Most)
	}
}

func TestAxesThroughALinkProperty(t *testing.T) {
	word := rapid.StringMatching(`[A-Za-z0-9 ,&=%é]{1,12}`).Filter(func(s string) bool { return strings.TrimSpace(s) == s && s != "" })
	rapid.Check(t, func(t *rapid.T) {
		var axes []machine.Axis
		for range rapid.IntRange(0, 8).Draw(t, "n") {
			f := calc.NewForm(calc.Pages[0])
			f.Set("axis", 0, rapid.SampledFrom([]string{"", "travel"}).Draw(t, "axis"))
			f.Set("steps", 0, rapid.SampledFrom([]string{"80", "538.0", "1e3", "2000 steps/in"}).Draw(t, "steps"))
			f.Set("tool", 0, rapid.SampledFrom([]string{"", "caliper-0.05"}).Draw(t, "tool"))
			f.Set("gears", 0, "pairs")
			for i := range rapid.IntRange(0, 3).Draw(t, "stages") {
				f.Set("driving", i, "12")
				f.Set("driven", i, "54")
			}
			a, ok := machine.Of(f)
			if ok {
				axes = append(axes, a.With("machine", word.Draw(t, "machine"), "axisname", word.Draw(t, "axis"), "id", "x1"))
			}
		}
		fragment, fit := machine.Join(axes, 4000)
		if fit != len(axes) {
			t.Fatal("they are short")
		}
		all, left := machine.Split(fragment)
		assert.Equal(t, axes, all)
		assert.Zero(t, left)
	})
}

func FuzzSplit(f *testing.F) {
	f.Add(heron)
	f.Add("v=1&machine=a,b&steps=1,2&driving=12%2018,&driven=,")
	f.Fuzz(func(t *testing.T, fragment string) {
		axes, _ := machine.Split(fragment)
		again, fit := machine.Join(axes, 1<<20)
		if fit != len(axes) {
			t.Skip()
		}
		same, _ := machine.Split(again)
		assert.Equal(t, axes, same)
	})
}

// The setting that a sheet corrects is one that a person has seen and agreed to.
func TestWhichSettingIsAsked(t *testing.T) {
	const sheet = "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05"
	f := calctest.Load(t, "measure", sheet)
	require.NotNil(t, f.Report().Answer)
	f.SetCurrent(form.Current{Key: "steps", Text: "471.6", Shown: "471.6 steps/mm", Date: "2026-11-29"})
	assert.True(t, f.IsSettingAsked())
	assert.Nil(t, f.Report().Answer)
	assert.Equal(t, "Which setting did the machine have for this? It has had 471.6 steps/mm since 2026-11-29; this sheet says 538.0 steps/mm.", f.ProblemAt("steps", 0))
	f.Agree()
	assert.NotNil(t, f.Report().Answer)
	f.Set("rest", 0, "28.8")
	assert.NotNil(t, f.Report().Answer, "that stays agreed")
	f.Set("steps", 0, "538.1")
	assert.Nil(t, f.Report().Answer, "another setting is another question")
	f.Set("steps", 0, "471.60")
	assert.NotNil(t, f.Report().Answer, "the machine's own is none")
	f.Set("as", 0, "turn")
	f.Set("turn", 0, "471.6")
	assert.True(t, f.IsSettingAsked(), "another convention is another setting")
	f.Set("turn", 0, "4x")
	assert.False(t, f.IsSettingAsked(), "what is wrong is said first")

	f = calctest.Load(t, "measure", sheet)
	f.SetCurrent(form.Current{Key: "steps", Text: f.Report().Set, Date: "2026-11-30"})
	assert.Equal(t, "564.3", f.Report().Set)
	assert.False(t, f.IsSettingAsked(), "this sheet is how the machine came to it")
	f.Set("rest", 0, "25")
	assert.True(t, f.IsSettingAsked(), "with other readings it is not")
}

// Whatever is done in whatever order, the setting that a sheet corrects is one that a person has seen
// and agreed to: the axis' own, or one that was chosen while both stood there.
func TestOnlyAgreedSettingsAreCorrected(t *testing.T) {
	const readings = "v=1&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05&machine=Heron&id=a"
	settings := []string{"", "538.0", "538", "564.3", "471.6", "1,234", "x"}
	heron, _ := machine.Read(heron)
	rapid.Check(t, func(t *rapid.T) {
		f := calc.Load(calc.Pages[0], readings)
		var current form.Current
		agreed := map[string]bool{} // sheet's text and the axis', as they stood when the person agreed
		pair := func() string {
			key, text := f.Setting()
			return key + text + "/" + current.Key + current.Text
		}
		var undo []form.Texts
		for range rapid.IntRange(1, 12).Draw(t, "acts") {
			switch rapid.IntRange(0, 7).Draw(t, "act") {
			case 0, 1:
				f.Set("steps", 0, rapid.SampledFrom(settings).Draw(t, "steps"))
			case 2:
				f.Set("as", 0, rapid.SampledFrom([]string{"", "turn"}).Draw(t, "as"))
				f.Set("turn", 0, rapid.SampledFrom([]string{"5.6704", "6"}).Draw(t, "turn"))
			case 3: // set by this device, or changed in another tab
				current = form.Current{Key: rapid.SampledFrom([]string{"steps", "turn"}).Draw(t, "key"), Text: rapid.SampledFrom([]string{"538.0", "564.3", "5.6704"}).Draw(t, "now"), Date: "2026-12-01"}
				f.SetCurrent(current)
			case 4:
				if f.IsSettingAsked() {
					agreed[pair()] = true
					f.Agree()
				}
			case 5:
				undo = append(undo, heron.Into(f))
			case 6:
				if n := len(undo); n > 0 {
					f.Put(undo[n-1])
					undo = undo[:n-1]
				}
			case 7:
				f.Set("rest", 0, rapid.SampledFrom([]string{"28.7", "25.1", ""}).Draw(t, "rest"))
			}
			r := f.Report()
			if r.Answer == nil || current.Text == "" {
				continue
			}
			key, text := f.Setting()
			same := key == current.Key && strings.TrimSuffix(text, ".0") == strings.TrimSuffix(current.Text, ".0")
			made := r.SetKey == current.Key && r.Set == current.Text
			if !same && !made && !agreed[pair()] {
				t.Fatalf("%s %s is corrected, and the axis has %v", key, text, current)
			}
		}
	})
}
