#!/usr/bin/env bash
# Compares what two runnable jars print: one line for each command whose output, error lines or exit status differ.
# Meant for a redesign, before and after. Options, arguments and commands: see CompareJars.java, which does the work.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# The stores of the seasons and the native library of SQLite land in the temporary folder.
java -Djava.io.tmpdir="$work" "$here/CompareJars.java" "$here/../../../../sample-rides" "$@"
