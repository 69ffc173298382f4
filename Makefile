# brimline: what can be made here. `make demo` needs Go and make only.
export GOFLAGS :=
export GOWORK := off
VERSION ?= $(shell git describe --tags --always --dirty 2>/dev/null || echo dev)
RACES ?= 7
FUZZTIME ?= 5m

.PHONY: demo test proof bench fuzz validate dist lint clean

demo: ## writes the example books, their plans and their answers to demo/
	go run ./cmd/brimline demo -o demo/

test: ## everything that must pass, under 15 minutes on two cores from a bare machine
	scripts/need test
	scripts/lint
	scripts/test

proof: ## thousands of simulated pools: do the promises hold? prints its seed and its table
	go run ./internal/proof
	go test ./survey -run TestWarmEqualsCold -v -timeout 30m -args -logs 500
	go test ./fieldbook -run 'Merge|Append' -count 1

bench: ## the solver against a C++ reference, the triangulation against CGAL, in turns; then `brimline solve` as a whole process, parallels against GEOS, the chain on books with mistakes
	scripts/need bench
	go run ./bench/race -n $(RACES)
	go run ./bench/mesh -n $(RACES)
	go run ./bench/process
	go run ./bench/offset -n $(RACES)
	go test ./bench/whole -run '^$$' -bench Run60 -benchtime 20x
	go test ./bench/whole -run '^$$' -bench Run300 -benchtime 3x

fuzz: ## every fuzz target for FUZZTIME
	scripts/fuzz $(FUZZTIME)

validate: ## GLB files by the validator of the format's makers; needs node and npm
	cd write/glb/testdata/validate && npm ci
	go test -tags validator ./write/glb

dist: ## static binaries for six systems with their sums, in dist/
	scripts/dist $(VERSION) dist

lint: ## gofmt, go vet, staticcheck
	scripts/lint

clean: ## removes what was made
	rm -rf demo dist bench/out cover.out
