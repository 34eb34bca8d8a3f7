#!/usr/bin/env bash
# Throughput and latency of default cook plans against the packaged service, in turn with an endpoint of the same process that
# reads the same requests and writes one stored answer (profile benchmark), and memory while it is loaded. The generator is a
# process of its own; at half load it is open: latency counts from the moment a request was due, whether or not it could be sent.
#
#   mvn -q -DskipTests package && service/scripts/load.sh
#
#   ROUNDS=5        rounds of both; medians are told
#   SECONDS_EACH=5  of each measurement; warm-up takes four times as long
#   CONNECTIONS=8   that are kept open
#   FROZEN=0        share of plans that start frozen
#   LONGEST_RSS_MB=300, LEAST_RATIO=0   figures at which the script fails; 0 does not fail
#   also those of service.sh
set -euo pipefail
source "$(dirname "$0")/service.sh"
ROUNDS=${ROUNDS:-5}
SECONDS_EACH=${SECONDS_EACH:-5}
CONNECTIONS=${CONNECTIONS:-8}
FROZEN=${FROZEN:-0}
LONGEST_RSS_MB=${LONGEST_RSS_MB:-300}
LEAST_RATIO=${LEAST_RATIO:-0}

start 0 --spring.profiles.active=benchmark
generate() { tool LoadGenerator "$PORT" "$1" "$2" "$3" "$4" "$FROZEN"; }
failed=0
# Measures one path, full speed, and notes answers a second and the time of the processors for one of them.
measure() {
  local name=$1 path=$2 before line after
  before=$(cpu_ms "$pid")
  line=$(generate "$path" "$CONNECTIONS" "$SECONDS_EACH" 0)
  after=$(cpu_ms "$pid")
  value rate "$line" >> "$work/$name-rates"
  calc "($after - $before) / $(value ok "$line")" '%.3f\n' >> "$work/$name-cpus"
  calc "$(value generatorCpuMs "$line") / ($after - $before)" '%.3f\n' >> "$work/$name-shares"
  failed=$(( failed + $(value refused "$line") + $(value other "$line") + $(value broken "$line") ))
}

where
generate /v1/cook-plans 4 $(( 2 * SECONDS_EACH )) 0 > "$work/warm"
generate /bench/stored-answers 4 $(( 2 * SECONDS_EACH )) 0 > "$work/warm"
for (( round = 1; round <= ROUNDS; round++ )); do
  measure plans /v1/cook-plans
  measure stored /bench/stored-answers
done
plans=$(median < "$work/plans-rates")
stored=$(median < "$work/stored-rates")
plan_ms=$(median < "$work/plans-cpus")
stored_ms=$(median < "$work/stored-cpus")
for (( round = 1; round <= ROUNDS; round++ )); do
  half=$(generate /v1/cook-plans "$CONNECTIONS" "$SECONDS_EACH" "$(calc "$plans / 2")")
  value p50 "$half" >> "$work/half50"
  value p99 "$half" >> "$work/half99"
  failed=$(( failed + $(value refused "$half") + $(value other "$half") + $(value broken "$half") ))
done
rss=$(memory_mb "$pid" VmRSS)
peak=$(memory_mb "$pid" VmHWM)
ratio=$(calc "$plans / $stored")
cat <<FIGURES
cook plans            $plans /s, $plan_ms ms of a core each, $(calc "1000 / $plan_ms" '%.0f') a second and core
stored answers        $stored /s, $stored_ms ms of a core each
ratio                 $ratio by throughput, $(calc "$stored_ms / $plan_ms") by time of the service's cores
at half load          p50 $(median < "$work/half50") us, p99 $(median < "$work/half99") us (medians of $ROUNDS rounds, open loop)
generator             $(median < "$work/plans-shares") of the service's time with plans, $(median < "$work/stored-shares") with stored answers
memory                RSS $rss MB, most $peak MB
answers other than 200   $failed
FIGURES
stop "$pid"
if (( failed > 0 || rss > LONGEST_RSS_MB )) || [[ $(calc "$ratio < $LEAST_RATIO" '%d') == 1 ]]; then
  echo "a figure is beyond its bound" >&2
  exit 1
fi
