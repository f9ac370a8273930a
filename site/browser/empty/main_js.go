package main

import "syscall/js"

func main() {
	js.Global().Get("document").Get("documentElement").Get("dataset").Set("ready", "yes")
	end := make(chan bool)
	js.Global().Set("endProgram", js.FuncOf(func(js.Value, []js.Value) any {
		close(end)
		return nil
	}))
	<-end // forever, unless a test ends the program to see whether the page notices
}
