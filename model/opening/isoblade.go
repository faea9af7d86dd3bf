package opening

// bladeRows are the operating times of the plug-in fuses of road vehicles.
var bladeRows = []row{
	carries,
	{times: 1.1, least: 100 * hour, recalled: true},
	{times: 1.35, least: 0.75, most: 600, recalled: true},
	{times: 1.6, least: 0.25, most: 50, recalled: true},
	{times: 2, least: 0.15, most: 5, recalled: true},
	{times: 3.5, least: 0.04, most: 0.5, recalled: true},
	{times: 6, least: 0.02, most: 0.1, recalled: true},
}

// isoBlade is the blade fuse of ISO 8820-3.
var isoBlade = Gates{
	Name: "iso-8820-3", Title: "blade fuse", Source: "ISO 8820-3, type C", Recalled: true, greatest: 100, rows: bladeRows,
}

// saeBlade is the blade fuse of SAE J1284, whose rows are the same.
var saeBlade = Gates{
	Name: "sae-j1284", Title: "SAE blade fuse", Source: "SAE J1284", Recalled: true, greatest: 100, rows: bladeRows,
}
