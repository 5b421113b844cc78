package file

import "striderule/calc/word"

const (
	openAFile                 = "Open a file"
	OpenTheLog                = "Open the log"
	Opened      word.Template = "Opened {file}." // said when one was
	notOpened   word.Template = "{file} wasn't opened."
	fileTooLong               = "It's longer than a sheet can be."
	fileUnread  word.Template = "The browser couldn't read it ({error})."
)
