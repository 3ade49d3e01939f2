#!/usr/bin/env bash
# Sets up what is missing, builds the release and serves it on this machine.
#
#   bash demo/run.sh [--port N] [--base /sub/path]   set up, build, serve
#   bash demo/run.sh build                           set up and build only: dist/ is ready to be hosted

source "$(dirname "${BASH_SOURCE[0]}")/tools.sh"

case "${1:-}" in
-h | --help)
    sed -n '2,5s/^# \{0,1\}//p' "${BASH_SOURCE[0]}"
    exit
    ;;
esac

need_room 3 "A first build"
need_build_tools
build_release
if [ "${1:-}" = build ]; then
    say "Ready: $ROOT/dist"
else
    exec node demo/serve.mjs "$@"
fi
