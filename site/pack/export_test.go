package pack

// OneFile is oneFile, for tests.
var OneFile = oneFile
