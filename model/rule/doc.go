// Package rule judges a sheet. Each rule is one file: what it looks at, why, how to
// mend what it finds, and the code. [All] is the table of rules, [Check] runs it.
//
// A rule never guesses. What is missing becomes a finding of severity note that
// names the datum and what it would decide. The program computes from what it was
// told: no finding means that these rules found nothing, not that a cart is safe.
package rule
