#!/usr/bin/env bash
# Several times as many cook plans as the packaged service can plan: what those admitted wait, what the others are told, how
# fast, what happens to memory, and whether the service is itself again at once.
#
#   mvn -q -DskipTests package && service/scripts/overload.sh
#
#   TIMES=4             as many requests as can be planned
#   SECONDS_EACH=10     of each measurement
#   CONNECTIONS=400     while overloaded; fewer than server.tomcat.max-connections
#   MOST_FACTOR=10      the p99 of admitted requests may be so many times the p99 at half load, but for FLOOR_MS
#   FLOOR_MS=250        a p99 that is always good enough: what stands in the queue when it is full takes so long
#   MOST_GROWTH_MB=40   of resident memory from the first to the last round of overload
#   also those of service.sh
set -euo pipefail
source "$(dirname "$0")/service.sh"
TIMES=${TIMES:-4}
SECONDS_EACH=${SECONDS_EACH:-10}
CONNECTIONS=${CONNECTIONS:-400}
MOST_FACTOR=${MOST_FACTOR:-10}
FLOOR_MS=${FLOOR_MS:-250}
MOST_GROWTH_MB=${MOST_GROWTH_MB:-40}

start 0
generate() { tool LoadGenerator "$PORT" /v1/cook-plans "$1" "$2" "$3" 0; }
where
generate 8 $(( 2 * SECONDS_EACH )) 0 > "$work/warm"
capacity=$(value rate "$(generate 8 "$SECONDS_EACH" 0)")
half=$(generate 8 "$SECONDS_EACH" "$(calc "$capacity / 2")")
half99=$(value p99 "$half")
failed=0
for round in 1 2 3; do
  over=$(generate "$CONNECTIONS" "$SECONDS_EACH" "$(calc "$capacity * $TIMES")")
  echo "overload $round: $over"
  value sentP99 "$over" >> "$work/admitted"
  value refusedP99 "$over" >> "$work/refused"
  value told "$over" >> "$work/told"
  value rate "$over" >> "$work/rates"
  memory_mb "$pid" VmRSS >> "$work/memory"
  echo >> "$work/memory"
  failed=$(( failed + $(value other "$over") + $(value broken "$over") ))
done
# At once: no pause before this.
again=$(generate 8 "$SECONDS_EACH" "$(calc "$capacity / 2")")
admitted=$(median < "$work/admitted")
told=$(sort -g "$work/told" | head -n 1)
growth=$(( $(tail -n 1 "$work/memory") - $(head -n 1 "$work/memory") ))
cat <<FIGURES
capacity              $capacity plans/s over 8 connections
half load             p99 $half99 us
offered               $TIMES times capacity over $CONNECTIONS connections
admitted              $(median < "$work/rates") /s, p99 $admitted us from when they were sent, $(calc "$admitted / $half99" '%.1f') times that of half load
refused               p99 $(median < "$work/refused") us, $told of them with Retry-After
memory                grew by $growth MB from the first to the third round
half load right after p99 $(value p99 "$again") us, $(value refused "$again") refused
answers other than 200 and 503   $failed
FIGURES
stop "$pid"
if (( failed > 0 || growth > MOST_GROWTH_MB || $(value refused "$again") > 0 )) || [[ $told != 1.00 ]] ||
  [[ $(calc "$admitted > $MOST_FACTOR * $half99 && $admitted > $FLOOR_MS * 1000" '%d') == 1 ]]; then
  echo "a figure is beyond its bound" >&2
  exit 1
fi
