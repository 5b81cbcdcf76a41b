#!/usr/bin/env bash
# Whole-process times of the built jar, five runs each, as a stranger would start it; prints them sorted, quickest first.
# usage: src/bench/start-times.sh [JAVA_OPTION...]
set -euo pipefail
cd "$(dirname "$0")/../.."
[ -f target/handreach.jar ] || mvn -q package -Dmaven.test.skip=true
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
TIMEFORMAT=%R
options=("$@")
measure() {
  local name=$1
  shift
  local times=()
  for _ in 1 2 3 4 5; do
    times+=("$({ time java "${options[@]}" -jar target/handreach.jar "$@" >/dev/null 2>&1; } 2>&1)")
  done
  printf '%-44s %s s\n' "$name" "$(printf '%s\n' "${times[@]}" | sort -n | tr '\n' ' ')"
}
echo "cores $(getconf _NPROCESSORS_ONLN), load $(cut -d ' ' -f 1 /proc/loadavg 2>/dev/null || echo unknown), $(java -version 2>&1 | sed -n 2p)"
measure "--help" --help
measure "path, forest hills" path --plan elevation-samples/forest-hills --from "spike camp" --to "north spur"
measure "10 km sweep, one loadout, GeoTIFF out" reach elevation-samples/invented-valley --loadout "factory at face" \
  --radius-km 10 --engine sweep --only rasters --out "$work/rasters"
measure "10 km sweep, six loadouts, GeoTIFF out" reach elevation-samples/invented-valley \
  --radius-km 10 --engine sweep --only rasters --out "$work/all"
measure "README command, without the build" reach elevation-samples/forest-hills --out "$work/forest"
