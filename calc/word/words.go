package word

// dayForm is how a day is written for people.
const dayForm Template = "{year}-{month}-{day}"
