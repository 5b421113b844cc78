package pages

import (
	"testing"

	"striderule/scripts/prove/browser"
)

func TestMain(m *testing.M) { browser.Main(m) }
