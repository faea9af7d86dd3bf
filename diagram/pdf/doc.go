// Package pdf writes pages of a drawing as one PDF file: what package ink sets, as vectors
// on paper of the exact size, with text that can be searched and copied. The fonts are
// embedded. Equal pages give equal bytes.
package pdf
