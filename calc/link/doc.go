// Package link writes and reads the fragment that carries a sheet, and takes back what
// happened to it on its way. It knows no page: what it must know is handed to it as a Site.
package link
