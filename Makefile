# Fourturn: every task of the project. "make" alone lists them.

# The toolkit's calls are made on one goroutine, as it asks since 2.6.
native  := migrated_fynedo
# Without a display and without cgo: drawing in software.
headless := ci,$(native)

gofumpt     := mvdan.cc/gofumpt@v0.12.0
staticcheck := honnef.co/go/tools/cmd/staticcheck@v0.8.2

# All but: every package has a package comment (ST1000), names of units (ST1003).
checks := all,-ST1000,-ST1003

# Packages that never draw: they run under the race detector.
pure := ./planner/... ./plants/... ./app/session/... ./app/screen/... ./app/words/...

.PHONY: help run test check metadata e2e gallery screenshot bench build install install-metadata uninstall windows clean

help: ## list the tasks
	@awk -F ':.*## ' '/^[a-z0-9]+:.*## / { printf "make %-10s %s\n", $$1, $$2 }' Makefile

run: ## start Fourturn; without a display, write its screens and figures to out/
	@sh .ci/start $(if $(PLAN),"$(PLAN)")

test: ## run all tests, then the pure packages under the race detector
	@sh .ci/install compiler
	CGO_ENABLED=0 go test -tags $(headless) ./...
	CGO_ENABLED=1 go test -race -tags $(headless) $(pure)

# Kept in dist, so that checking needs the network only once.
tools := dist/tools
$(tools)/gofumpt $(tools)/staticcheck: Makefile
	CGO_ENABLED=0 GOBIN="$(CURDIR)/$(tools)" go install $($(@F))
	@touch $@

check: $(tools)/gofumpt $(tools)/staticcheck ## format, vet for Linux and Windows, static checks, rules between the packages
	@unformatted=$$($(tools)/gofumpt -l app assets planner plants) || exit 1; \
	if [ -n "$$unformatted" ]; then echo "not formatted by gofumpt:"; echo "$$unformatted"; exit 1; fi
	CGO_ENABLED=0 go vet -tags $(headless) ./...
	CGO_ENABLED=0 GOOS=windows go vet -tags $(headless) ./...
	CGO_ENABLED=0 $(tools)/staticcheck -tags $(headless) -checks $(checks) ./...
	CGO_ENABLED=0 go test ./app/boundary

metadata: ## check what a Linux desktop reads: menu entry, store page, type of plan files
	@sh .ci/install metadata
	@sh .ci/metadata

e2e: ## drive the real window through the main job
	@sh .ci/install window e2e
	@bash .ci/e2e

gallery: ## draw every screen into gallery/, light and dark, in two sizes
	CGO_ENABLED=0 sh .ci/patiently "Drawing" go run -tags $(headless) ./app gallery --out gallery

screenshot: ## draw the picture of the README, on a day in June
	FOURTURN_TODAY=2027-06-08 CGO_ENABLED=0 sh .ci/patiently "Drawing" go run -tags $(headless) ./app gallery --out gallery
	cp gallery/year-light-1280x800.png assets/screenshot.png

bench: ## run the benchmarks
	CGO_ENABLED=0 go test -run '^$$' -bench . -benchmem $(pure)

build: ## build dist/fourturn for this machine
	@sh .ci/install window
	@sh .ci/patiently "Building" go build -tags $(native),release -trimpath -ldflags "-s -w" -o dist/fourturn$$(go env GOEXE) ./app

# Where a Linux desktop looks for programs: PREFIX=/usr for packages, or ~/.local.
PREFIX ?= /usr/local
share   = $(DESTDIR)$(PREFIX)/share
id     := local.fourturn.Fourturn

install: build install-metadata ## install on Linux under PREFIX (/usr/local), for packages with DESTDIR
	install -D -m 755 dist/fourturn "$(DESTDIR)$(PREFIX)/bin/fourturn"
	@[ -n "$(DESTDIR)" ] || sh .ci/refresh "$(share)"

install-metadata:
	install -D -m 644 assets/linux/$(id).desktop "$(share)/applications/$(id).desktop"
	install -D -m 644 assets/linux/$(id).metainfo.xml "$(share)/metainfo/$(id).metainfo.xml"
	install -D -m 644 assets/linux/$(id).mime.xml "$(share)/mime/packages/$(id).xml"
	install -D -m 644 assets/icon.svg "$(share)/icons/hicolor/scalable/apps/$(id).svg"
	install -D -m 644 assets/icon.png "$(share)/icons/hicolor/512x512/apps/$(id).png"

uninstall: ## take away what "make install" put under PREFIX
	rm -f "$(DESTDIR)$(PREFIX)/bin/fourturn" "$(share)/applications/$(id).desktop" "$(share)/metainfo/$(id).metainfo.xml" \
		"$(share)/mime/packages/$(id).xml" "$(share)/icons/hicolor/scalable/apps/$(id).svg" "$(share)/icons/hicolor/512x512/apps/$(id).png"
	@[ -n "$(DESTDIR)" ] || sh .ci/refresh "$(share)"

# Two programs: one opens the window and has no console, the other is for the
# command line and has no window.
windows: ## cross-build dist/fourturn.exe and dist/fourturn-console.exe with mingw-w64
	@command -v x86_64-w64-mingw32-gcc >/dev/null || { echo "Install mingw-w64 (Debian: gcc-mingw-w64-x86-64)."; exit 1; }
	CGO_ENABLED=1 GOOS=windows GOARCH=amd64 CC=x86_64-w64-mingw32-gcc \
		sh .ci/patiently "Building" go build -tags $(native),release -trimpath -ldflags "-s -w -H=windowsgui" -o dist/fourturn.exe ./app
	CGO_ENABLED=0 GOOS=windows GOARCH=amd64 \
		go build -tags $(headless) -trimpath -ldflags "-s -w" -o dist/fourturn-console.exe ./app

clean: ## remove what was built and drawn
	rm -rf dist out gallery
