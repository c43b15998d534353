#!/usr/bin/env bash
# Builds everything and runs all tests. Installs what the tests need and this machine lacks; says what is skipped and why.
# The last line is "N passed, N failed, N skipped"; the exit code is 0 only when something passed and nothing failed.
set -uo pipefail
cd "$(dirname "$0")/.."
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1

need() { # command, Debian package, what is skipped without it
  command -v "$1" >/dev/null 2>&1 && return
  if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1; then
    echo "installing $2 …"
    { apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$2"; } >/dev/null 2>&1
  fi
  command -v "$1" >/dev/null 2>&1 || echo "skipped: $3 ($1 is not here; on Debian: apt-get install $2)"
}
need tshark tshark "dissection of recorded frames by an independent program"
need python3 python3 "the record and exports read by an independent program"
need openssl openssl "seals checked by an independent program"
need node nodejs "validation of files by an independent program"
need npm npm "validation of files by an independent program"

schema=tests/EolSequencer.OutsideProof.Tests/Schema
if command -v npm >/dev/null 2>&1 && [ ! -d "$schema/node_modules" ]; then
  (cd "$schema" && npm install --no-audit --no-fund --no-package-lock --silent) >/dev/null 2>&1 \
    || { rm -rf "$schema/node_modules"; echo "skipped: validation of files by an independent program (npm install failed)"; }
fi

if ! dotnet build EolSequencer.sln -v quiet --nologo; then
  echo "0 passed, 1 failed"
  exit 1
fi

log=$(mktemp)
trap 'rm -f "$log"' EXIT
dotnet test --solution EolSequencer.sln --no-build 2>&1 | tee "$log"

number() { sed -n "s/^ *$1: *\([0-9][0-9]*\).*/\1/p" "$log" | tail -n 1; }
passed=$(number succeeded) failed=$(number failed) skipped=$(number skipped)
echo "${passed:-0} passed, ${failed:-1} failed, ${skipped:-0} skipped"
[ "${passed:-0}" -gt 0 ] && [ "${failed:-1}" -eq 0 ]
