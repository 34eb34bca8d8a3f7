#!/usr/bin/env bash
# Reports on the libraries that the packaged service brings: version and licence of each, whether a newer release of those
# we name ourselves exists, licences that are not on the allow list, and what a vulnerability scanner says if one is
# installed. Reads the bill of materials (CycloneDX, JSON) in the packaged jar. Needs bash, jq and unzip, and Maven with
# Maven Central in reach for the newer releases.
#
#   mvn -q -DskipTests package && service/scripts/dependency-check.sh
#
#   SBOM=file          a bill of materials to read instead of that in the jar
#   NEWER=no           leaves Maven Central alone
#
# Ends with 1 if a licence is not allowed, or a scanner finds something; with 2 if there is nothing to read.
set -euo pipefail

# Any of these is enough where a library may be taken under several.
ALLOWED='^(Apache-2\.0|MIT|MIT-0|BSD-2-Clause|BSD-3-Clause|EPL-1\.0|EPL-2\.0|CC0-1\.0|ISC|Public Domain, per Creative Commons CC0)$'

root=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

for program in jq unzip; do
  command -v "$program" > /dev/null || { echo "$program is not installed" >&2; exit 2; }
done

sbom=${SBOM:-}
if [[ -z $sbom ]]; then
  sbom=$work/sbom.json
  jars=("$root"/service/target/slowpoint-service-*.jar)
  if [[ ! -f ${jars[0]} ]] || ! unzip -p "${jars[0]}" META-INF/sbom/application.cdx.json > "$sbom" 2> /dev/null; then
    echo "no bill of materials in a packaged jar under service/target; maybe: mvn -q -DskipTests package" >&2
    exit 2
  fi
fi
if [[ $(jq '.components | length' "$sbom") -eq 0 ]]; then
  echo "the bill of materials is empty" >&2
  exit 2
fi

jq -r '.components[]
  | [((.group // "") + ":" + .name), .version,
     ([.licenses[]? | .license.id // .license.name // .expression] | if length == 0 then "none told" else join(" | ") end)]
  | @tsv' "$sbom" | sort > "$work/libraries"

echo "libraries: $(wc -l < "$work/libraries")"
awk -F '\t' '{ printf "  %-70s %-16s %s\n", $1, $2, $3 }' "$work/libraries"

# A library may have several licences; one on the list will do.
awk -F '\t' -v allowed="$ALLOWED" '{
  found = 0; n = split($3, each, / \| | OR /)
  for (i = 1; i <= n; i++) if (each[i] ~ allowed) found = 1
  if (!found) print "  " $1 " " $2 ": " $3
}' "$work/libraries" > "$work/refused"
failed=0
if [[ -s $work/refused ]]; then
  echo "licences that are not on the list:"
  cat "$work/refused"
  failed=1
else
  echo "licences: all on the list"
fi

if [[ ${NEWER:-yes} == yes ]]; then
  # Those we name ourselves, and the parent that names the versions of all others.
  if (cd "$root" && mvn -q -N -B -Dversions.outputFile="$work/parent" \
        org.codehaus.mojo:versions-maven-plugin:2.21.0:display-parent-updates > "$work/parent.log" 2>&1) &&
      (cd "$root" && mvn -B -pl service -DprocessDependencyManagement=false -DprocessPluginDependencies=false \
        -DallowSnapshots=false "-Dmaven.version.ignore=(?i).*[.-](alpha|beta|m|rc|cr)[0-9.-]*" \
        org.codehaus.mojo:versions-maven-plugin:2.21.0:display-dependency-updates > "$work/newer.log" 2>&1); then
    echo "newer releases of what we name ourselves:"
    # Long names stand on a line of their own before their versions.
    awk '/\.\.\.$/ { name = $2; next } / -> / { sub(/^\[INFO\] +/, ""); gsub(/\.{3,}/, ""); print "  " (/:/ ? "" : name " ") $0 }' \
      "$work/newer.log" | sort -u > "$work/newer"
    if [[ -s $work/newer ]]; then cat "$work/newer"; else echo "  none"; fi
    grep -h -- ' -> ' "$work/parent" "$work/parent.log" 2> /dev/null | sed 's/^\[INFO\] */  parent: /' | sort -u || true
  else
    echo "newer releases: not asked, Maven could not run the plugin:"
    tail -n 3 "$work/newer.log" 2> /dev/null || tail -n 3 "$work/parent.log"
  fi
fi

if command -v trivy > /dev/null; then
  echo "trivy:"
  trivy sbom --quiet --exit-code 1 "$sbom" || failed=1
elif command -v grype > /dev/null; then
  echo "grype:"
  grype "sbom:$sbom" --fail-on low || failed=1
elif command -v osv-scanner > /dev/null; then
  echo "osv-scanner:"
  osv-scanner scan --sbom "$sbom" || failed=1
else
  echo "vulnerabilities: NOT LOOKED FOR, no scanner (trivy, grype, osv-scanner) is installed"
fi
exit "$failed"
