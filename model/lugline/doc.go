// Package lugline is the entry line of a walk: one short line says what was found on
// one stud, and reads as one wire or one remark.
//
// The walk stands on a stud, so a line only says colour, gauge, where the wire goes and
// what is wrong with it:
//
//	line   = [ ditto ] { item } [ ";" note ]
//	item   = verdict | look | far | end | cond | mark | bundle
//	look   = hue | size | hue size | "??"      glued: k6, w/k18; ?? = the rest cannot be told
//	hue    = letter or colour word [ "/" letter or word ] [ "?" ]
//	size   = AWG [ "?" ] | number "m" [ "?" ] | number "awg" [ "?" ]
//	far    = [ ">" ] stud [ "?" ]              any shortening that fits one stud only
//	end    = ( "?" | "unk" | "#" | "cut" | "=" | "cap" | "%" | "none" ) [ "?" ]
//	cond   = "!" ( letters | word ) { "," ( letters | word ) }
//	mark   = "@" text        bundle = "*" text      with spaces in double quotes
//	ditto  = "'" | '"'       same look as the last entry; " also its conditions
//	verdict = "+" | "-"      an expected wire is here, or is not
//
// Hues: r red, k black, b blue, g green, y yellow, w white, o orange, n brown, v violet,
// p pink, e grey, t tan. IEC 60757 has no tan: it is recorded as brown with the note "tan".
// Conditions: l loose, c corroded, h heat mark, f frayed, b broken strands, s spliced,
// m melted, d dirty, x wrong lug. Ends: ? out of sight, # cut bare, = capped, % nothing on
// this stud. A trailing ? means judged, not proved. What is left out is not recorded: a
// line never takes silence for a fact. No end at all means that it was not looked at.
//
// When a token fits more than one thing:
//
//  1. + or - at its end, a point in it or > in front makes it a stud.
//  2. Each class fills one slot; if the slots of a look are filled, the token is a stud.
//  3. If it could be both and the slots are free, it is the look; the reading says how to
//     mean the stud.
//  4. If it fits two studs equally well, none is chosen.
//  5. A later token of a filled class wins and the earlier one is struck.
//  6. An unknown token is kept as it was written.
//
// A line without any look, end, mark or bundle speaks of the stud itself.
package lugline
