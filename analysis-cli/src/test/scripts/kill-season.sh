#!/usr/bin/env bash
# Kills seasons at random moments and checks that the store survives: after all kills the finished season is, byte for
# byte, that of a run that nobody disturbed. Arguments: the runnable jar, a folder of rides (at least some dozens), and
# how many kills (20 without it).
set -euo pipefail
jar=$1
rides=$2
kills=${3:-20}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

begun=$(date +%s.%N)
java -jar "$jar" season "$rides" --store "$work/undisturbed.sqlite" --format json > "$work/expected.json" || [ $? -eq 4 ]
took=$(awk -v a="$begun" -v b="$(date +%s.%N)" 'BEGIN { print b - a }')

killed=0
while [ "$killed" -lt "$kills" ]; do
  java -jar "$jar" season "$rides" --store "$work/killed.sqlite" --format json > /dev/null 2>&1 &
  process=$!
  # From the first moments of the process to about a sixth of the season.
  sleep "$(awk -v seed="$RANDOM" -v took="$took" 'BEGIN { srand(seed); printf "%.2f", 0.3 + took / 6 * rand() }')"
  if kill -9 "$process" 2> /dev/null; then
    killed=$((killed + 1))
  else
    rm -f "$work"/killed.sqlite* # it was done before: once more from the beginning
  fi
  wait "$process" 2> /dev/null || true
done

# Two at once on the same store, neither of them disturbed.
java -jar "$jar" season "$rides" --store "$work/killed.sqlite" --format json > "$work/one.json" &
one=$!
java -jar "$jar" season "$rides" --store "$work/killed.sqlite" --format json > "$work/two.json" || [ $? -eq 4 ]
wait "$one" || [ $? -eq 4 ]

cmp "$work/expected.json" "$work/one.json"
cmp "$work/expected.json" "$work/two.json"
echo "$killed kills, then two runs at once: both equal to the undisturbed one"
