package calc_test

import (
	"strconv"
	"strings"
	"testing"

	"striderule/calc"
	"striderule/calc/link"
	"striderule/calc/word"
)

// TestAddressesAreReadTheSame holds what is read from a link into which something was put,
// at each place of it, against testdata/pages/addresses.txt. TestSheetsSayTheSame says how
// to make the file anew.
func TestAddressesAreReadTheSame(t *testing.T) {
	const fragment = "v=1&asked=80&rest=28.7,28&micro=16&line=M9%20E%7B&saw=steps:5:2:2026-11"
	const at = "https://a.example/measure/?x#" + fragment
	w := writer{}
	for _, text := range []string{" ", "\n", "\r\n  ", "\u200b", "\u00a0", "%0A", "%20", "–", "９", "…", "..", ".", ",", "<", ")", "](x", "&amp;", "µ", " & ", " &mark=3 ", "#", "/measure/#"} {
		w.line(sheetMark, "with ", strconv.Quote(text))
		w.readEach(at, fragment, func(i int) string { return at[:i] + text + at[i:] })
	}
	w.line(sheetMark, "cut short")
	w.readEach(at, fragment, func(i int) string { return at[:i] })
	w.line(sheetMark, "without what comes before")
	w.readEach(at, fragment, func(i int) string { return at[i:] })
	for _, text := range addressTexts(at) {
		w.line(sheetMark, strconv.Quote(text))
		w.line(readAs(text, fragment, 0))
	}
	for _, text := range mendTexts {
		w.line(sheetMark, "fragment ", strconv.Quote(text))
		mended, said := calc.Mend(text)
		w.line(strconv.Quote(mended), ": ", strings.Join(said, "; "), map[bool]string{true: "; looks encoded twice"}[link.EncodedTwice(text)])
	}
	keptAs(t, "testdata/pages/addresses.txt", w.text.String())
}

// readEach writes what is read from a text for each place of an address, together where
// that is the same.
func (w *writer) readEach(at, fragment string, text func(i int) string) {
	first, was := 0, ""
	for i := range len(at) + 1 {
		is := readAs(text(i), fragment, i-(len(at)-len(fragment)))
		if i > 0 && is != was {
			w.line(strconv.Itoa(first), " to ", strconv.Itoa(i-1), ": ", was)
			first = i
		}
		was = is
	}
	w.line(strconv.Itoa(first), " to ", strconv.Itoa(len(at)), ": ", was)
}

// readAs is what is read from a text, as the difference from what was sent; how far behind
// a place that begins.
func readAs(text, sent string, place int) string {
	slug, read, said, ok := calc.ReadAddress(text)
	if !ok {
		return "no link"
	}
	front := 0
	for front < min(len(sent), len(read)) && sent[front] == read[front] {
		front++
	}
	back := 0
	for back < min(len(sent), len(read))-front && sent[len(sent)-1-back] == read[len(read)-1-back] {
		back++
	}
	changed := "as sent"
	rest := sent[front : len(sent)-back]
	if read != sent {
		was := strconv.Quote(rest)
		if back == 0 && front > 0 {
			was = "the rest"
		}
		changed = "at " + strconv.Itoa(front-place) + " " + was + " is " + strconv.Quote(read[front:len(read)-back])
	}
	all := strings.Join(append([]string{slug, changed}, said...), "; ")
	if rest != "" {
		all = strings.ReplaceAll(all, behind(rest), "The rest was dropped.")
	}
	return all
}

// addressTexts are texts with a link in them, or none.
func addressTexts(at string) []string {
	texts := []string{
		"", "#", "##", "measure", "/measure", "measure/", "measure/index.html", "nowhere/#v=1", "https://a.example/plan/", "https://a.example/plan/?v#", "x#y measure#v=1",
		"See " + at + " and tell me.", "See " + at + ", 30 mm.", "See " + at + " 30 mm is what I wanted\nnot 31", "See " + at + " .5 mm", "See " + at + " -3", "See " + at + " 9", "See " + at + " 0", "See " + at + " :",
		"<" + at + ">", "[Heron](" + at + ") please", "[" + at + "](" + at + ")", "[url=" + at + "]Heron[/url]", "“" + at + "”!", "(" + at + ").", `<a href="` + strings.ReplaceAll(at, "&", "&amp;") + `">Heron</a>`,
		wide(at), at + " " + at, "no #measure here", "https://a.example/" + strings.Repeat("x", 280) + "/measure/#v=1&asked=80", strings.Repeat("measure/", 60) + "#v=1", "a\nmeas\nure/#v=1", "meas\u200bure#v=1",
		at + "&", at + "=", at + "%", at + "%2", at + " %20", at + " ,3", at + "&\nmark=3", at + "&\nnosuch=3", at + "&\n", at + "\n\n", at + " x&mark=3", at + " x&nosuch=3", at + " x&mark", at + " &nosuch=3",
		"https://out.example/?to=" + encodeAll(at), "measure/#v 1&mark=3", "See " + at + " !x", "See " + at + " -", "See " + at + " /x",
	}
	// A redirect, encoded more and more often.
	to := strings.Replace(at, "?x", "", 1) + " "
	for range 6 {
		texts = append(texts, "https://out.example/?to="+to)
		to = encodeAll(to)
	}
	return texts
}

