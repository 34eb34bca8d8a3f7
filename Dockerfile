# Builds the service and packs it in layers that change rarely first. Runs as a plain user without a shell login.
FROM maven:3.9-eclipse-temurin-25 AS build
WORKDIR /src
COPY . .
RUN mvn -q -B -DskipTests package \
 && java -Djarmode=tools -jar service/target/slowpoint-service-0.1.0.jar extract --layers --destination /layers

FROM eclipse-temurin:25-jre
RUN useradd --uid 10001 --no-create-home --shell /usr/sbin/nologin slowpoint
WORKDIR /app
COPY --from=build /layers/dependencies/ ./
COPY --from=build /layers/spring-boot-loader/ ./
COPY --from=build /layers/snapshot-dependencies/ ./
COPY --from=build /layers/application/ ./
USER 10001
EXPOSE 8080 9090
ENTRYPOINT ["java", "-XX:MaxRAMPercentage=60", "-jar", "slowpoint-service-0.1.0.jar"]
