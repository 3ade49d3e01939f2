#!/usr/bin/env bash
# Every check of the house, cheap ones first: bash tests/run.sh [STAGE…]
#
#   fmt        the Rust code is formatted
#   tidy       the house's own rules (tests/tidy)
#   clippy     no warning, natively and for the browser
#   native     unit tests and the examples in the documentation
#   reference  the tests in each crate's tests/ folder: values from outside (tests/reference), properties, simulation
#   same       native and wasm give the same answers (tests/same)
#   build      the release that is hosted, in dist/
#   browser    the journeys in Chromium, on the bytes in dist/
#   engines    the journeys that also run in Firefox and WebKit
#   fuzz       ten million texts for the parser of coordinates; only when named, or with `long`
#   bench      the benches; only when named, or with `long`, which means everything
#
# Installs what is missing. Each stage has a hard limit; its whole output stays in tests/out/STAGE.log.

source "$(dirname "${BASH_SOURCE[0]}")/../demo/tools.sh"

STAGES=(fmt tidy clippy native reference same build browser engines)
BROWSER_CRATES=(-p browser -p ui -p shell -p press -p courier)

stage_fmt() { cargo fmt --all --check; }

stage_tidy() { cargo test --locked --quiet -p tidy; }

stage_clippy() {
    cargo clippy --locked --quiet --workspace --all-targets -- -D warnings
    cargo clippy --locked --quiet --target wasm32-unknown-unknown "${BROWSER_CRATES[@]}" -- -D warnings
}

stage_native() {
    cargo test --locked --quiet --workspace --exclude tidy --no-fail-fast --lib --bins --examples
    cargo test --locked --quiet --workspace --exclude tidy --no-fail-fast --doc
}

stage_reference() { cargo test --locked --quiet --workspace --exclude tidy --no-fail-fast --test '*'; }

stage_same() {
    local built=${CARGO_TARGET_DIR:-target}
    mkdir -p tests/out/same
    cargo build --locked --quiet -p same --bin answers
    cargo build --locked --quiet --release --target wasm32-unknown-unknown -p same --lib
    wasm-bindgen --target nodejs --out-dir tests/out/same "$built/wasm32-unknown-unknown/release/same.wasm"
    "$built/debug/answers" >tests/out/same/native.txt
    node tests/same/compare.mjs tests/out/same/native.txt "$ROOT/tests/out/same/same.js"
}

stage_fuzz() { FUZZ_INPUTS=10000000 cargo test --locked --quiet --profile fuzz -p place --test fuzz; }

stage_build() { build_release; }

stage_browser() {
    need_browser_tests
    build_release
    node tests/browser/run.mjs
}

stage_engines() {
    need_browser_tests
    need_apt firefox-esr webkit2gtk-driver xvfb
    build_release
    local failed=0
    node tests/browser/run.mjs --engine firefox || failed=1
    node tests/browser/run.mjs --engine webkit || failed=1
    return "$failed"
}

# The module is made as the page's own is: at the release's level, then by wasm-opt for the road.
bench_places() {
    local built=${CARGO_TARGET_DIR:-target}/wasm32-unknown-unknown/release/bench_places.wasm out=tests/out/places
    mkdir -p "$out"
    cargo build --locked --quiet --release --target wasm32-unknown-unknown -p bench-places
    wasm-bindgen --target web --no-typescript --out-name places --out-dir "$out" "$built"
    wasm-opt -Oz "$out/places_bg.wasm" -o "$out/places_bg.wasm"
    node tests/bench/browser/places.mjs "$out"
}

stage_bench() {
    local built=${CARGO_TARGET_DIR:-target}/release
    cargo build --locked --quiet --profile bench -p bench-native --bins
    "$built/measure"
    "$built/labels"
    need_browser_tests
    build_release
    node tests/bench/browser/run.mjs --generate "$built/generate"
    npm --prefix tests/bench/browser/labels ci --no-audit --no-fund --silent
    node tests/bench/browser/labels.mjs
    bench_places
}

limit_of() {
    case $1 in
    fmt) echo 60 ;;
    tidy) echo 300 ;;
    clippy | reference) echo 900 ;;
    bench) echo 2700 ;;
    *) echo 1500 ;;
    esac
}

# Not a stage of its own: every stage stands on it.
stage_tools() {
    need_room 7 "A first run of all tests"
    need_build_tools
    need_apt chromium poppler-utils qpdf
}

# counts LOG: passed and failed as the runners in a log say them; a log without any counts as one.
counts() {
    sed -nE 's/^test result: .* ([0-9]+) passed; ([0-9]+) failed.*/\1 \2/p; s/^([0-9]+) passed, ([0-9]+) failed$/\1 \2/p' "$1" |
        awk '{ passed += $1; failed += $2 } END { if (NR) print passed, failed }'
}

# run_stage STAGE: one line, and on failure the end of its output.
run_stage() {
    local stage=$1 log=tests/out/$1.log start=$SECONDS status=0 limit found
    limit=$(limit_of "$stage")
    timeout --kill-after=20 "$limit" bash tests/run.sh --inside "$stage" </dev/null >"$log" 2>&1 || status=$?
    found=$(counts "$log")
    read -r here_passed here_failed <<<"${found:-$((status == 0)) $((status != 0))}"
    # A stage that broke off counts as failed even if every test it got to had passed.
    if [ "$status" != 0 ] && [ "$here_failed" = 0 ]; then here_failed=1; fi
    passed=$((passed + here_passed))
    failed=$((failed + here_failed))
    say "$(printf '%-10s %5d s  %s' "$stage" $((SECONDS - start)) "$here_passed passed, $here_failed failed")"
    if [ "$stage" = bench ] && [ "$status" = 0 ]; then cat "$log"; fi
    [ "$status" = 0 ] && return
    if [ "$status" = 124 ]; then say "$stage took longer than its $limit s"; fi
    tail -n 80 "$log"
}

if [ "${1:-}" = --inside ]; then
    "stage_$2"
    exit
fi

[ "${1:-}" = long ] && set -- "${STAGES[@]}" fuzz bench
[ $# -gt 0 ] || set -- "${STAGES[@]}"
for stage in "$@"; do
    declare -F "stage_$stage" >/dev/null || fail "there is no stage $stage; the head of tests/run.sh lists them"
done

passed=0 failed=0
mkdir -p tests/out
timed "Tools" timeout --kill-after=20 2400 bash tests/run.sh --inside tools </dev/null || fail "the tools are not there"
for stage in "$@"; do run_stage "$stage"; done
say "$passed passed, $failed failed"
[ "$failed" = 0 ]
