#!/usr/bin/env bash
# Runs the packaged service at half of what it can do, with plans, sheets, catalogues and requests that are refused, and
# watches what could grow. Fits a line through the second half of the samples; the first half is left to the compiler.
#
#   mvn -q -DskipTests package && service/scripts/soak.sh
#
#   MINUTES=10          of load
#   EVERY_S=10          between samples
#   RATE=               cook plans a second; half of what was measured if it is not said
#   MOST_RSS_MB, MOST_HEAP_MB, MOST_THREADS, MOST_FILES, MOST_SERIES
#                       growth of the fitted line in an hour at which the script fails (60, 30, 6, 12, 0)
#   also those of service.sh
set -euo pipefail
source "$(dirname "$0")/service.sh"
MINUTES=${MINUTES:-10}
EVERY_S=${EVERY_S:-10}
MOST_RSS_MB=${MOST_RSS_MB:-60}
MOST_HEAP_MB=${MOST_HEAP_MB:-30}
MOST_THREADS=${MOST_THREADS:-6}
MOST_FILES=${MOST_FILES:-12}
MOST_SERIES=${MOST_SERIES:-0}

start 0
service=$pid
where
tool LoadGenerator "$PORT" /v1/cook-plans 4 20 0 0.1 > "$work/warm"
RATE=${RATE:-$(calc "$(value rate "$(tool LoadGenerator "$PORT" /v1/cook-plans 4 10 0 0.1)") * 0.4")}
seconds=$(( MINUTES * 60 ))

# One answer for curl to fetch, and its status to keep.
ask() { curl -s -m 60 -o "$work/answer-$1" -w '%{http_code}\n' "${@:2}" >> "$work/statuses" || echo "none" >> "$work/statuses"; }
others() {
  local end=$(( SECONDS + seconds )) file i=0 base=http://127.0.0.1:$PORT
  local files=("$examples"/*.request.json)
  while (( SECONDS < end )); do
    file=${files[i % ${#files[@]}]}
    name=$(basename "$file")
    operation=$(sed -E 's/-(plan|review|window|sheet|table)-.*/-\1s/; s/^replan-.*/replans/' <<< "$name")
    ask a "$base/v1/$operation" -H 'Content-Type: application/json' --data-binary "@$file"
    ask b "$base/v1/foods"
    ask c "$base/v1/cook-plans" -H 'Content-Type: application/json' -d "{\"food$i\":1}"
    ask d "$base/v1/nothing/$i"
    ask e "$base/v1/foods/food-$i"
    i=$(( i + 1 ))
    sleep 1
  done
}
sample() {
  local heap series
  curl -s "http://127.0.0.1:$MANAGEMENT/actuator/prometheus" > "$work/metrics"
  heap=$(awk '/^jvm_gc_live_data_size_bytes/ { s += $2 } END { printf "%.2f", s / 1048576 }' "$work/metrics")
  series=$(grep -vc '^#' "$work/metrics")
  echo "$1 $(memory_mb "$service" VmRSS) $heap $(ls "/proc/$service/task" | wc -l) $(ls "/proc/$service/fd" | wc -l) $series"
}
others &
asking=$!
pids+=("$asking")
tool LoadGenerator "$PORT" /v1/cook-plans 4 "$seconds" "$RATE" 0.1 > "$work/plans" &
generating=$!
pids+=("$generating")
begin=$SECONDS
while kill -0 "$generating" 2>/dev/null && (( SECONDS - begin < seconds + 30 )); do
  # A full collection, so that what is alive is known.
  jcmd "$service" GC.run > "$work/gc" 2>&1
  sample $(( SECONDS - begin )) >> "$work/samples"
  sleep "$EVERY_S"
done
wait "$asking" || true
echo "seconds RSS-MB live-heap-MB threads files series"
awk 'NR == 1 || NR % 6 == 0' "$work/samples"
# Growth of one column by the line fitted through the second half of the samples: over that time, and an hour.
slope() {
  awk -v c="$1" -v from=$(( $(wc -l < "$work/samples") / 2 )) '
    NR > from { n++; if (n == 1) first = $1; last = $1; x += $1; y += $c; xx += $1 * $1; xy += $1 * $c }
    END { a = (n * xy - x * y) / (n * xx - x * x); printf "%.1f %.1f %d", a * (last - first), a * 3600, last - first }' \
    "$work/samples"
}
last() { tail -n 1 "$work/samples" | cut -d' ' -f"$1"; }
failed=0
report() {
  local grows hourly over
  read -r grows hourly over <<< "$(slope "$2")"
  printf '%-22s %s at the end, grew by %s in the last %s s (%s an hour; bound %s)\n' "$1" "$(last "$2")" "$grows" "$over" \
    "$hourly" "$3"
  if [[ $(calc "$hourly > $3" '%d') == 1 ]]; then failed=1; fi
}
echo "soak                   $MINUTES minutes at $RATE plans/s, beside all other operations"
report "RSS MB" 2 "$MOST_RSS_MB"
report "live heap MB" 3 "$MOST_HEAP_MB"
report "threads" 4 "$MOST_THREADS"
report "file descriptors" 5 "$MOST_FILES"
report "series of metrics" 6 "$MOST_SERIES"
echo "plans                  $(cat "$work/plans")"
echo "other answers          $(sort "$work/statuses" | uniq -c | tr '\n' ' ')"
if grep -qE '^(5|none)' "$work/statuses"; then failed=1; fi
stop "$service"
if (( failed > 0 )); then
  echo "something grows, or was not answered" >&2
  exit 1
fi
