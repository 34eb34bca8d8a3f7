#!/usr/bin/env bash
# Measures the packaged service: time from exec until the readiness probe answers, and resident memory under load,
# without and with an application class-data archive. Needs bash 5, curl, java and Linux' /proc; builds nothing.
#
#   mvn -q -DskipTests package && service/scripts/start-and-memory.sh
#
#   RUNS=5             starts of each kind; the median is told
#   REQUESTS=4000      cook plans before memory is read, over four connections
#   JAVA_OPTS=         arguments of the JVM, for example "-XX:+UseSerialGC -Xmx128m"
#   PORT, MANAGEMENT   ports to use (18080, 19090)
set -euo pipefail

RUNS=${RUNS:-5}
REQUESTS=${REQUESTS:-4000}
PORT=${PORT:-18080}
MANAGEMENT=${MANAGEMENT:-19090}
read -r -a OPTIONS <<< "${JAVA_OPTS:-}"
LONGEST_S=60

target=$(cd "$(dirname "$0")/../target" && pwd)
jars=("$target"/slowpoint-service-*.jar)
if [[ ${#jars[@]} -ne 1 || ! -f ${jars[0]} ]]; then
  echo "expected one packaged jar in $target; maybe: mvn -q -DskipTests package" >&2
  exit 1
fi

work=$(mktemp -d)
pid=
cleanup() {
  if [[ -n $pid ]]; then kill "$pid" 2>/dev/null || true; fi
  rm -rf "$work"
}
trap cleanup EXIT

now_us() { echo "${EPOCHREALTIME/[.,]/}"; }

ready() { curl -sf -o "$work/readiness" "http://localhost:$MANAGEMENT/actuator/health/readiness"; }

# Starts the service with the arguments given and leaves: pid, started_ms, cpu_ms (time of the cores until then).
start() {
  if ready; then
    echo "something answers on port $MANAGEMENT already" >&2
    exit 1
  fi
  local begin
  begin=$(now_us)
  java "${OPTIONS[@]}" "$@" --server.port="$PORT" --management.server.port="$MANAGEMENT" > "$work/log" 2>&1 &
  pid=$!
  until ready; do
    if ! kill -0 "$pid" 2>/dev/null || (( $(now_us) - begin > LONGEST_S * 1000000 )); then
      echo "the service did not become ready:" >&2
      tail -n 20 "$work/log" >&2
      exit 1
    fi
    sleep 0.01
  done
  started_ms=$(( ($(now_us) - begin) / 1000 ))
  cpu_ms=$(awk -v hz="$(getconf CLK_TCK)" '{ print int(($14 + $15) * 1000 / hz) }' "/proc/$pid/stat")
}

stop() {
  kill "$pid"
  wait "$pid" || true
  pid=
}

# Cook plans of ever new sizes and setpoints, each third from the freezer, over one connection; prints the statuses.
plans() {
  local count=$1 seed=$2 i
  RANDOM=$seed
  for (( i = 0; i < count; i++ )); do
    local start=4
    if (( i % 3 == 0 )); then start=-18; fi
    if (( i > 0 )); then echo next; fi
    printf 'url = "http://localhost:%d/v1/cook-plans"\n' "$PORT"
    printf 'header = "Content-Type: application/json"\noutput = "/dev/null"\nwrite-out = "%%{http_code}\\n"\n'
    printf 'data = "{\\"food\\":{\\"id\\":\\"pork-loin\\"},\\"geometry\\":{\\"shape\\":\\"slab\\",\\"thicknessMm\\":%d.%d},' \
      $(( 15 + RANDOM % 40 )) $(( RANDOM % 10 ))
    printf '\\"start\\":{\\"temperatureC\\":%d},\\"surroundings\\":{\\"bath\\":{\\"setpointC\\":%d.%d}}}"\n' \
      "$start" $(( 56 + RANDOM % 9 )) $(( RANDOM % 10 ))
  done > "$work/plans-$seed"
  curl -s -K "$work/plans-$seed" > "$work/statuses-$seed"
}

load() {
  local count=$1 seed callers=()
  for seed in 1 2 3 4; do
    plans $(( count / 4 )) "$seed" &
    callers+=($!)
  done
  wait "${callers[@]}"
  if grep -qv '^200$' "$work"/statuses-[1-4]; then
    echo "not every cook plan was answered:" >&2
    sort "$work"/statuses-[1-4] | uniq -c >&2
    exit 1
  fi
}

memory_mb() { awk -v key="$1:" '$1 == key { printf "%d", $2 / 1024 }' "/proc/$pid/status"; }

median() { sort -n | awk '{ v[NR] = $1 } END { print NR % 2 ? v[(NR + 1) / 2] : int((v[NR / 2] + v[NR / 2 + 1]) / 2) }'; }

measure() {
  local what=$1 run
  shift
  : > "$work/starts"
  : > "$work/cpus"
  for (( run = 1; run <= RUNS; run++ )); do
    start "$@"
    echo "$started_ms" >> "$work/starts"
    echo "$cpu_ms" >> "$work/cpus"
    if (( run < RUNS )); then stop; fi
  done
  local idle
  idle=$(memory_mb VmRSS)
  load "$REQUESTS"
  printf '%-24s %10d %10d %10d %10d %10d\n' "$what" "$(median < "$work/starts")" "$(median < "$work/cpus")" \
    "$idle" "$(memory_mb VmRSS)" "$(memory_mb VmHWM)"
  stop
}

archive() {
  java -Djarmode=tools -jar "${jars[0]}" extract --destination "$work/extracted" > "$work/log" 2>&1
  start -XX:ArchiveClassesAtExit="$work/classes.jsa" -jar "$work/extracted/$(basename "${jars[0]}")"
  load 40
  stop
  if [[ ! -s $work/classes.jsa ]]; then
    echo "no class-data archive was written:" >&2
    tail -n 20 "$work/log" >&2
    exit 1
  fi
}

java -version 2>&1 | head -n 1
echo "medians of $RUNS starts, memory after $REQUESTS cook plans, JAVA_OPTS=${JAVA_OPTS:-}"
printf '%-24s %10s %10s %10s %10s %10s\n' "" "ready ms" "cpu ms" "idle MB" "RSS MB" "HWM MB"
measure "jar" -jar "${jars[0]}"
archive
measure "extracted" -jar "$work/extracted/$(basename "${jars[0]}")"
measure "extracted with archive" -XX:SharedArchiveFile="$work/classes.jsa" -jar "$work/extracted/$(basename "${jars[0]}")"
