package opening

// All lists the families of gates, fuses first, by standard. A new family is a file with
// its data and a line here.
func All() []Gates {
	return []Gates{
		iec60269GG, iec60269GPV, iec60269AR, iec60127Fast,
		ul24814, ulSmall, ulSmallSlow, ulClassC, ulClassK, ulClassKDelay, ulClassT, ulBranch,
		isoBlade, saeBlade, isoStrip,
		iec60898B, iec60898C, iec60898D, iec60898DCB, iec60898DCC, iec60947,
	}
}
