#include "slowpoint.h"

#include <cjson/cJSON.h>
#include <math.h>
#include <string.h>

/* Fourteen days: no time of the contract is longer. */
#define LONGEST_S 1209600

static const char CUT_OFF[] = " [...]";

bool slowpoint_write_question(const struct slowpoint_question *question, char *buffer, size_t size) {
    /* cJSON would write null, and a null is refused by the service. */
    if (!isfinite(question->thickness_mm) || !isfinite(question->start_c) || !isfinite(question->setpoint_c)) {
        return false;
    }
    cJSON *body = cJSON_CreateObject();
    cJSON *food = cJSON_AddObjectToObject(body, "food");
    cJSON *geometry = cJSON_AddObjectToObject(body, "geometry");
    cJSON *start = cJSON_AddObjectToObject(body, "start");
    cJSON *bath = cJSON_AddObjectToObject(cJSON_AddObjectToObject(body, "surroundings"), "bath");
    /* Whatever found no memory is NULL, and so is what was added to it: the last of each object tells. */
    bool complete = cJSON_AddStringToObject(food, "id", question->food) != NULL
            && cJSON_AddStringToObject(geometry, "shape", "slab") != NULL
            && cJSON_AddNumberToObject(geometry, "thicknessMm", question->thickness_mm) != NULL
            && cJSON_AddNumberToObject(start, "temperatureC", question->start_c) != NULL
            && cJSON_AddNumberToObject(bath, "setpointC", question->setpoint_c) != NULL;
    if (question->for_the_vulnerable) {
        complete = complete && cJSON_AddStringToObject(body, "eater", "vulnerable") != NULL;
    }
    if (question->parameter_set != NULL) {
        complete = complete && cJSON_AddStringToObject(body, "parameterSet", question->parameter_set) != NULL;
    }
    complete = complete && size <= SLOWPOINT_QUESTION && cJSON_PrintPreallocated(body, buffer, (int) size, false);
    cJSON_Delete(body);
    return complete;
}

/* Copies a text and never cuts a character of UTF-8 in two; one that is cut ends with a sign of it. */
static void copy_text(char *to, size_t size, const char *from) {
    size_t length = strlen(from);
    if (length < size) {
        memcpy(to, from, length + 1);
        return;
    }
    size_t end = size - sizeof CUT_OFF;
    while (end > 0 && ((unsigned char) from[end] & 0xC0u) == 0x80u) {
        end--;
    }
    memcpy(to, from, end);
    memcpy(to + end, CUT_OFF, sizeof CUT_OFF);
}

static bool copy_member(const cJSON *object, const char *name, char *to, size_t size) {
    const cJSON *member = cJSON_GetObjectItemCaseSensitive(object, name);
    if (!cJSON_IsString(member)) {
        return false;
    }
    copy_text(to, size, member->valuestring);
    return true;
}

static bool read_seconds(const cJSON *object, const char *name, int32_t *seconds) {
    const cJSON *member = cJSON_GetObjectItemCaseSensitive(object, name);
    if (!cJSON_IsNumber(member)) {
        return false;
    }
    double value = member->valuedouble;
    if (!(value >= 0 && value <= LONGEST_S) || value != floor(value)) {
        return false;
    }
    *seconds = (int32_t) value;
    return true;
}

static enum slowpoint_verdict verdict_of(const char *word) {
    if (strcmp(word, "met") == 0) {
        return SLOWPOINT_MET;
    }
    if (strcmp(word, "surfaceOnly") == 0) {
        return SLOWPOINT_SURFACE_ONLY;
    }
    return strcmp(word, "notApplicable") == 0 ? SLOWPOINT_NOT_APPLICABLE : SLOWPOINT_NOT_MET;
}

static enum slowpoint_severity severity_of(const char *word) {
    if (strcmp(word, "info") == 0) {
        return SLOWPOINT_INFO;
    }
    return strcmp(word, "caution") == 0 ? SLOWPOINT_CAUTION : SLOWPOINT_DANGER;
}

static bool read_notice(const cJSON *object, bool graded, struct slowpoint_notice *notice) {
    const cJSON *severity = cJSON_GetObjectItemCaseSensitive(object, "severity");
    if (graded && !cJSON_IsString(severity)) {
        return false;
    }
    notice->severity = graded ? severity_of(severity->valuestring) : SLOWPOINT_NONE;
    return copy_member(object, "code", notice->code, sizeof notice->code)
            && copy_member(object, "text", notice->text, sizeof notice->text);
}

/* Behind those that are as grave; where there is no room, the least grave is dropped. */
static void keep_warning(struct slowpoint_plan *plan, const struct slowpoint_notice *warning) {
    size_t at = plan->warnings_kept;
    while (at > 0 && plan->warnings[at - 1].severity < warning->severity) {
        at--;
    }
    plan->warning_count++;
    if (at == SLOWPOINT_MOST_WARNINGS) {
        return;
    }
    if (plan->warnings_kept < SLOWPOINT_MOST_WARNINGS) {
        plan->warnings_kept++;
    }
    memmove(&plan->warnings[at + 1], &plan->warnings[at], (plan->warnings_kept - 1 - at) * sizeof *warning);
    plan->warnings[at] = *warning;
}

