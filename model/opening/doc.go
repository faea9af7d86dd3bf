// Package opening tells when a protective device opens: within which band of times, at
// any current, by the time-current gates of the standard that it is made to or by the
// points that its maker publishes.
//
// A gate says that at one current the device holds for a time, or has opened after one.
// Between gates the package promises only what follows from them: the opening time falls
// as the current rises, so the time at a current is at least that of every gate at or
// above it and at most that of every gate at or below it. Of a fuse the heat that melts it,
// I2t, falls as well, which makes both bounds closer. Nothing is interpolated.
//
// From a hundredth of a second down the gates are those of the heat I2t. Times there are
// virtual times: I2t divided by the square of the prospective current, as IEC 60269-1
// defines them. They heat a conductor as that current would in that time.
//
// Standards state their gates for a device that starts cold in open air at 20 to 30 C. One
// that is warm from its load or its surroundings opens sooner than it is said to hold.
//
// A family of gates is one file of data with its source; All lists them. Currents are
// amperes, times seconds and heats A2s throughout.
package opening
