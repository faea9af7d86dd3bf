package rule_test

// oldSense is the sense lead of a charge computer that is gone, still on the socket and fused
// to nothing.
const oldSense = "part rec receptacle\npart fus fuse-inline-80v fuse-rating=3A\nwire y1 rec.sense fus.in gauge=16AWG\n" +
	"wire y2 rec.- nb.4 gauge=10AWG insulation=105C length=1m\nwire y3 rec.+ fu2.in gauge=10AWG insulation=105C length=1m"

var endsBad = []example{
	{rule: "dead-end-lead", name: "live, on the plan", text: edited(lithium, "+", "part fu9 fuse-inline-80v fuse-rating=3A\nwire x1 key.IGN fu9.in gauge=16AWG insulation=105C\nsheet plan")},
	{rule: "dead-end-lead", name: "live, as found", text: edited(lithium, "+", "part fu9 fuse-inline-80v fuse-rating=3A\nwire x1 key.IGN fu9.in gauge=16AWG insulation=105C")},
	{rule: "dead-end-lead", name: "through a fuse and a switch", text: edited(lithium, "+", "part fu9 fuse-inline-80v fuse-rating=3A\npart sw switch\nwire x1 key.IGN fu9.in gauge=16AWG insulation=105C\nwire x2 fu9.out sw.IN gauge=16AWG insulation=105C\nsheet plan")},
	{rule: "dead-end-lead", name: "the old sense lead", text: edited(lithium, "+", oldSense)},
	{rule: "dead-end-lead", name: "a lamp without a way back", text: edited(lithium, "wire a4", "", "+", "sheet plan")},
	{rule: "dead-end-lead", name: "not live", text: edited(lithium, "+", "part sw switch\nwire x1 nb.4 sw.IN gauge=16AWG insulation=105C\nsheet plan")},
	{rule: "lone-wire", text: edited(lithium, "+", "part cp1 connector-2\nwire x1 cp1.1a untraced gauge=16AWG")},
	{rule: "unwired-part", text: edited(lithium, "+", "part fu9 fuse-inline-80v fuse-rating=3A\npart m9 voltmeter")},
}

var endsGood = []example{
	{rule: "dead-end-lead", name: "everything comes back", text: edited(lithium, "+", "sheet plan")},
	{rule: "dead-end-lead", name: "pins of which nobody knows the inside", text: edited(ac72, "+", "sheet plan")},
	{rule: "dead-end-lead", name: "a loose end has a rule of its own", text: edited(lithium, "+", "wire x1 key.IGN capped gauge=16AWG\nsheet plan")},
	{rule: "dead-end-lead", name: "the sense lead of a computer that is there", text: computer},
	{rule: "lone-wire", name: "both sides of a plug", text: edited(lithium, "+", "part cp1 connector-2\nwire x1 cp1.1a untraced gauge=16AWG\nwire x2 cp1.1b untraced gauge=16AWG")},
	{rule: "lone-wire", name: "a bar with wires on two studs", text: edited(direct, "+", "part bar bus-bar-4\nwire x1 bar.1 untraced gauge=16AWG\nwire x2 bar.4 untraced gauge=16AWG")},
	{rule: "lone-wire", name: "the frame", text: edited(lithium, "+", "part inl ac-inlet\npart fr frame-point\nwire x1 inl.PE fr.FRAME gauge=14AWG")},
	{rule: "unwired-part", name: "all wired", text: lithium},
	{rule: "unwired-part", name: "a leak of the frame", text: edited(lithium, "+", "part lk frame-leak resistance=50kohm\nwire x1 lk.to ctrl.B- gauge=10AWG insulation=105C length=300mm")},
}
