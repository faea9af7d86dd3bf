// Package diagnose finds out from meter readings what is wrong with a cart.
//
// It lists the single faults that a sheet can have, solves the sheet with each of them in
// the states that were read, weighs how well each explains what the meter showed (Bayes),
// and proposes the reading that tells most for the minute it takes.
//
// [New] lists the faults of a sheet, [Case.Rank] weighs them against readings,
// [Case.Next] proposes the next reading. One fault at a time is assumed; readings that no
// single fault explains are told as such.
package diagnose
