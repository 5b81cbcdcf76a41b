#!/usr/bin/env bash
# Builds the jar twice from the committed sources, in two folders of different names, and compares the checksums.
set -euo pipefail
cd "$(dirname "$0")/../.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
sums=()
for name in first second-build; do
  mkdir "$work/$name"
  git archive HEAD | tar -x -C "$work/$name"
  (cd "$work/$name" && mvn -q ${MVN_MORE:-} package -Dmaven.test.skip=true)
  sums+=("$(sha256sum <"$work/$name/target/handreach.jar" | cut -d ' ' -f 1)")
done
echo "${sums[0]}"
echo "${sums[1]}"
[ "${sums[0]}" = "${sums[1]}" ] || { echo "the two jars differ"; exit 1; }
echo "the two jars are the same"
