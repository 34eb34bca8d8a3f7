/*
 * The example at a command line: asks for a plan or a table, waits and asks again where that may help, and prints the
 * line a display shows first, then what it must show as well.
 *
 *   slowpoint plan  --url URL --food ID --thickness MM --start C --setpoint C
 *                   [--vulnerable] [--parameter-set VERSION]
 *   slowpoint fetch --url URL --request FILE --file TABLE
 *   slowpoint table --file TABLE --thickness MM --start C --setpoint C
 *
 * It ends with 0 where the plan may be shown as one that meets its rule (or the table was stored), 1 where it may not, 2
 * where the command is wrong, 3 where the service refused the question, and 4 where there is no answer.
 */
#define _POSIX_C_SOURCE 200809L

#include <curl/curl.h>
#include <errno.h>
#include <inttypes.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <time.h>
#include <unistd.h>

#include "retry.h"
#include "slowpoint.h"
#include "table.h"

#define SHOWN_AS_MET 0
#define NOT_SHOWN_AS_MET 1
#define WRONG_COMMAND 2
#define REFUSED 3
#define NO_ANSWER 4

#define LONGEST_ADDRESS 512
#define LONGEST_REQUEST 4096
#define LONGEST_PATH 1024
#define LONGEST_ANSWER \
    (TABLE_LONGEST_ANSWER > SLOWPOINT_LONGEST_ANSWER ? TABLE_LONGEST_ANSWER : SLOWPOINT_LONGEST_ANSWER)

#define OK_STATUS 200L

/* A default plan takes milliseconds, so what is slower is the network. A table takes up to some ten seconds. */
#define CONNECT_MS 5000L

struct patience {
    long longest_ms;
    unsigned attempts;
};

static const struct patience FOR_A_PLAN = {15000L, RETRY_ATTEMPTS_WATCHED};
static const struct patience FOR_A_TABLE = {60000L, RETRY_ATTEMPTS_UNWATCHED};

struct answer {
    long status; /* RETRY_NO_ANSWER where it is missing, incomplete, too long, or from something between */
    long retry_after_s;
    bool retiring; /* the service says that what was asked for will go away */
    size_t length;
    char body[LONGEST_ANSWER];
};

static size_t keep_body(char *bytes, size_t size, size_t count, void *kept) {
    struct answer *answer = kept;
    size_t length = size * count;
    if (length > sizeof answer->body - answer->length) {
        return 0; /* which ends the transfer with an error */
    }
    memcpy(answer->body + answer->length, bytes, length);
    answer->length += length;
    return length;
}

static bool is_header(const char *line, size_t length, const char *name) {
    size_t wanted = strlen(name);
    return length > wanted && line[wanted] == ':' && strncasecmp(line, name, wanted) == 0;
}

static size_t keep_header(char *line, size_t size, size_t count, void *kept) {
    struct answer *answer = kept;
    size_t length = size * count;
    if (is_header(line, length, "Retry-After")) {
        size_t value = strlen("Retry-After:");
        answer->retry_after_s = retry_after_seconds(line + value, length - value);
    }
    if (is_header(line, length, "Deprecation") || is_header(line, length, "Sunset")) {
        answer->retiring = true;
    }
    return length;
}

/* A portal or a gateway may answer in the place of the service; it does not do so in JSON. */
static bool is_json(const char *content_type) {
    return content_type != NULL
            && (strncasecmp(content_type, "application/json", strlen("application/json")) == 0
                    || strncasecmp(content_type, "application/problem+json", strlen("application/problem+json")) == 0);
}

