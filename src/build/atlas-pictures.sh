#!/usr/bin/env bash
# The map of docs/atlas.md: an atlas of the high mountains, 11 128 positions every 300 m, two loadouts (some four minutes of processor
# time), drawn as its page draws it. Needs the built jar, Perl, Chromium and ImageMagick. --as-made FOLDER takes an atlas that is there.
set -euo pipefail
cd "$(dirname "$0")/../.."
work=target/atlas-pictures
mkdir -p "$work" docs/images
if [ "${1:-}" = "--as-made" ]; then
  atlas=$2
else
  atlas=$work/high-mountains
  sample=$PWD/elevation-samples/high-mountains
  # Two of the sample's loadouts, and its people with one of them.
  perl -0pe 's/\[\[loadout\]\]\s+name = "(?!factory at face|half-wave at face).*?(?=\n\s*\n)//sg;
      s/^loadout = .*/loadout = "factory at face"/mg; s#"tiles"#"'"$sample"'/tiles"#; s#"\.\./#"'"$sample"'/../#g' \
    "$sample/plan.toml" > "$work/plan.toml"
  echo '{"type": "Polygon", "coordinates": [[[-105.40, 37.26], [-105.04, 37.26], [-105.04, 37.54], [-105.40, 37.54], [-105.40, 37.26]]]}' \
    > "$work/region.geojson"
  java -jar target/handreach.jar atlas "$work/plan.toml" --grid 300m --region "$work/region.geojson" --relays 3 --out "$atlas"
fi
perl -0ne 'print "<meta charset=utf-8><body style=\"margin:8px\">$1" if /(<svg.*?<\/svg>)/s' "$atlas/atlas.html" > "$work/map.html"
chromium --headless --no-sandbox --disable-gpu --no-first-run --disable-background-networking --user-data-dir="$PWD/$work/browser" \
  --hide-scrollbars --force-device-scale-factor=1.4 --window-size=662,690 --screenshot="$PWD/$work/map.png" "file://$PWD/$work/map.html"
convert "$work/map.png" -dither None -colors 128 -strip PNG8:docs/images/atlas-least-loadout.png
ls -l docs/images/atlas-least-loadout.png
