package main

// keyTable is of the command's -schema: a page in a browser doesn't ask for it, and is
// smaller without it.
const keyTable = ""
