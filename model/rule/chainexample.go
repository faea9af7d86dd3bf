package rule

// What the examples of the control chain are made of.

// powered is a pack with its fuses, a key, and the contactor between pack and controller.
const powered = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=200A
part fu3 fuse-cartridge fuse-rating=10A
part key key-switch
part sol contactor-48v
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=0.5m
wire w3 sol.L2 ctrl.B+ gauge=2AWG insulation=105C length=0.3m
wire w4 ctrl.B- pack.NEG gauge=2AWG insulation=105C length=0.7m
wire k1 fu1.out fu3.in gauge=16AWG insulation=105C length=100mm
wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=1.5m
stack fu1.out w2 k1
`

// seriesChain is a cart with a series motor whose pedal switch feeds contactor and key input.
const seriesChain = powered + `
part ctrl controller-series
part motor motor-series
part pedal pedal-switch
wire m1 ctrl.B+ motor.A1 gauge=2AWG insulation=105C length=0.5m
wire m2 motor.A2 motor.S1 gauge=2AWG insulation=105C length=0.3m
wire m3 motor.S2 ctrl.M- gauge=2AWG insulation=105C length=0.5m
wire k3 key.IGN pedal.COM gauge=16AWG insulation=105C length=1.5m
wire k4 pedal.NO sol.coil+ gauge=16AWG insulation=105C length=1.5m
wire k5 pedal.NO ctrl.KSI gauge=16AWG insulation=105C length=1.5m
wire k6 sol.coil- pack.NEG gauge=16AWG insulation=105C length=1m
stack pack.NEG w4 k6
stack ctrl.B+ w3 m1
`
