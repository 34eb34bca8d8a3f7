#!/usr/bin/env bash
# Whether the packaged service answers the same bytes after a restart, on other JVMs, with one thread and with sixteen, with
# sixteen processors, and while the clock of the calendar jumps forward and back (jumping-clock.c, where there is a compiler).
#
#   mvn -q -DskipTests package && service/scripts/same-answers.sh
#
#   JVMS="java /path/to/other/bin/java"   programs to compare; JAVA is the first of them
#   also those of service.sh
set -euo pipefail
source "$(dirname "$0")/service.sh"
read -r -a JVMS <<< "${JVMS:-$JAVA}"

expected=
compare() {
  local what=$1 threads=$2 rounds=$3 line
  line=$(tool SameAnswers "$PORT" "$examples" "$threads" "$rounds")
  printf '%-56s %s\n' "$what" "$line"
  if [[ -z $expected ]]; then
    expected=$line
  elif [[ $line != "$expected" ]]; then
    echo "these are other answers" >&2
    exit 1
  fi
}

for JAVA in "${JVMS[@]}"; do
  name=$("$JAVA" -version 2>&1 | head -n 1)
  start 0
  compare "$name" 1 1
  compare "$name, 16 threads" 16 2
  stop "$pid"
  start 0
  compare "$name, started again" 4 1
  stop "$pid"
  OPTIONS+=(-XX:ActiveProcessorCount=16)
  start 0 --slowpoint.limits.threads-per-core=1
  compare "$name, 16 processors" 16 1
  stop "$pid"
  unset 'OPTIONS[-1]'
done

if ! command -v cc > "$work/where"; then
  echo "no compiler for C here: the clock was left alone"
  exit 0
fi
cc -shared -fPIC -o "$work/jumping-clock.so" "$scripts/jumping-clock.c" -ldl
JAVA=${JVMS[0]}
WITHIN=(env LD_PRELOAD="$work/jumping-clock.so")
start 0
WITHIN=()
compare "the clock jumps each second, by up to 400 days" 4 2
# What is waited for with patience is still given up, neither at once nor never.
begin=$SECONDS
exec 3<> "/dev/tcp/127.0.0.1/$PORT"
printf 'POST /v1/cook-plans HTTP/1.1\r\nHost: a\r\nContent-Type: application/json\r\nContent-Length: 50\r\n\r\n{' >&3
status=none
read -r -t 60 status <&3 || true
exec 3>&-
echo "a body that stops coming is answered \"${status%$'\r'}\" after $(( SECONDS - begin )) s"
if [[ $status != *" 408"* ]] || (( SECONDS - begin < 8 || SECONDS - begin > 40 )); then exit 1; fi
stop "$pid"
if [[ $code -ne 143 ]]; then
  echo "the service did not stop as it should while its clock jumped: $code" >&2
  exit 1
fi
