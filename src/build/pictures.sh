#!/usr/bin/env bash
# Pictures of the running window for the documents: drives the real window through its tests on a virtual display and keeps
# what docs/window.md, the guide and the README show. Needs ImageMagick to make the files small.
set -euo pipefail
cd "$(dirname "$0")/../.."
if [ "${1:-}" != "--as-taken" ]; then
  mvn -q -Dquick test -Dtest='DeskJourneyTest,PathPaneTest,BenchPaneTest,RelayWalkDeskTest'
fi
mkdir -p docs/images
for picture in first-map:reach how-far:how-far layer-difference:bought path-view:path bench-view:bench relay:relay walk:walk night-miles:night; do
  convert "target/screens/${picture%%:*}.png" -resize 1100x -colors 128 -strip PNG8:"docs/images/window-${picture##*:}.png"
done
ls -l docs/images
