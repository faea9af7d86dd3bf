package opening

// isoStrip is the bolted strip fuse of ISO 8820-5, 30 to 500 A.
var isoStrip = Gates{
	Name: "iso-8820-5", Title: "bolted strip fuse", Source: "ISO 8820-5", Recalled: true, greatest: 500,
	rows: []row{
		carries,
		{times: 1.35, least: 120, most: 1800, recalled: true},
		{times: 2, least: 1, most: 15, recalled: true},
		{times: 3.5, least: 0.3, most: 5, recalled: true},
		{times: 6, least: 0.1, most: 1, recalled: true},
	},
}
