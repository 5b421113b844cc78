package main

import "striderule/calc/word"

// about is for the pages as they come, before the program is there.
var about word.Table
