# What the scripts beside this file share: they source it. It starts the packaged service, waits until it is ready, reads what
# Linux says about it, and stops it. Needs bash 5, curl, java and Linux' /proc; builds nothing.
#
#   PORT, MANAGEMENT   ports to use (18080, 19090); a second instance takes the next ones
#   JAVA               the program that runs the service (java)
#   JAVA_OPTS          arguments of the JVM ("-XX:+UseSerialGC -Xmx160m")

PORT=${PORT:-18080}
MANAGEMENT=${MANAGEMENT:-19090}
JAVA=${JAVA:-java}
read -r -a OPTIONS <<< "${JAVA_OPTS:--XX:+UseSerialGC -Xmx160m}"
LONGEST_START_S=300

scripts=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
target=$scripts/../target
examples=$scripts/../../api-spec/examples
jars=("$target"/slowpoint-service-*.jar)
if [[ ${#jars[@]} -ne 1 || ! -f ${jars[0]} || ! -d $target/test-classes ]]; then
  echo "expected one packaged jar and the compiled tests in $target; maybe: mvn -q -DskipTests package" >&2
  exit 1
fi
jar=${jars[0]}

work=$(mktemp -d)
pids=()
cleanup() {
  local one
  for one in "${pids[@]}"; do kill "$one" 2>/dev/null || true; done
  rm -rf "$work"
}
trap cleanup EXIT

ready() { curl -sf -o "$work/readiness" "http://127.0.0.1:${1:-$MANAGEMENT}/actuator/health/readiness"; }

# Starts an instance: its number, from 0, then more arguments. WITHIN, an array, is put before the command. Leaves pid.
start() {
  local number=$1 management begin=$SECONDS
  shift
  management=$(( MANAGEMENT + number ))
  if ready "$management"; then
    echo "something answers on port $management already" >&2
    exit 1
  fi
  "${WITHIN[@]}" "$JAVA" "${OPTIONS[@]}" -jar "$jar" --server.port=$(( PORT + number )) \
    --management.server.port="$management" "$@" > "$work/log-$number" 2>&1 &
  pid=$!
  pids+=("$pid")
  until ready "$management"; do
    if ! kill -0 "$pid" 2>/dev/null || (( SECONDS - begin > LONGEST_START_S )); then
      echo "the service did not become ready:" >&2
      tail -n 20 "$work/log-$number" >&2
      exit 1
    fi
    sleep 0.1
  done
}
WITHIN=()

# Stops the process with that id and leaves its exit code in code.
stop() {
  kill "$1"
  code=0
  wait "$1" || code=$?
  local one kept=()
  for one in "${pids[@]}"; do
    if [[ $one != "$1" ]]; then kept+=("$one"); fi
  done
  pids=("${kept[@]}")
}

# A program of the compiled tests: name of its class in dev.slowpoint.bench, arguments.
tool() {
  local name=$1
  shift
  java -Xmx256m -cp "$target/test-classes:$work/libraries/*" "dev.slowpoint.bench.$name" "$@"
}

# What of the service's libraries such programs need.
libraries() {
  mkdir -p "$work/libraries" "$work/unpacked"
  (cd "$work/unpacked" && jar_tool xf "$jar" BOOT-INF/lib)
  mv "$work"/unpacked/BOOT-INF/lib/jackson-*.jar "$work/libraries/"
}
jar_tool() { "$(dirname "$(readlink -f "$(command -v java)")")/jar" "$@"; }

# One value of a line of name=value: value NAME LINE.
value() { tr ' ' '\n' <<< "$2" | sed -n "s/^$1=//p"; }

median() { sort -g | awk '{ v[NR] = $1 } END { if (NR) print NR % 2 ? v[(NR + 1) / 2] : (v[NR / 2] + v[NR / 2 + 1]) / 2 }'; }

memory_mb() { awk -v key="$2:" '$1 == key { printf "%d", $2 / 1024 }' "/proc/$1/status"; }

# Milliseconds that the processors worked for a process.
cpu_ms() { awk -v hz="$(getconf CLK_TCK)" '{ sub(/.*\) /, ""); print int(($12 + $13) * 1000 / hz) }' "/proc/$1/stat"; }

# In brackets: without them awk takes a comparison for the name of a file to write to.
calc() { awk "BEGIN { printf \"${2:-%.2f}\", ($1) }"; }

where() {
  echo "$("$JAVA" -version 2>&1 | head -n 1), $(nproc) cores, load average $(cut -d' ' -f1 /proc/loadavg), JAVA_OPTS=${OPTIONS[*]}"
}