// mendTexts are fragments that were changed, or look like it.
var mendTexts = []string{
	"v=1&name=%2520", "v=1&name=%25", "v=1&name=%252", "v=1&name=%25zz", "%2541", "%2541%41", "a%2fb%2Fc%zz%0", "v=1&a=%E2%80%8B", "v=1 & asked = 80", "v=1&asked=8 0", "v=1&name=a %20b", "v=1&name=a% 20b", "v=1&name=a%2 0b", "v=1&name=a%g 0b",
	" v=1 ", "v=1&\tasked=80", "v=1&asked\x7f=80", "v=1&asked\x1f=80", "v=1&line=a\x80b", "v=1&as%E2%80%8Bked=80", "v=%E2%80%8B1&asked=80", "v=1%0A&asked=80", "v=%EF%BC%91&asked=80", "v=%C2%A01&asked=80", "v&asked=8%E2%80%8B0",
	"v=1&amp;asked=80&amp;nosuch=3", "v=1&amp;nosuch=3", "amp;v=1", "v=1&#38;#38;asked=80", "v=1&#X26;#x26;#038;asked=80", "v=1&line=amp;", "v=1&rest=1%2C2&saw=steps%3A3", "v=1&rest=1%2C2,3&saw=steps%3A3", "v=1&rest=1%2C&saw=steps%3A3", "v=1&name=a%2Cb&saw=steps%3A3", "v=1&rest=1%2C2&saw=3",
	"v=1µ=16", "v=1&angle=1.8%c2%b5=16", "v=1&line=µ", "v=1&line=µm=3", "v=1µnosuch=3", "v=1µnew=3", "v%3D1%26asked%3D80", "v%253D1%2526asked%253D80", "v%25253D1%252526asked%25253D80", "v%2525253D1", "v=1%26asked%3D80", "%76=1",
	"v=1&line=(a)", "v=1&line=a)", "v=1&line=(a))", "v=1&line=[a]]x", "v=1&line={a}}", "v=1&line=a<b&asked=80", "v=1&line=a<b", "v=1&line=a\"", "v=1&line=a[/b", "v=1&line=a)#&asked=80", "v=1&line=a)&nosuch=80", "v=1&asked=80.", "v=1&asked=80..", "v=1&asked=80...", "v=1&asked=80…", "v=1&asked=80,…", "v=1&asked=80…,", "v=1&asked=80)…",
	"v=1&asked=80,", "v=1&nosuch=80,", "v=1&nosuch=80.", "v=1&asked=80&quot;", "v=1&asked=80&gt;&nbsp;.", "v=1&asked=80»!", "v=1&saw=steps:3..", "v=1&saw=steps:3%29", "v=1&saw=%29", "v=1&saw=", "v=1&saw=steps:3%29&asked=80", "v=1&asked=…", "…", "...", ".", "v=1&line=" + strings.Repeat(")x", 50) + "&asked=80", "v=1&line=" + strings.Repeat(")x", 49) + "&asked=80",
	"v x=1", "v=1&name=a%0 9b", "v=1&name=a%f 9b", "v=1&asked%7F=80", "v=1&asked%80=80", "v=1&line=((a))", "v=1&line=[[a]]", "v=1&line={{a}}", "v=1&asked=80\"" + strings.Repeat("a", 39), "v=1&asked=80\"" + strings.Repeat("a", 40),
	"v=1&line=" + strings.Repeat(")x", 49) + "&asked=80<b", "v=1&line=" + strings.Repeat(")x", 50) + "&asked=80<b",
	"v=1&asked=80 that is all that there is to say about this", "v=1&asked=80\"that is all that there is to say about this",
}

// behind is what is said of a text that was dropped.
func behind(text string) string {
	runes := []rune(word.OneLine(strings.TrimSpace(text)))
	if len(runes) > 40 {
		return "“" + string(runes[:40]) + "…” after the link was dropped."
	}
	return "“" + string(runes) + "” after the link was dropped."
}
