# Shed Reckoner. Needs Go and make; the browser tests also need Chromium and WebKit with their drivers, and one check needs
# Node. What isn't there is said, not passed over.

.PHONY: run test bench fuzz shots site vet test-native test-wasm test-fuzz test-browser

GO ?= go
SHELL = bash
INWASM = GOOS=js GOARCH=wasm

# Serves the page on this machine.
run:
	$(GO) run ./site/serve

# Writes build/site, for any static host, and build/shed-reckoner.html, the page as one file, and proves that what packing
# does to a program leaves the sums as they are.
site:
	$(GO) run ./site/pack/cmd -out build
	$(GO) run ./site/prove

test: vet test-native test-wasm test-fuzz test-browser

vet:
	$(GO) vet ./...
	$(INWASM) $(GO) vet ./wasm/... ./site/browser/empty

test-native:
	$(GO) test $$($(GO) list ./... | grep -vE '/site/(browser|webdriver)$$')

# The sums must come out the same in the browser's kind of build, made small as it is packed.
test-wasm:
	$(GO) run ./site/prove
	$(INWASM) $(GO) build -o /dev/null ./wasm

# Every fuzz function for TIME, and the last line of each. What is found stays in testdata/fuzz beside the function, where
# every later test runs it. A find is made small within half a second: longer, and it would take the time of the others.
# Go now and then calls it a failure that the time ran out ("context deadline exceeded", and no input that fails): then the
# function has its time once more.
TIME ?= 20s
fuzz:
	@set -e; for package in $$($(GO) list ./calc/... ./wasm/...); do \
		for name in $$($(GO) test -list '^Fuzz' $$package | grep '^Fuzz'); do \
			for try in 1 2 3; do \
				said=$$($(GO) test $$package -run '^$$' -fuzz "^$$name\$$" -fuzztime $(TIME) -fuzzminimizetime 500ms 2>&1) && break; \
				if [ $$try = 3 ] || grep -q 'Failing input' <<<"$$said" || ! grep -q '^    context deadline exceeded$$' <<<"$$said"; then \
					echo "$$said"; exit 1; \
				fi; \
			done; \
			echo "$${package#shedreckoner/} $$name: $$(echo "$$said" | grep '^fuzz: elapsed' | tail -1 | cut -c7-)"; \
		done; \
	done

# Some 20 seconds in all.
test-fuzz:
	@$(MAKE) --no-print-directory fuzz TIME=1200ms

# -v, because only so Go names the tests that were not run; what passed is left out. -p 1, because browsers are slow
# enough when they are alone.
test-browser:
	@set -o pipefail; $(GO) test -count=1 -v -p 1 ./site/webdriver ./site/browser | grep -vE '^ *(=== |--- PASS|--- SKIP|PASS)'

# One figure a line: name, value, unit, limit.
bench:
	$(GO) run ./site/bench

# Pictures of every screen and sheet of the made-up job into build/shots; flags in SHOTS, such as
# SHOTS="-only ^cup -sizes 320x640 -looks dark -engines WebKit".
shots:
	$(GO) run ./site/shots $(SHOTS)
