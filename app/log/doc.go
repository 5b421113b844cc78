// Package log is the page of the machine log: list, trends, comparison, files in and out.
package log
