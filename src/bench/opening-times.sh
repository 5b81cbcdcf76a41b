#!/usr/bin/env bash
# How long the window takes from the start of the virtual machine to its first map, five times, as `desk` opens it from the plain jar.
# Needs a display (or xvfb-run before it) and the built jar.
# usage: src/bench/opening-times.sh [PLAN]
set -euo pipefail
cd "$(dirname "$0")/../.."
[ -f target/handreach.jar ] || mvn -q -DskipTests package
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
javac -d "$work" -cp target/handreach.jar src/bench/java/handreach/desktop/OpeningTime.java
for _ in 1 2 3 4 5; do
  java -Dhandreach.settings="$work/settings" -cp "$work:target/handreach.jar" handreach.desktop.OpeningTime "${1:-elevation-samples/forest-hills}" 2>/dev/null
done
