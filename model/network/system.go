package network

// SystemVolts is the nominal voltage of the cart in volts as the job records it; 0 if it
// does not.
func (n *Network) SystemVolts() float64 { return n.job.System.Volts() }