static bool ask_once(const char *address, const char *request, long longest_ms, struct answer *answer) {
    answer->status = RETRY_NO_ANSWER;
    answer->retry_after_s = RETRY_AFTER_ABSENT;
    answer->retiring = false;
    answer->length = 0;
    CURL *curl = curl_easy_init();
    struct curl_slist *headers = curl_slist_append(NULL, "Content-Type: application/json");
    struct curl_slist *more = headers == NULL ? NULL : curl_slist_append(headers, "Accept: application/json");
    bool able = curl != NULL && more != NULL
            && curl_easy_setopt(curl, CURLOPT_URL, address) == CURLE_OK
            && curl_easy_setopt(curl, CURLOPT_PROTOCOLS_STR, "http,https") == CURLE_OK
            && curl_easy_setopt(curl, CURLOPT_HTTPHEADER, more) == CURLE_OK
            && curl_easy_setopt(curl, CURLOPT_POSTFIELDS, request) == CURLE_OK
            && curl_easy_setopt(curl, CURLOPT_CONNECTTIMEOUT_MS, CONNECT_MS) == CURLE_OK
            && curl_easy_setopt(curl, CURLOPT_TIMEOUT_MS, longest_ms) == CURLE_OK
            && curl_easy_setopt(curl, CURLOPT_NOSIGNAL, 1L) == CURLE_OK
            && curl_easy_setopt(curl, CURLOPT_WRITEFUNCTION, keep_body) == CURLE_OK
            && curl_easy_setopt(curl, CURLOPT_WRITEDATA, answer) == CURLE_OK
            && curl_easy_setopt(curl, CURLOPT_HEADERFUNCTION, keep_header) == CURLE_OK
            && curl_easy_setopt(curl, CURLOPT_HEADERDATA, answer) == CURLE_OK;
    if (able && curl_easy_perform(curl) == CURLE_OK) {
        long status = 0;
        const char *content_type = NULL;
        able = curl_easy_getinfo(curl, CURLINFO_RESPONSE_CODE, &status) == CURLE_OK
                && curl_easy_getinfo(curl, CURLINFO_CONTENT_TYPE, &content_type) == CURLE_OK;
        /* Errors keep their status whoever gave them: a gateway that is too busy says so in HTML. */
        if (able && (status != OK_STATUS || is_json(content_type))) {
            answer->status = status;
        }
    }
    curl_slist_free_all(headers);
    curl_easy_cleanup(curl);
    return able;
}

/* A real device takes it from its random generator in hardware; it must differ between devices after a power cut. */
static bool draw(uint32_t *number) {
    FILE *source = fopen("/dev/urandom", "rb");
    if (source == NULL) {
        return false;
    }
    size_t read = fread(number, sizeof *number, 1, source);
    (void) fclose(source);
    return read == 1;
}

static void wait_ms(uint32_t milliseconds) {
    struct timespec left = {(time_t) (milliseconds / 1000), (long) (milliseconds % 1000) * 1000000L};
    while (nanosleep(&left, &left) != 0 && errno == EINTR) {
    }
}

static bool ask(
        const char *url, const char *path, const char *request, struct patience patience, struct answer *answer) {
    char address[LONGEST_ADDRESS];
    int written = snprintf(address, sizeof address, "%s%s", url, path);
    if (written < 0 || (size_t) written >= sizeof address) {
        return false;
    }
    for (unsigned attempt = 1;; attempt++) {
        uint32_t random = 0;
        if (!ask_once(address, request, patience.longest_ms, answer) || !draw(&random)) {
            return false;
        }
        if (answer->retiring) {
            fprintf(stderr, "The service says that what was asked for will go away (Deprecation, Sunset).\n");
        }
        if (answer->status == OK_STATUS) {
            return true;
        }
        struct retry_decision next =
                retry_next(attempt, patience.attempts, answer->status, answer->retry_after_s, random);
        if (!next.again) {
            return answer->status != RETRY_NO_ANSWER;
        }
        fprintf(stderr, "Attempt %u: status %ld, again in %" PRIu32 " ms.\n", attempt, answer->status, next.wait_ms);
        wait_ms(next.wait_ms);
    }
}

/* Why there is no plan, in one line. */
static int show_failure(bool answered, const struct answer *answer) {
    struct slowpoint_problem problem;
    if (!answered || answer->status == OK_STATUS) {
        printf("NO ANSWER. Use the stored table, or ask again later.\n");
        return NO_ANSWER;
    }
    if (answer->status >= 400 && answer->status < 500 && !retry_may_help(answer->status)
            && slowpoint_read_problem(answer->body, answer->length, &problem)) {
        printf("REFUSED %s: %s\n", problem.code, problem.text);
        return REFUSED;
    }
    printf("NO ANSWER (status %ld). Use the stored table, or ask again later.\n", answer->status);
    return NO_ANSWER;
}

static void print_time(const char *before, int32_t seconds) {
    printf("%s%" PRId32 ":%02" PRId32 ":%02" PRId32, before, seconds / 3600, seconds / 60 % 60, seconds % 60);
}

static void print_take_out(const struct slowpoint_plan *plan) {
    print_time("TAKE OUT ", plan->best_s);
    print_time(" after food in (from ", plan->earliest_s);
    if (plan->has_latest) {
        print_time(", until ", plan->latest_s);
    }
    printf(").");
}

