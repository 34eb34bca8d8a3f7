#!/usr/bin/env bash
# What each operation of the contract costs with its example requests, by the packaged service: a table in Markdown.
#
#   mvn -q -DskipTests package && service/scripts/costs.sh
#
#   SECONDS_EACH=2      of each request; half as long before, for the compiler
#   also those of service.sh
set -euo pipefail
source "$(dirname "$0")/service.sh"
SECONDS_EACH=${SECONDS_EACH:-2}

start 0
where
tool LoadGenerator "$PORT" /v1/cook-plans 2 10 0 0 > "$work/warm"
tool EndpointCosts "$PORT" "$examples" "$pid" "$SECONDS_EACH"
stop "$pid"
