package strictyaml

// Limits bound what [Decode] accepts, so that a hostile file costs little time and
// memory. A zero field stands for the default.
type Limits struct {
	Bytes    int // size of the file; default 2 MiB
	Depth    int // nesting of mappings and lists; default 32
	Nodes    int // keys, values and lists together; default 100,000
	Keys     int // keys of one mapping; default 6,000
	Text     int // bytes of one text; default 4 KiB
	Problems int // problems reported; default 200
}

// maxKey is the longest key in bytes: with every byte escaped it stays below the
// 1,024 characters that YAML 1.2.2, section 7.4.2, allows a key on one line.
const maxKey = 200

func (l Limits) orDefaults() Limits {
	fill := func(v *int, to int) {
		if *v == 0 {
			*v = to
		}
	}
	fill(&l.Bytes, 2<<20)
	fill(&l.Depth, 32)
	fill(&l.Nodes, 100_000)
	fill(&l.Keys, 6_000)
	fill(&l.Text, 4<<10)
	fill(&l.Problems, 200)
	return l
}
