# Shed Reckoner. Needs Go and make; the browser tests also need Chromium and WebKit with their drivers, and one check needs
# Node. What isn't there is said, not passed over.

.PHONY: run test bench fuzz shots site test-vet test-native test-wasm test-fuzz test-browser

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

# Each part with the longest that it may take on a busy machine of two cores. All of them are run, whatever fails, and at the
# end it is said what each took.
PARTS = test-vet=5m test-native=15m test-wasm=12m test-fuzz=6m test-browser=40m
test:
	@for part in $(PARTS); do \
		name=$${part%=*} most=$${part#*=} from=$$SECONDS; \
		if timeout $$most $(MAKE) --no-print-directory $$name; then ended=passed; else ended="FAILED ($$?, may take $$most)"; failed=1; fi; \
		times+="$$name $$ended in $$((SECONDS - from)) s"$$'\n'; \
	done; \
	printf '%s' "$$times"; exit $${failed:-0}

test-vet:
	@unformatted=$$("$$($(GO) env GOROOT)/bin/gofmt" -l calc wasm site testdata) && if [ -n "$$unformatted" ]; then echo "gofmt would change $$unformatted"; exit 1; fi
	$(GO) vet ./...
	$(INWASM) $(GO) vet ./wasm/... ./site/browser/empty

test-native:
	$(GO) test -timeout 14m $$($(GO) list ./... | grep -vE '/site/(browser|webdriver)$$')

# The sums must come out the same in the browser's kind of build, made small as it is packed.
test-wasm:
	$(GO) run ./site/prove
	$(INWASM) $(GO) build -o /dev/null ./wasm

# Every fuzz function for TIME, and the last line of each. What is found stays in testdata/fuzz beside the function, where
# every later test runs it.
TIME ?= 20s
fuzz:
	$(GO) run ./site/fuzz -time $(TIME)

test-fuzz:
	@$(MAKE) --no-print-directory fuzz TIME=1200ms

# -v, because only so Go names the tests that were not run; what passed is left out. -p 1, because browsers are slow
# enough when they are alone.
test-browser:
	@set -o pipefail; $(GO) test -count=1 -v -p 1 -timeout 39m ./site/webdriver ./site/browser | grep -vE '^ *(=== |--- PASS|--- SKIP|PASS)'

# One figure a line: name, value, unit, limit.
bench:
	$(GO) run ./site/bench

# Pictures of every screen and sheet of the made-up job into build/shots; flags in SHOTS, such as
# SHOTS="-only ^cup -sizes 320x640 -looks dark -engines WebKit".
shots:
	$(GO) run ./site/shots $(SHOTS)
