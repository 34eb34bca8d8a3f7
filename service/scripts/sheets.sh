#!/usr/bin/env bash
# Sheets of mixed portions against the packaged service: seconds for one answer and for a stream, memory while a long stream
# runs, and whether the halves of a sheet on two instances give the same cards as the whole on one.
#
#   mvn -q -DskipTests package && service/scripts/sheets.sh
#
#   PORTIONS=10000      of a sheet
#   ROUNDS=3            of it; medians are told
#   STREAMED=40000      portions of the long stream
#   MOST_GROWTH_MB=40   of resident memory between a tenth of the stream and its end
#   also those of service.sh
set -euo pipefail
source "$(dirname "$0")/service.sh"
PORTIONS=${PORTIONS:-10000}
ROUNDS=${ROUNDS:-3}
STREAMED=${STREAMED:-40000}
MOST_GROWTH_MB=${MOST_GROWTH_MB:-40}

libraries
start 0
one=$pid
where
tool SheetLoad time "$PORT" "$PORTIONS" "$ROUNDS" > "$work/times"
streamed=$(tool SheetLoad memory "$PORT" "$STREAMED" "$one")
start 1
other=$pid
halves=$(tool SheetLoad halves "$PORT" $(( PORT + 1 )) $(( PORTIONS / 5 )))
growth=$(( $(value mostMB "$streamed") - $(value earlyMB "$streamed") ))
cat <<FIGURES
$PORTIONS portions     $(sed -n 's/^json seconds=\([0-9.]*\).*/\1/p' "$work/times" | median) s as one answer, $(sed -n 's/^lines seconds=\([0-9.]*\).*/\1/p' "$work/times" | median) s as a stream
streamed              $streamed (grew by $growth MB)
two instances         $halves
FIGURES
stop "$other"
stop "$one"
if (( growth > MOST_GROWTH_MB )); then
  echo "memory grows while a sheet is streamed" >&2
  exit 1
fi
