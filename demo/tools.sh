# What building and testing need, sourced by demo/run.sh and tests/run.sh.
#
# Each need_… looks whether a thing is there in the right version, else installs it, and says so. Tools go
# outside the clone, into $GLASSINE_TOOLS (default ~/.cache/glassine), and touch nothing that is installed already.

set -euo pipefail

ROOT=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
TOOLS=${GLASSINE_TOOLS:-$HOME/.cache/glassine}
TRUNK_VERSION=0.21.14
BINARYEN_VERSION=132.0.0
export PATH="$TOOLS/bin:$TOOLS/binaryen-$BINARYEN_VERSION/node_modules/.bin:$PATH"
export TRUNK_SKIP_VERSION_CHECK=true
cd "$ROOT"

say() { printf '%s\n' "$*"; }

fail() {
    printf 'Stopped: %s\n' "$*" >&2
    exit 1
}

# free_gb: whole gigabytes that the disk of the clone has left.
free_gb() { df -Pk "$ROOT" | awk 'NR == 2 { print int($4 / 1048576) }'; }

# What makes the next build quicker takes as much room again as this one: it is left out where there is little.
# Decided once, since a change of mind builds everything anew.
if [ -z "${CARGO_INCREMENTAL:-}" ] && [ "$(free_gb)" -lt 12 ]; then
    export CARGO_INCREMENTAL=0
fi

# need_room GB WHAT: stops before the disk is full in the middle. What was built before takes no further room.
need_room() {
    [ ! -d "${CARGO_TARGET_DIR:-target}/release" ] || return 0
    [ "$(free_gb)" -ge "$1" ] || fail "$2 takes about $1 GB of disk, and $(free_gb) GB are free."
}

have() { command -v "$1" >/dev/null 2>&1; }

# timed WHAT COMMAND…: says what is being done, and how long it took.
timed() {
    local what=$1 start=$SECONDS
    shift
    say "$what …"
    "$@" || return
    say "$what: $((SECONDS - start)) s"
}

# at_least FOUND WANTED: version order.
at_least() { [ "$(printf '%s\n%s\n' "$2" "$1" | sort -V | head -n 1)" = "$2" ]; }

# need_apt PACKAGE…: Debian packages, installed where they are missing.
need_apt() {
    local missing=() package
    for package in "$@"; do
        dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
    done
    [ ${#missing[@]} -gt 0 ] || return 0
    local by=()
    if [ "$(id -u)" != 0 ]; then
        { have sudo && sudo -n true 2>/dev/null; } || fail "missing: ${missing[*]}. Install with: sudo apt-get install ${missing[*]}"
        by=(sudo -n)
    fi
    have apt-get || fail "missing: ${missing[*]}, and there is no apt-get to install them with"
    apt_install() {
        DEBIAN_FRONTEND=noninteractive "${by[@]}" apt-get -qq update </dev/null >/dev/null
        DEBIAN_FRONTEND=noninteractive "${by[@]}" apt-get -qq -y --no-install-recommends install "${missing[@]}" </dev/null >/dev/null
    }
    timed "Installing ${missing[*]} with apt" apt_install || fail "apt could not install ${missing[*]}"
}

need_rust() {
    have cargo || fail "Rust is missing. Install it with rustup (https://rustup.rs), then run this again."
    local wanted found
    wanted=$(sed -n 's/^rust-version = "\(.*\)"/\1/p' Cargo.toml)
    found=$(rustc --version | cut -d' ' -f2)
    at_least "$found" "$wanted" || fail "Rust $found is here; $wanted or later is needed (rustup update)."
    have cc || need_apt build-essential
}

need_wasm_target() {
    [ -d "$(rustc --print sysroot)/lib/rustlib/wasm32-unknown-unknown" ] && return
    have rustup || fail "the target wasm32-unknown-unknown is missing, and there is no rustup to add it with"
    timed "Adding the target wasm32-unknown-unknown" rustup target add wasm32-unknown-unknown \
        || fail "rustup could not add wasm32-unknown-unknown"
}

need_node() {
    have node && have npm || need_apt nodejs npm
    at_least "$(node --version | tr -d v)" 20 || fail "Node $(node --version) is here; 20 or later is needed."
}

# need_cargo_tool PROGRAM PACKAGE VERSION: built quickly rather than small, since it runs for seconds.
need_cargo_tool() {
    local program=$1 package=$2 version=$3
    if have "$program" && [ "$("$program" --version | cut -d' ' -f2)" = "$version" ]; then return; fi
    timed "Installing $package $version, once" env -u CARGO_TARGET_DIR \
        CARGO_PROFILE_RELEASE_OPT_LEVEL=1 CARGO_PROFILE_RELEASE_LTO=off CARGO_PROFILE_RELEASE_CODEGEN_UNITS=16 \
        CARGO_PROFILE_RELEASE_DEBUG=0 \
        cargo install --quiet --locked --root "$TOOLS" --version "=$version" "$package" </dev/null \
        || fail "cargo could not install $package $version"
}

need_wasm_opt() {
    if have wasm-opt && [[ "$(wasm-opt --version)" == *" ${BINARYEN_VERSION%%.*}"* ]]; then return; fi
    timed "Installing wasm-opt (binaryen $BINARYEN_VERSION)" npm install --silent --no-audit --no-fund --no-save \
        --prefix "$TOOLS/binaryen-$BINARYEN_VERSION" "binaryen@$BINARYEN_VERSION" </dev/null \
        || fail "npm could not install binaryen $BINARYEN_VERSION"
}

need_crates() { cargo fetch --locked --quiet </dev/null || fail "cargo could not fetch the crates of Cargo.lock"; }

# need_build_tools: everything that a release build calls.
need_build_tools() {
    mkdir -p "$TOOLS"
    need_rust
    need_wasm_target
    need_node
    need_cargo_tool trunk trunk "$TRUNK_VERSION"
    need_cargo_tool wasm-bindgen wasm-bindgen-cli "$(sed -n '/^name = "wasm-bindgen"$/{n;s/version = "\(.*\)"/\1/p}' Cargo.lock)"
    need_wasm_opt
    need_crates
}

# sources: one digest over all that the build reads.
sources() {
    find .cargo Trunk.toml Cargo.toml Cargo.lock app public -type f -print0 | LC_ALL=C sort -z | xargs -0 sha256sum | sha256sum | cut -d' ' -f1
}

# build_release: dist/, unless it was built from these very sources.
build_release() {
    local stamp=${CARGO_TARGET_DIR:-target}/release.stamp from
    from=$(sources)
    if [ -f dist/sw.js ] && [ "$(cat "$stamp" 2>/dev/null)" = "$from $(sha256sum <dist/sw.js)" ]; then
        say "dist/ is up to date"
        return
    fi
    timed "Building the release" trunk --log error build --release </dev/null || fail "the build did not succeed"
    printf '%s %s\n' "$from" "$(sha256sum <dist/sw.js)" >"$stamp"
}

# need_browser_tests: what drives the browsers, as locked, in a cache beside the other tools.
need_browser_tests() {
    local cache
    cache=$TOOLS/browser-$(sha256sum <tests/browser/package-lock.json | cut -c1-16)
    if [ ! -f "$cache/installed" ]; then
        mkdir -p "$cache"
        cp tests/browser/package.json tests/browser/package-lock.json "$cache/"
        timed "Installing what drives the browsers" npm ci --silent --no-audit --no-fund --prefix "$cache" </dev/null \
            || fail "npm could not install what tests/browser/package-lock.json lists"
        touch "$cache/installed"
    fi
    ln -sfn "$cache/node_modules" tests/browser/node_modules
}
