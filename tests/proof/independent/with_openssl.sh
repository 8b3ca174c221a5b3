#!/bin/sh
# Checks a signature as db/proof/PROVING.md tells people to, with that page's own commands.
# Usage: with_openssl.sh PROVING.md PUBLIC-KEY SIGNATURE < STATEMENT, in a folder that may be written.
set -eu
eval "$(sed -n '/^    bytes()/p; /^    signed()/,/^    }$/p' "$1")"
signed "$2" "$3"
