#!/usr/bin/env bash
# Checks, writes annotations to the log and a summary to the job's page, and
# SARIF and JSON Lines where asked. Its exit status is that of the check.
set -euo pipefail

scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

program=${DRYFIT_BINARY:-}
if [ -z "$program" ]; then
  program="$scratch/dryfit"
  (cd "$DRYFIT_SOURCE" && go build -trimpath -o "$program" ./cmd/dryfit)
fi

arguments=()
if [ "${DRYFIT_STRICT:-false}" = true ]; then arguments+=(--strict); fi
if [ -n "${DRYFIT_CHANGED_SINCE:-}" ]; then arguments+=(--changed-since "$DRYFIT_CHANGED_SINCE"); fi
if [ -n "${DRYFIT_PART:-}" ]; then arguments+=(--part "$DRYFIT_PART"); fi
if [ -n "${DRYFIT_STANDARDS_FROM:-}" ]; then arguments+=(--standards-from "$DRYFIT_STANDARDS_FROM"); fi
if [ -n "${DRYFIT_BASELINE:-}" ]; then arguments+=(--baseline "$DRYFIT_BASELINE"); fi
arguments+=(--)
while IFS= read -r path; do
  if [ -n "$path" ]; then arguments+=("$path"); fi
done <<<"${DRYFIT_PATHS:-}"

status=0
"$program" check --format annotations "${arguments[@]}" || status=$?
"$program" check --format markdown --output "$scratch/summary.md" "${arguments[@]}" 2>/dev/null || true
if [ -s "$scratch/summary.md" ] && [ -n "${GITHUB_STEP_SUMMARY:-}" ]; then
  cat "$scratch/summary.md" >>"$GITHUB_STEP_SUMMARY"
fi
if [ -n "${DRYFIT_SARIF:-}" ]; then
  "$program" check --format sarif --output "$DRYFIT_SARIF" "${arguments[@]}" 2>/dev/null || true
fi
if [ -n "${DRYFIT_LINES:-}" ]; then
  "$program" check --format jsonl --output "$DRYFIT_LINES" "${arguments[@]}" 2>/dev/null || true
fi
verdict=$(sed -n 's/^## dryfit: //p;1q' "$scratch/summary.md" 2>/dev/null || true)
if [ -n "${GITHUB_OUTPUT:-}" ]; then
  printf 'verdict=%s\n' "${verdict:-COULD NOT CHECK}" >>"$GITHUB_OUTPUT"
fi
exit "$status"