/* What a display shows first. What is grave comes before any time, and no time comes with a rule that is not met. */
static void print_first_lines(const struct slowpoint_plan *plan) {
    if (slowpoint_worst(plan) == SLOWPOINT_DANGER) {
        printf("DANGER: %s\n", plan->warnings[0].text);
    }
    if (plan->verdict == SLOWPOINT_NOT_MET) {
        printf("NOT SAFE: the rule is not met.");
    } else if (!plan->has_take_out) {
        printf("NO TIME TO TAKE IT OUT: %s", plan->reason.text);
    } else {
        print_take_out(plan);
        if (plan->verdict == SLOWPOINT_MET) {
            printf(" Rule met.");
        } else if (plan->verdict == SLOWPOINT_SURFACE_ONLY) {
            printf(" SEAR ALL SIDES: only the outside is made safe. Whole cuts and healthy adults only.");
        } else {
            printf(" No rule asks for anything here.");
        }
    }
    printf("\n");
}

static int show_plan(const struct slowpoint_plan *plan) {
    print_first_lines(plan);
    printf("verdict %s, worst %s, setpoint %.2f C, parameter set %s (%s)\n", slowpoint_verdict_word(plan->verdict),
            slowpoint_severity_word(slowpoint_worst(plan)), plan->setpoint_c, plan->parameter_set, plan->digest);
    for (size_t i = 0; i < plan->warnings_kept; i++) {
        printf("%s %s: %s\n", slowpoint_severity_word(plan->warnings[i].severity), plan->warnings[i].code,
                plan->warnings[i].text);
    }
    if (plan->warning_count > plan->warnings_kept) {
        printf("and %zu more warnings\n", plan->warning_count - plan->warnings_kept);
    }
    for (size_t i = 0; i < plan->cautions_kept; i++) {
        printf("always %s: %s\n", plan->cautions[i].code, plan->cautions[i].text);
    }
    return slowpoint_shown_as_met(plan) ? SHOWN_AS_MET : NOT_SHOWN_AS_MET;
}

struct options {
    const char *url;
    const char *food;
    const char *parameter_set;
    const char *request;
    const char *file;
    bool vulnerable;
    double thickness_mm;
    double start_c;
    double setpoint_c;
};

static bool read_number(const char *text, double *number) {
    char *end = NULL;
    *number = strtod(text, &end);
    return end != text && *end == '\0' && isfinite(*number);
}

static bool read_option(const char *name, const char *value, struct options *options) {
    if (strcmp(name, "--url") == 0) {
        options->url = value;
    } else if (strcmp(name, "--food") == 0) {
        options->food = value;
    } else if (strcmp(name, "--parameter-set") == 0) {
        options->parameter_set = value;
    } else if (strcmp(name, "--request") == 0) {
        options->request = value;
    } else if (strcmp(name, "--file") == 0) {
        options->file = value;
    } else if (strcmp(name, "--thickness") == 0) {
        return read_number(value, &options->thickness_mm);
    } else if (strcmp(name, "--start") == 0) {
        return read_number(value, &options->start_c);
    } else if (strcmp(name, "--setpoint") == 0) {
        return read_number(value, &options->setpoint_c);
    } else {
        return false;
    }
    return true;
}

static bool read_options(int count, char **words, struct options *options) {
    for (int i = 0; i < count; i++) {
        if (strcmp(words[i], "--vulnerable") == 0) {
            options->vulnerable = true;
        } else if (i + 1 < count && read_option(words[i], words[i + 1], options)) {
            i++;
        } else {
            return false;
        }
    }
    return true;
}

static bool tells_the_piece(const struct options *options) {
    return isfinite(options->thickness_mm) && isfinite(options->start_c) && isfinite(options->setpoint_c);
}

static bool read_file(const char *path, char *buffer, size_t size, size_t *length) {
    FILE *file = fopen(path, "rb");
    if (file == NULL) {
        return false;
    }
    *length = fread(buffer, 1, size, file);
    bool whole = ferror(file) == 0 && *length < size;
    (void) fclose(file);
    return whole;
}

/* The old table stays until the new one is on the disk: power may fail at any moment. */
static bool replace_file(const char *path, const char *bytes, size_t length) {
    char fresh[LONGEST_PATH];
    int written = snprintf(fresh, sizeof fresh, "%s.new", path);
    if (written < 0 || (size_t) written >= sizeof fresh) {
        return false;
    }
    FILE *file = fopen(fresh, "wb");
    if (file == NULL) {
        return false;
    }
    bool stored = fwrite(bytes, 1, length, file) == length && fflush(file) == 0 && fsync(fileno(file)) == 0;
    return fclose(file) == 0 && stored && rename(fresh, path) == 0;
}

