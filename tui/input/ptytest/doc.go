// Package ptytest gives tests a real pseudo-terminal whose other end they hold. Linux only.
package ptytest
