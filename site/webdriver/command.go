package webdriver

import "fmt"

// Run calls f with a Failer for its sessions, and gives the reason where one of them can't go on: for commands, which have
// no test to end.
func Run(f func(t Failer) error) (err error) {
	defer func() {
		switch p := recover().(type) {
		case nil:
		case failure:
			err = p
		default:
			panic(p)
		}
	}()
	return f(alarm{})
}

// alarm ends what Run calls.
type alarm struct{}

type failure struct{ error }

func (alarm) Helper()                           {}
func (alarm) Fatalf(format string, args ...any) { panic(failure{fmt.Errorf(format, args...)}) }
