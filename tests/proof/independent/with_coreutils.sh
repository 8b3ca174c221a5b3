#!/bin/sh
# Folds a proof as db/proof/PROVING.md tells people to, with that page's own commands: prints the root.
# Usage: with_coreutils.sh PROVING.md LEDGER SEQUENCE SIZE PATH…
set -eu
page=$1 ledger=$2 sequence=$3 size=$4
shift 4
eval "$(sed -n '/^    bytes()/,/^    }$/p' "$page")"
leaf=$({ printf '\0'; sed -n "${sequence}p" "$ledger" | tr -d '\n'; } | sha256sum | cut -d' ' -f1)
fold "$sequence" "$size" "$leaf" "$@"
