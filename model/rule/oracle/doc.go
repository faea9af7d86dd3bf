// Package oracle holds the rules against the circuit itself. Its tests make one mistake on
// a clean cart, as a hand at the bench or at the keyboard makes it, solve the network in
// the settings of its controls with shorts put on everywhere, and judge from the solved
// voltages and currents alone whether the cart became dangerous. What did must be a
// finding of the rules.
//
// The judgement knows nothing of the rules and of what they are built on beyond the
// solved network: it is slow, plain, and lists what practice leaves out. Run it at large
// with
//
//	go test ./model/rule/oracle -run TestManyMutants -mutants 20000
//
// A mistake that the rules find grave, and that is dangerous by anything else, is not judged for
// the heat of wires, which costs most; -by-class has that done as well.
package oracle