/* Static, because the stack of a small device holds neither. */
static struct answer answer;
static struct table table;
static char stored[TABLE_LONGEST_ANSWER + 1];

static int plan(const struct options *options) {
    static struct slowpoint_plan plan;
    struct slowpoint_question question = {options->food, options->thickness_mm, options->start_c, options->setpoint_c,
        options->vulnerable, options->parameter_set};
    char request[SLOWPOINT_QUESTION];
    if (!slowpoint_write_question(&question, request, sizeof request)) {
        return WRONG_COMMAND;
    }
    bool answered = ask(options->url, "/v1/cook-plans", request, FOR_A_PLAN, &answer);
    if (!answered || answer.status != OK_STATUS || !slowpoint_read_plan(answer.body, answer.length, &plan)) {
        return show_failure(answered, &answer);
    }
    return show_plan(&plan);
}

static int fetch(const struct options *options) {
    char request[LONGEST_REQUEST];
    size_t length = 0;
    if (!read_file(options->request, request, sizeof request, &length)) {
        fprintf(stderr, "Cannot read %s.\n", options->request);
        return WRONG_COMMAND;
    }
    request[length] = '\0';
    bool answered = ask(options->url, "/v1/lookup-tables", request, FOR_A_TABLE, &answer);
    if (!answered || answer.status != OK_STATUS || !table_read(answer.body, answer.length, &table)) {
        return show_failure(answered, &answer);
    }
    if (!replace_file(options->file, answer.body, answer.length)) {
        fprintf(stderr, "Cannot write %s.\n", options->file);
        return WRONG_COMMAND;
    }
    printf("STORED. Parameter set %s (%s).\n", table.parameter_set, table.digest);
    return SHOWN_AS_MET;
}

static int look_up(const struct options *options) {
    size_t length = 0;
    if (!read_file(options->file, stored, sizeof stored, &length) || !table_read(stored, length, &table)) {
        fprintf(stderr, "%s holds no table.\n", options->file);
        return NO_ANSWER;
    }
    struct table_cook cook = table_cook_at(
            &table, (float) options->thickness_mm, (float) options->setpoint_c, (float) options->start_c);
    if (cook.finding == TABLE_OUTSIDE || cook.finding == TABLE_NO_COLUMN) {
        printf("NO ANSWER. The table does not reach so far.\n");
        return NO_ANSWER;
    }
    if (cook.finding == TABLE_NEVER) {
        printf("DO NOT COOK SO. The table says never.\n");
        return NOT_SHOWN_AS_MET;
    }
    if (cook.too_late) {
        printf("NO TIME TO TAKE IT OUT: ready only after it must be out.\n");
        return NOT_SHOWN_AS_MET;
    }
    print_time("TAKE OUT ", cook.ready_s);
    printf(" after food in");
    if (cook.has_latest) {
        print_time(" (until ", cook.latest_s);
        printf(")");
    }
    printf(". %s From the table of parameter set %s (%s).\n", cook.safe_counts ? "Rule met." : "SAFETY NOT TOLD.",
            table.parameter_set, table.digest);
    return cook.safe_counts ? SHOWN_AS_MET : NOT_SHOWN_AS_MET;
}

int main(int count, char **words) {
    struct options options = {NULL, NULL, NULL, NULL, NULL, false, (double) NAN, (double) NAN, (double) NAN};
    int result = WRONG_COMMAND;
    if (count >= 2 && read_options(count - 2, words + 2, &options)) {
        if (strcmp(words[1], "table") == 0 && options.file != NULL && tells_the_piece(&options)) {
            return look_up(&options);
        }
        if (curl_global_init(CURL_GLOBAL_DEFAULT) != CURLE_OK) {
            return NO_ANSWER;
        }
        if (strcmp(words[1], "plan") == 0 && options.url != NULL && options.food != NULL && tells_the_piece(&options)) {
            result = plan(&options);
        } else if (strcmp(words[1], "fetch") == 0 && options.url != NULL && options.request != NULL
                && options.file != NULL) {
            result = fetch(&options);
        }
        curl_global_cleanup();
    }
    if (result == WRONG_COMMAND) {
        fprintf(stderr,
                "slowpoint plan  --url URL --food ID --thickness MM --start C --setpoint C [--vulnerable]"
                " [--parameter-set VERSION]\n"
                "slowpoint fetch --url URL --request FILE --file TABLE\n"
                "slowpoint table --file TABLE --thickness MM --start C --setpoint C\n");
    }
    return result;
}
