package opening

// iec60269AR is the fuse for semiconductors of IEC 60269-4 that breaks short circuits
// alone. The standard has no gates for it.
var iec60269AR = Gates{
	Name: "iec-60269-ar", Title: "aR fuse", Source: "IEC 60269-4, aR", Recalled: true,
	Caution:          "opens only from the least breaking current that its maker states: pair it with a device that opens on overload",
	ShortCircuitOnly: true,
	rows:             []row{carries},
}
