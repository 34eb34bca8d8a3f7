#!/usr/bin/env bash
# Sends many requests that were damaged at random, in JSON and CBOR, always the same ones, over HTTP to the service, and checks
# of each answer that it is a problem that names each fault, or a plan; never a 5xx, never late.
#
#   service/scripts/bad-requests.sh
#
#   REQUESTS=100000
set -euo pipefail
cd "$(dirname "$0")/../.."
mvn -q -o -pl service -am test -Dtest=BadRequestSweepTest -Dsweep.requests="${REQUESTS:-100000}" \
  -Dsurefire.failIfNoSpecifiedTests=false
grep -h -o '<testsuite [^>]*>' service/target/surefire-reports/TEST-dev.slowpoint.api.BadRequestSweepTest.xml |
  grep -o ' \(time\|tests\|errors\|failures\)="[^"]*"'
