#!/usr/bin/env bash
# Builds the image of the service and of the contract kit, runs both as strictly as the chart does, and tells what was
# seen: time to ready with and without the cache, memory, size by layer. Needs no Docker engine, but root, a JDK 25, Maven,
# curl, and
#   apt-get install --no-install-recommends buildah podman runc debootstrap
#
#   service/scripts/image.sh                   # everything, from source
#   service/scripts/image.sh --jar             # from the jars that are in the target folders already
#
#   STATE=folder       where base images and containers are kept between runs (a new temporary folder, removed at the end)
#   JAVA_HOME_25=      home of the JDK 25 whose runtime goes into the image (otherwise looked for under /usr/lib/jvm)
#   BUILD_IMAGE, JRE_IMAGE   base images to take instead of those that are put together here from Debian and the JDK
#   MAVEN_FLAGS=       arguments for Maven in the build stage
#   RUNS=3             starts of each kind; the median is told
#   PORT, MANAGEMENT   ports to use (18100, 18101)
set -euo pipefail

RUNS=${RUNS:-3}
PORT=${PORT:-18100}
MANAGEMENT=${MANAGEMENT:-18101}
LONGEST_S=180
root=$(cd "$(dirname "$0")/../.." && pwd)
from_jar=false
if [[ ${1:-} == --jar ]]; then from_jar=true; elif (( $# > 0 )); then
  sed -n '2,/^set/p' "$0" | sed '$d; s/^# \{0,1\}//' >&2
  exit 2
fi
for program in buildah podman runc curl mvn; do
  command -v "$program" > /dev/null || { echo "$program is missing; see the head of this script" >&2; exit 1; }
done

keep=${STATE:+true}
STATE=${STATE:-$(mktemp -d)}
mkdir -p "$STATE"
container=slowpoint-image-check
B=(buildah --storage-driver vfs --root "$STATE/root" --runroot "$STATE/run")
P=(podman --storage-driver vfs --root "$STATE/root" --runroot "$STATE/run" --cgroup-manager cgroupfs --runtime runc)
cleanup() {
  "${P[@]}" rm -f -i -t 0 "$container" > "$STATE/cleanup" 2>&1 || true
  if [[ $keep != true ]]; then rm -rf "$STATE"; fi
}
trap cleanup EXIT
fail() { echo "FAILED: $*" >&2; exit 1; }
now_us() { echo "${EPOCHREALTIME/[.,]/}"; }

# --- Base images, as those of the same names on a public registry: Debian with a Java runtime, and with JDK and Maven.
jdk25() {
  if [[ -n ${JAVA_HOME_25:-} ]]; then echo "$JAVA_HOME_25"; return; fi
  local home
  for home in "${JAVA_HOME:-}" /usr/lib/jvm/*; do
    if grep -qs '^JAVA_VERSION="25' "$home/release"; then echo "$home"; return; fi
  done
  fail "no JDK 25 found; set JAVA_HOME_25"
}

base_images() {
  if "${B[@]}" inspect --type image localhost/base-jdk:25 > "$STATE/inspected" 2>&1; then return; fi
  local jdk mirror maven
  jdk=$(jdk25)
  command -v debootstrap > /dev/null || fail "debootstrap is missing"
  # The mirror that this machine's own package manager uses.
  mirror=$(awk '/^URIs:/ { print $2; exit }' /etc/apt/sources.list.d/debian.sources)
  rm -rf "$STATE/base" && mkdir -p "$STATE/base/jdk" "$STATE/base/maven"
  debootstrap --variant=minbase bookworm "$STATE/base/rootfs" "$mirror" > "$STATE/debootstrap.log" 2>&1
  tar -C "$STATE/base/rootfs" --exclude=./dev --exclude=./proc --exclude=./sys --exclude=./var/cache/apt \
    --exclude=./etc/apt/sources.list -cf "$STATE/base/rootfs.tar" .
  "$jdk/bin/jlink" --add-modules java.se,jdk.unsupported,jdk.crypto.ec,jdk.jfr,jdk.management,jdk.management.agent,jdk.zipfs,jdk.localedata,jdk.naming.dns,jdk.httpserver,jdk.net \
    --strip-debug --no-man-pages --no-header-files --compress zip-6 --generate-cds-archive --output "$STATE/base/jre"
  # With -L: certificates and Maven's libraries are links into other folders of this machine.
  cp -rL "$jdk/." "$STATE/base/jdk"
  maven=$(mvn -version | sed -n 's/\x1b\[[0-9;]*m//g; s/^Maven home: //p')
  cp -rL "$maven/." "$STATE/base/maven"
  printf '%s\n' 'FROM scratch' 'ADD rootfs.tar /' 'COPY jre /opt/java/openjdk' \
    'ENV JAVA_HOME=/opt/java/openjdk PATH=/opt/java/openjdk/bin:/usr/sbin:/usr/bin:/sbin:/bin' > "$STATE/base/jre.dockerfile"
  printf '%s\n' 'FROM scratch' 'ADD rootfs.tar /' 'COPY jdk /opt/java/openjdk' 'COPY maven /usr/share/maven' \
    'ENV JAVA_HOME=/opt/java/openjdk PATH=/opt/java/openjdk/bin:/usr/share/maven/bin:/usr/sbin:/usr/bin:/sbin:/bin' \
    > "$STATE/base/jdk.dockerfile"
  local name
  for name in jre jdk; do
    "${B[@]}" bud --isolation chroot -q -t "localhost/base-$name:25" -f "$STATE/base/$name.dockerfile" "$STATE/base" > "$STATE/base.log" 2>&1 \
      || { tail -n 20 "$STATE/base.log" >&2; fail "base image $name"; }
  done
}

if [[ -z ${BUILD_IMAGE:-} || -z ${JRE_IMAGE:-} ]]; then
  base_images
  BUILD_IMAGE=localhost/base-jdk:25
  JRE_IMAGE=localhost/base-jre:25
fi

# --- The images.
dockerfile=$root/Dockerfile
context=$root
if [[ $from_jar == true ]]; then
  # The first stage alone is replaced, by the jars that it would have built.
  context=$STATE/context
  rm -rf "$context" && mkdir -p "$context/packaged"
  cp "$root"/service/target/slowpoint-service-*.jar "$context/packaged/app.jar"
  cp "$root"/api-spec/target/slowpoint-api-spec-*-kit.jar "$context/packaged/kit.jar"
  cp "$root"/service/target/classes/META-INF/sbom/application.cdx.json "$context/packaged/sbom.cdx.json"
  dockerfile=$STATE/Dockerfile
  awk '/^FROM/ { stage++ } stage == 1 { if (/^FROM/) print "FROM scratch AS build\nCOPY packaged /packaged\n"; next } { print }' \
    "$root/Dockerfile" > "$dockerfile"
fi
build() {
  local tag=$1
  shift
  # The libraries that this machine's Maven has, instead of the engine's cache, which is empty here. Not with -o: the bill
  # of materials is not made without a network.
  "${B[@]}" bud --isolation chroot --pull-never --format docker --layers \
    --volume "$HOME/.m2:/root/.m2" --build-arg MAVEN_FLAGS="${MAVEN_FLAGS:-}" \
    --build-arg BUILD_IMAGE="$BUILD_IMAGE" --build-arg JRE_IMAGE="$JRE_IMAGE" --build-arg TRAINING_PORT="$PORT" \
    --build-arg REVISION="$(git -C "$root" rev-parse HEAD)" -t "$tag" -f "$dockerfile" "$@" "$context" > "$STATE/build.log" 2>&1 \
    || { tail -n 40 "$STATE/build.log" >&2; fail "the build of $tag"; }
}
began=$(now_us)
build localhost/slowpoint:check
build_s=$(( ($(now_us) - began) / 1000000 ))
build localhost/slowpoint-kit:check --target kit

# --- Runs.
# The health check is asked for below: on a timer, podman needs systemd.
STRICT=(--rm --no-healthcheck --pull never --network host --ulimit nofile=20000:20000 --ulimit nproc=4096:4096
  --memory 512m --cpus 1 --read-only --tmpfs /tmp:size=64m --cap-drop ALL --security-opt no-new-privileges)
# Open, which listens on the loopback interface alone: the container has that of this machine.
SETTING=(-e SLOWPOINT_ACCESS_MODE=open -e SERVER_ADDRESS=127.0.0.1 -e SERVER_PORT="$PORT" -e MANAGEMENT_SERVER_PORT="$MANAGEMENT")

ready() { curl -sf -o "$STATE/readiness" "http://127.0.0.1:$PORT/readyz"; }

# Starts with more arguments of podman and leaves pid and started_ms. The time counts from when the JVM was started.
start() {
  ready && fail "something answers on port $PORT already"
  "${P[@]}" run -d --name "$container" "${STRICT[@]}" "${SETTING[@]}" "$@" > "$STATE/id"
  pid=$("${P[@]}" inspect --format '{{.State.Pid}}' "$container")
  local begin
  begin=$(now_us)
  until ready; do
    if ! kill -0 "$pid" 2>/dev/null || (( $(now_us) - begin > LONGEST_S * 1000000 )); then
      "${P[@]}" logs "$container" 2>&1 | tail -n 20 >&2 || true
      fail "the container did not become ready"
    fi
    sleep 0.01
  done
  # Since the process was made, by the kernel's own clock.
  started_ms=$(awk -v hz="$(getconf CLK_TCK)" -v up="$(cut -d' ' -f1 /proc/uptime)" '{ print int((up - $22 / hz) * 1000) }' "/proc/$pid/stat")
  cpu_ms=$(awk -v hz="$(getconf CLK_TCK)" '{ print int(($14 + $15) * 1000 / hz) }' "/proc/$pid/stat")
}
stop() { "${P[@]}" stop -t 40 "$container" > "$STATE/stopped"; }
median() { sort -n | awk '{ v[NR] = $1 } END { print NR % 2 ? v[(NR + 1) / 2] : int((v[NR / 2] + v[NR / 2 + 1]) / 2) }'; }
memory_mb() { awk -v key="$1:" '$1 == key { printf "%d", $2 / 1024 }' "/proc/$pid/status"; }
measure() {
  local run
  : > "$STATE/starts"
  : > "$STATE/cpus"
  for (( run = 1; run <= RUNS; run++ )); do
    start "$@"
    echo "$started_ms" >> "$STATE/starts"
    echo "$cpu_ms" >> "$STATE/cpus"
    stop
  done
  measured="$(median < "$STATE/starts") ms ($(median < "$STATE/cpus") ms of the cores)"
}
measure --entrypoint '["java", "-XX:Flags=/app/jvm.flags", "-jar", "/app/app.jar"]' localhost/slowpoint:check
without=$measured
measure localhost/slowpoint:check
with=$measured

# --- What the chart and its users rely on.
start localhost/slowpoint:check
idle_mb=$(memory_mb VmRSS)
uid=$(awk '$1 == "Uid:" { print $2 }' "/proc/$pid/status")
[[ $uid == 10001 ]] || fail "it runs as user $uid"
[[ $(awk '$1 == "CapEff:" { print $2 }' "/proc/$pid/status") =~ ^0+$ ]] || fail "it has capabilities"
[[ $(awk '$1 == "NoNewPrivs:" { print $2 }' "/proc/$pid/status") == 1 ]] || fail "it may gain privileges"
grep -q '^[^ ]* / [^ ]* ro[, ]' "/proc/$pid/mounts" || fail "its root can be written"
"${P[@]}" exec "$container" java -Xmx16m -cp /app/app.jar dev.slowpoint.ops.HealthProbe || fail "the health check says no"
if "${P[@]}" exec -e SERVER_PORT=1 "$container" java -Xmx16m -cp /app/app.jar dev.slowpoint.ops.HealthProbe 2> "$STATE/refused"; then
  fail "the health check says yes where nothing listens"
fi
"${P[@]}" image inspect --format '{{json .HealthCheck}}' localhost/slowpoint:check > "$STATE/config"
grep -q HealthProbe "$STATE/config" || fail "the image has no health check"
example=$root/api-spec/examples/cook-plan-pork-loin.request.json
ask() { curl -sf -H 'Content-Type: application/json' --data-binary "@$example" "http://127.0.0.1:$PORT/v1/cook-plans"; }
ask > "$STATE/plan" && grep -q '"takeOut"' "$STATE/plan" || fail "no plan for $example"
"${P[@]}" run --name "$container-kit" "${STRICT[@]}" localhost/slowpoint-kit:check --base-url "http://127.0.0.1:$PORT" \
  --tags smoke --report /tmp/report > "$STATE/kit" || fail "the kit: $(tail -n 20 "$STATE/kit")"
"${P[@]}" logs "$container" > "$STATE/log" 2> "$STATE/errors"
if [[ ! -s $STATE/log ]] || grep -qv '^{.*"ecs":' "$STATE/log"; then fail "the log is not structured: $(head -n 3 "$STATE/log")"; fi
for (( i = 0; i < 2000; i++ )); do
  echo "url = \"http://127.0.0.1:$PORT/v1/cook-plans\""
  printf 'header = "Content-Type: application/json"\ndata-binary = "@%s"\noutput = "/dev/null"\nwrite-out = "%%{http_code}\\n"\nnext\n' "$example"
done | sed '$d' > "$STATE/plans"
curl -s -K "$STATE/plans" | sort | uniq -c > "$STATE/statuses"
[[ $(awk '{ print $1, $2 }' "$STATE/statuses") == "2000 200" ]] || fail "not every plan was answered: $(cat "$STATE/statuses")"
loaded_mb=$(memory_mb VmRSS)

# A stop while a long request is worked on: it is answered, and the process ends by the signal, not by force.
table=$(ls "$root"/api-spec/examples/lookup-table-*.request.json | sed -n 1p)
curl -s -o "$STATE/table" -w '%{http_code}' -H 'Content-Type: application/json' --data-binary "@$table" \
  "http://127.0.0.1:$PORT/v1/lookup-tables" > "$STATE/table-status" & asker=$!
sleep 0.3
kill -0 "$asker" 2>/dev/null || fail "the long request was over before the stop"
began=$(now_us)
"${P[@]}" kill -s TERM "$container" > "$STATE/killed"
wait "$asker" || fail "the request under way was cut off"
[[ $(cat "$STATE/table-status") == 200 ]] || fail "the request under way got $(cat "$STATE/table-status")"
while kill -0 "$pid" 2>/dev/null; do
  (( $(now_us) - began < 30 * 1000000 )) || fail "it did not end within 30 s"
  sleep 0.05
done
stop_ms=$(( ($(now_us) - began) / 1000 ))

echo "base images: $BUILD_IMAGE, $JRE_IMAGE; $(nproc) cores, load $(cut -d' ' -f1 /proc/loadavg); container: 512 MB, 1 core, read-only root"
echo "build: $build_s s"
echo "ready without cache: $without"
echo "ready with cache:    $with"
echo "memory: $idle_mb MB when ready, $loaded_mb MB after 2000 plans"
echo "stop with a request under way: answered, ended after $stop_ms ms"
echo "size by layer, last first:"
"${P[@]}" history --format '{{.Size}}  {{.CreatedBy}}' localhost/slowpoint:check | grep -v '^0 B' | cut -c1-110