static bool read_notices(const cJSON *answer, struct slowpoint_plan *plan) {
    const cJSON *warnings = cJSON_GetObjectItemCaseSensitive(answer, "warnings");
    const cJSON *cautions = cJSON_GetObjectItemCaseSensitive(answer, "cautions");
    if (!cJSON_IsArray(warnings) || !cJSON_IsArray(cautions)) {
        return false;
    }
    struct slowpoint_notice notice;
    const cJSON *item;
    cJSON_ArrayForEach(item, warnings) {
        if (!read_notice(item, true, &notice)) {
            return false;
        }
        keep_warning(plan, &notice);
    }
    cJSON_ArrayForEach(item, cautions) {
        if (!read_notice(item, false, &notice)) {
            return false;
        }
        if (plan->cautions_kept < SLOWPOINT_MOST_CAUTIONS) {
            plan->cautions[plan->cautions_kept++] = notice;
        }
    }
    return true;
}

static bool read_take_out(const cJSON *answer, struct slowpoint_plan *plan) {
    const cJSON *take_out = cJSON_GetObjectItemCaseSensitive(answer, "takeOut");
    const cJSON *reason = cJSON_GetObjectItemCaseSensitive(answer, "noTakeOutReason");
    plan->has_take_out = take_out != NULL;
    if (take_out == NULL) {
        return read_notice(reason, false, &plan->reason);
    }
    plan->has_latest = cJSON_GetObjectItemCaseSensitive(take_out, "latestS") != NULL;
    return read_seconds(take_out, "earliestS", &plan->earliest_s)
            && read_seconds(take_out, "bestS", &plan->best_s)
            && plan->earliest_s <= plan->best_s
            && (!plan->has_latest
                    || (read_seconds(take_out, "latestS", &plan->latest_s) && plan->best_s <= plan->latest_s));
}

static bool read_answer(const cJSON *answer, struct slowpoint_plan *plan) {
    const cJSON *safety = cJSON_GetObjectItemCaseSensitive(answer, "safety");
    const cJSON *verdict = cJSON_GetObjectItemCaseSensitive(safety, "verdict");
    const cJSON *setpoint = cJSON_GetObjectItemCaseSensitive(answer, "setpointC");
    if (!cJSON_IsString(verdict) || !cJSON_IsNumber(setpoint) || !isfinite(setpoint->valuedouble)) {
        return false;
    }
    plan->verdict = verdict_of(verdict->valuestring);
    plan->setpoint_c = setpoint->valuedouble;
    return copy_member(answer, "parameterSet", plan->parameter_set, sizeof plan->parameter_set)
            && copy_member(answer, "digest", plan->digest, sizeof plan->digest)
            && read_take_out(answer, plan)
            && read_notices(answer, plan);
}

bool slowpoint_read_plan(const char *text, size_t length, struct slowpoint_plan *plan) {
    memset(plan, 0, sizeof *plan);
    cJSON *answer = cJSON_ParseWithLength(text, length);
    bool read = read_answer(answer, plan);
    cJSON_Delete(answer);
    return read;
}

bool slowpoint_read_problem(const char *text, size_t length, struct slowpoint_problem *problem) {
    cJSON *answer = cJSON_ParseWithLength(text, length);
    bool read = copy_member(answer, "code", problem->code, sizeof problem->code)
            && copy_member(answer, "detail", problem->text, sizeof problem->text);
    cJSON_Delete(answer);
    return read;
}

enum slowpoint_severity slowpoint_worst(const struct slowpoint_plan *plan) {
    return plan->warnings_kept == 0 ? SLOWPOINT_NONE : plan->warnings[0].severity;
}

bool slowpoint_shown_as_met(const struct slowpoint_plan *plan) {
    return plan->verdict == SLOWPOINT_MET && plan->has_take_out && slowpoint_worst(plan) != SLOWPOINT_DANGER;
}

const char *slowpoint_verdict_word(enum slowpoint_verdict verdict) {
    switch (verdict) {
        case SLOWPOINT_MET:
            return "met";
        case SLOWPOINT_SURFACE_ONLY:
            return "surfaceOnly";
        case SLOWPOINT_NOT_APPLICABLE:
            return "notApplicable";
        case SLOWPOINT_NOT_MET:
            break;
    }
    return "notMet";
}

const char *slowpoint_severity_word(enum slowpoint_severity severity) {
    switch (severity) {
        case SLOWPOINT_NONE:
            return "none";
        case SLOWPOINT_INFO:
            return "info";
        case SLOWPOINT_CAUTION:
            return "caution";
        case SLOWPOINT_DANGER:
            break;
    }
    return "danger";
}
