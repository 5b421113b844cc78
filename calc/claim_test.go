package calc_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/calctest"
	"striderule/calc/form"
)

// A result is repeated with as many digits as a link carries, however many it came with.
func TestClaimsAreRepeatedShort(t *testing.T) {
	says := func(saw string) string {
		check, says := calctest.Load(t, "measure", heron+"&saw="+saw).Check()
		require.Equal(t, form.Differs, check)
		return says
	}
	assert.Equal(t, "Differs: the link said 566.1234568; these entries give 564.3356643.", says("steps:566.12345678901:2.81"))
	assert.Equal(t, "Differs: the link said ± 1.23; these entries give ± 2.81.", says("steps:564.3356643:1.23456"))
	assert.Equal(t, "Differs: the link said az09- 1; these entries give steps 564.3356643. The link was made by edition az09- of the calculations; this is edition "+form.Edition+".", says("az09-:1::az09-"))
	for _, strange := range []string{"`", "{", "/", ":", "A"} {
		f := calctest.Load(t, "measure", heron+"&saw=a"+strange+"z:1")
		check, _ := f.Check()
		assert.Equal(t, form.Unclaimed, check, strange)
	}
}

func TestClaimsHaveALength(t *testing.T) {
	const start = "steps:564.3356643:2.81:"
	longest := start + strings.Repeat("a", 80-len(start))
	check, says := calctest.Load(t, "measure", heron+"&saw="+longest).Check()
	assert.Equal(t, form.Same, check, says)
	check, _ = calctest.Load(t, "measure", heron+"&saw="+longest+"a").Check()
	assert.Equal(t, form.Unclaimed, check)
}
