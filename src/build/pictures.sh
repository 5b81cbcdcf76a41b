#!/usr/bin/env bash
# Pictures of the running window for the documents: drives the real window through a first day, from an empty home to a printed card,
# on a virtual display, and keeps the film strip of it (docs/images/day-*.png) and what docs/window.md and the README show. Needs
# ImageMagick to make the files small.
set -euo pipefail
cd "$(dirname "$0")/../.."
if [ "${1:-}" != "--as-taken" ]; then
  mvn -q -Dquick test -Dtest='FirstDayDeskTest,BackdropDeskTest,AtlasDeskTest'
fi
mkdir -p docs/images
# As many colours as there is room for: the map must keep those of its key.
small() {
  for colours in 256 192 144 112 88; do
    convert "$1" -resize '1000x900>' -dither None -colors $colours -strip PNG8:"docs/images/$2.png"
    if [ "$(stat -c %s "docs/images/$2.png")" -lt 250000 ]; then return; fi
  done
  echo "$2.png is larger than 250 kB" >&2
  exit 1
}
for picture in 1-empty 2-ground 3-place 4-bench 5-reach 6-relay 7-walk 8-card \
    5-reach:window-reach bought:window-bought path:window-path night:window-night; do
  name="day-$picture"
  case $picture in *:*) name=${picture##*:} ;; esac
  small "target/screens/story-${picture%%:*}.png" "$name"
done
small target/screens/backdrop-tiles-day.png window-backdrop
small target/screens/atlas-place.png window-atlas
ls -l docs/images
