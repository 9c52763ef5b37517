package calc

import (
	"slices"
	"strings"

	"example.com/pourwell/internal/quantity"
)

// otherWords lists words that people use for one thing; a flag, a key of a file
// or a column goes by one of them.
var otherWords = [...]string{
	"gauge regulator pressure psi bar rating set",
	"fg gravity final-gravity",
	"og original-gravity",
	"abv alcohol strength",
	"co2 carbonation volumes content vol",
	"from arrives inlet temp temperature beer-temp start",
	"to serve_at target at reach serving-temp",
	"air ambient outside air-temp weather",
	"for hours duration time long",
	"keg vessel size capacity",
	"glass size glasses",
	"glasses pours servings",
	"tube tubes line run hose length",
	"full fill filled level",
	"ua box_ua",
	"guests people count heads",
	"elevation altitude height",
	"station-pressure barometer",
	"tub box chest cooler bath",
	"chiller coil plate",
	"ice available",
	"kegs count number",
	"every interval pause",
	"flow rate speed",
	"rise lift height",
	"weight mass scale",
}

// Meant returns which of the known words was probably meant by word: another
// word for the same thing, else the nearest in its letters, itself or by way of
// another word, else one that begins alike; "" if there is none.
func Meant(word string, known []string) string {
	word = strings.ToLower(word)
	if same, isWord := sameThing(word, known); isWord {
		return same
	}
	if near := quantity.Nearest(word, known); near != "" {
		return near
	}
	if other := quantity.Nearest(word, strings.Fields(strings.Join(otherWords[:], " "))); other != "" {
		same, _ := sameThing(other, known)
		return same
	}
	for _, k := range known {
		if len(k) > 2 && strings.HasPrefix(word, k) || len(word) > 2 && strings.HasPrefix(k, word) {
			return k
		}
	}
	return ""
}

// sameThing returns the first of the known words that is used for what word is
// used for, "" if none is; isWord tells whether word is one of otherWords.
func sameThing(word string, known []string) (same string, isWord bool) {
	for _, group := range otherWords {
		words := strings.Fields(group)
		if !slices.ContainsFunc(words, func(w string) bool { return alike(w, word) }) {
			continue
		}
		isWord = true
		for _, w := range words {
			if at := slices.IndexFunc(known, func(k string) bool { return alike(k, w) }); at >= 0 {
				return known[at], true
			}
		}
	}
	return "", isWord
}

// Suggest asks whether the known word was meant that [Meant] finds; "" if it
// finds none.
func Suggest(word string, known []string) string {
	if meant := Meant(word, known); meant != "" {
		return "did you mean " + meant + "?"
	}
	return ""
}

// alike compares words without regard to dash or underline.
func alike(a, b string) bool {
	return strings.ReplaceAll(a, "_", "-") == strings.ReplaceAll(b, "_", "-")
}
