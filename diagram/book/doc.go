// Package book makes the pages of the rules: what a rule looks for, why, how to tell on the
// cart, and a wrong and a right example, drawn and judged. A page is made from its rule, so the
// two can't disagree. The forms of a book are one file each, listed in [All].
package book
