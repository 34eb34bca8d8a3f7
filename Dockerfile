# Two images: the service, and with --target kit the contract kit that tests it.
#
#   docker build -t slowpoint:0.1.0 .
#   docker build -t slowpoint-kit:0.1.0 --target kit .
#
# Layers that change rarely come first: system, libraries, application, cache. Pin the base images by digest where your
# registry has them: --build-arg JRE_IMAGE=eclipse-temurin@sha256:...
ARG BUILD_IMAGE=maven:3.9-eclipse-temurin-25
ARG JRE_IMAGE=eclipse-temurin:25-jre

FROM ${BUILD_IMAGE} AS build
WORKDIR /src
COPY .mvn .mvn
COPY pom.xml ./
COPY api-spec api-spec
COPY service service
# Further arguments, such as -s for settings. Not -o: without a network no bill of materials is made.
ARG MAVEN_FLAGS=
RUN --mount=type=cache,target=/root/.m2 \
    mvn -q -B -ntp ${MAVEN_FLAGS} -Dmaven.test.skip=true -Dspotless.check.skip=true package \
 && mkdir /packaged \
 && cp service/target/slowpoint-service-*.jar /packaged/app.jar \
 && cp api-spec/target/slowpoint-api-spec-*-kit.jar /packaged/kit.jar \
 && cp service/target/classes/META-INF/sbom/application.cdx.json /packaged/sbom.cdx.json

# The jar in layers. One time for all files: builds of one commit can be compared, and the cache below, which checks the
# times of its jars, fits.
FROM ${JRE_IMAGE} AS layers
COPY --from=build /packaged/app.jar /packaged/app.jar
RUN java -Djarmode=tools -jar /packaged/app.jar extract --layers --application-filename app.jar --destination /layers \
 && find /layers -exec touch -d 2026-01-01T00:00:00Z {} +

FROM ${JRE_IMAGE} AS kit
LABEL org.opencontainers.image.title="Slowpoint contract kit" \
      org.opencontainers.image.description="Tests a server against the Slowpoint contract." \
      org.opencontainers.image.licenses="Apache-2.0"
COPY --from=build /packaged/kit.jar /app/kit.jar
USER 10001:10001
WORKDIR /tmp
ENTRYPOINT ["java", "-jar", "/app/kit.jar"]

FROM ${JRE_IMAGE} AS app
# The flags are defaults: what JAVA_TOOL_OPTIONS says comes later and wins, for example -Xmx256m. A virtual machine that is
# out of memory ends, so that whoever started it starts it anew.
RUN groupadd --gid 10001 slowpoint \
 && useradd --uid 10001 --gid 10001 --no-create-home --home-dir /nonexistent --shell /usr/sbin/nologin slowpoint \
 && mkdir -p /app /etc/slowpoint \
 && printf '%s\n' +UseSerialGC MaxHeapSize=128m +ExitOnOutOfMemoryError -UsePerfData > /app/jvm.flags
WORKDIR /app
COPY --from=layers /layers/dependencies/ ./
COPY --from=layers /layers/spring-boot-loader/ ./
COPY --from=layers /layers/snapshot-dependencies/ ./
COPY --from=layers /layers/application/ ./

# A training run that starts, rehearses and answers the kit's quick tests: what it loaded, linked and found hot is kept.
FROM app AS trained
ARG TRAINING_PORT=8080
COPY --from=build /packaged/kit.jar /kit/kit.jar
USER 10001:10001
RUN export SLOWPOINT_ACCESS_MODE=open SERVER_ADDRESS=127.0.0.1 SERVER_PORT=${TRAINING_PORT} \
      MANAGEMENT_SERVER_ADDRESS=127.0.0.1 MANAGEMENT_SERVER_PORT=0; \
    java -XX:Flags=/app/jvm.flags -XX:AOTCacheOutput=/tmp/app.aot -jar app.jar & service=$!; \
    ready=false; \
    for second in $(seq 180); do \
      kill -0 $service || exit 1; \
      if java -cp app.jar dev.slowpoint.ops.HealthProbe; then ready=true; break; fi; \
      sleep 1; \
    done; \
    $ready && java -jar /kit/kit.jar --base-url http://127.0.0.1:${TRAINING_PORT} --tags smoke --report /tmp/report \
      || { kill $service; exit 1; }; \
    kill $service; wait $service; \
    test -s /tmp/app.aot

FROM app
ARG VERSION=0.1.0
ARG REVISION=
LABEL org.opencontainers.image.title="Slowpoint" \
      org.opencontainers.image.description="Time plans, safety margins and texture windows for food in a water bath." \
      org.opencontainers.image.licenses="Apache-2.0" \
      org.opencontainers.image.version="${VERSION}" \
      org.opencontainers.image.revision="${REVISION}"
COPY --from=build /packaged/sbom.cdx.json /app/sbom.cdx.json
COPY --from=trained /tmp/app.aot /app/app.aot
# Whoever runs it chooses how callers are known: keys (hashed, in this file) or jwt.
ENV LOGGING_STRUCTURED_FORMAT_CONSOLE=ecs \
    SLOWPOINT_ACCESS_MODE=keys \
    SLOWPOINT_ACCESS_KEYSFILE=/etc/slowpoint/keys/keys.csv
USER 10001:10001
EXPOSE 8080 9090
STOPSIGNAL SIGTERM
HEALTHCHECK --interval=15s --timeout=5s --start-period=30s --retries=3 \
    CMD ["java", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xmx16m", "-cp", "/app/app.jar", "dev.slowpoint.ops.HealthProbe"]
ENTRYPOINT ["java", "-XX:Flags=/app/jvm.flags", "-XX:AOTCache=/app/app.aot", "-jar", "/app/app.jar"]
