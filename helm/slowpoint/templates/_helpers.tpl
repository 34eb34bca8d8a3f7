{{/* Fifty characters leave room for the longest ending within 63. */}}
{{- define "slowpoint.name" -}}
{{- if contains "slowpoint" .Release.Name -}}
{{- .Release.Name | trunc 50 | trimSuffix "-" -}}
{{- else -}}
{{- printf "%s-slowpoint" (.Release.Name | trunc 40 | trimSuffix "-") -}}
{{- end -}}
{{- end -}}

{{- define "slowpoint.selector" -}}
app.kubernetes.io/name: slowpoint
app.kubernetes.io/instance: {{ .Release.Name }}
app.kubernetes.io/component: service
{{- end -}}

{{- define "slowpoint.labels" -}}
{{ include "slowpoint.selector" . }}
app.kubernetes.io/version: {{ .Chart.AppVersion | quote }}
app.kubernetes.io/managed-by: {{ .Release.Service }}
helm.sh/chart: {{ printf "%s-%s" .Chart.Name .Chart.Version | replace "+" "_" }}
{{- end -}}

{{/* Of a dict with image and version. */}}
{{- define "slowpoint.image" -}}
{{- if .image.digest -}}
{{ .image.repository }}@{{ .image.digest }}
{{- else -}}
{{ .image.repository }}:{{ .image.tag | default .version }}
{{- end -}}
{{- end -}}

{{- define "slowpoint.fewest" -}}
{{- ternary .Values.autoscaling.min .Values.replicas .Values.autoscaling.enabled -}}
{{- end -}}

{{- define "slowpoint.overlayMap" -}}
{{- .Values.overlay.configMap | default (ternary (printf "%s-overlay" (include "slowpoint.name" .)) "" (gt (len .Values.overlay.files) 0)) -}}
{{- end -}}

{{- define "slowpoint.mebibytes" -}}
{{- if hasSuffix "Gi" . -}}{{ mul 1024 (trimSuffix "Gi" . | int) }}{{- else -}}{{ trimSuffix "Mi" . | int }}{{- end -}}
{{- end -}}

{{- define "slowpoint.containerSecurity" -}}
allowPrivilegeEscalation: false
readOnlyRootFilesystem: true
capabilities:
  drop: ["ALL"]
{{- end -}}

{{- define "slowpoint.podSecurity" -}}
runAsNonRoot: true
runAsUser: 10001
runAsGroup: 10001
fsGroup: 10001
seccompProfile:
  type: RuntimeDefault
{{- end -}}

{{/* What a schema cannot say: values that must fit each other. */}}
{{- define "slowpoint.check" -}}
{{- $v := .Values -}}
{{- if and (eq $v.access.mode "jwt") (not (and $v.access.jwt.issuerUri $v.access.jwt.jwkSetUri $v.access.jwt.audience)) -}}
{{- fail "access.jwt: with access.mode=jwt, set issuerUri, jwkSetUri and audience" -}}
{{- end -}}
{{- if and (eq $v.access.mode "jwt") $v.networkPolicy.enabled (not $v.networkPolicy.keySet.cidr) -}}
{{- fail "networkPolicy.keySet.cidr: with access.mode=jwt, say where the key set is fetched from" -}}
{{- end -}}
{{- if and $v.tracing.endpoint $v.networkPolicy.enabled (not $v.networkPolicy.tracing.namespace) -}}
{{- fail "networkPolicy.tracing.namespace: with tracing.endpoint, say where the collector is" -}}
{{- end -}}
{{- if and $v.overlay.configMap (gt (len $v.overlay.files) 0) -}}
{{- fail "overlay: set files or configMap, not both" -}}
{{- end -}}
{{- if gt (int $v.limits.longestRequestS) (int $v.limits.longestLargeRequestS) -}}
{{- fail "limits.longestRequestS: at most limits.longestLargeRequestS" -}}
{{- end -}}
{{- if ge (int $v.limits.longestLargeRequestS) (int $v.shutdown.graceS) -}}
{{- fail "limits.longestLargeRequestS: less than shutdown.graceS, or a stop cuts requests off" -}}
{{- end -}}
{{- if gt (int $v.autoscaling.min) (int $v.autoscaling.max) -}}
{{- fail "autoscaling.min: at most autoscaling.max" -}}
{{- end -}}
{{- if ne $v.resources.requests.memory $v.resources.limits.memory -}}
{{- fail "resources.requests.memory: equal to resources.limits.memory" -}}
{{- end -}}
{{- if gt (mul 100 (int $v.jvm.heapMi)) (mul 45 (include "slowpoint.mebibytes" $v.resources.limits.memory | int)) -}}
{{- fail "jvm.heapMi: at most 45 % of resources.limits.memory" -}}
{{- end -}}
{{- end -}}
