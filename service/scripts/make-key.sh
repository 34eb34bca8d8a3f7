#!/usr/bin/env bash
# Makes a key and its line for the file of keys. The key goes to standard error, to be handed to the client and kept by
# nobody else; the line goes to standard output, to be appended to the file. Needs bash, openssl and sha256sum.
#
#   service/scripts/make-key.sh CLIENT >> keys.csv
#
#   PER_SECOND=5       units of work that come back each second
#   BURST=40           units that may be spent at once after a rest; 20 at least
#   AT_ONCE=4          requests under way together
#   FROM=, UNTIL=      days or moments in UTC: 2026-12-31 or 2026-12-31T22:00:00Z
set -euo pipefail

client=${1:-}
if [[ ! $client =~ ^[a-z0-9][a-z0-9-]{0,39}$ ]]; then
  echo "usage: make-key.sh CLIENT   (1 to 40 of a-z, 0-9 and -)" >&2
  exit 2
fi
key=spk_$(openssl rand -base64 32 | tr '+/' '-_' | tr -d '=\n')
hash=$(printf %s "$key" | sha256sum | cut -d ' ' -f 1)
echo "key of $client: $key" >&2
echo "$client,$hash,${PER_SECOND:-5},${BURST:-40},${AT_ONCE:-4},${FROM:-},${UNTIL:-}"
