/*
 * Unit tests of all parts that need no network. Usage: test_device FOLDER_OF_FIXTURES. It ends with 0 where all hold.
 */
#include <cjson/cJSON.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "countdown.h"
#include "retry.h"
#include "slowpoint.h"
#include "table.h"

static int passed;
static int failed;

static void expect(const char *what, bool holds) {
    if (holds) {
        passed++;
    } else {
        failed++;
        printf("FAILED: %s\n", what);
    }
}

/* Any even spread will do here; seeded, so that each run is the same (Marsaglia 2003, xorshift, from memory). */
static uint32_t state = 2463534242u;

static uint32_t next_random(void) {
    state ^= state << 13;
    state ^= state >> 17;
    state ^= state << 5;
    return state;
}

/* ---- answers ---- */

#define HEAD "{\"parameterSet\":\"2026.1\",\"digest\":\"ed3dc09213ad51fa\",\"setpointC\":60.0,"
#define TAKE_OUT "\"takeOut\":{\"earliestS\":11372,\"bestS\":13386,\"latestS\":43112},"
#define MET "\"safety\":{\"verdict\":\"met\",\"rule\":\"us-fsis-2021\",\"growthRangeS\":3000},"
#define CAUTIONS "\"cautions\":[{\"code\":\"KEEP_UNDER_WATER\",\"text\":\"Keep it under water.\"}],"
#define NO_WARNINGS "\"warnings\":[]}"

static const char GOOD[] = HEAD TAKE_OUT MET CAUTIONS NO_WARNINGS;

static bool read_plan(const char *text, struct slowpoint_plan *plan) {
    return slowpoint_read_plan(text, strlen(text), plan);
}

static bool refused(const char *text) {
    static struct slowpoint_plan plan;
    return !read_plan(text, &plan);
}

static void a_plan_that_meets_its_rule_is_shown_as_such(void) {
    static struct slowpoint_plan plan;
    expect("a good answer is read", read_plan(GOOD, &plan));
    expect("its verdict is met", plan.verdict == SLOWPOINT_MET);
    expect("its times are read",
            plan.has_take_out && plan.earliest_s == 11372 && plan.best_s == 13386 && plan.has_latest
                    && plan.latest_s == 43112);
    expect("nothing warns", slowpoint_worst(&plan) == SLOWPOINT_NONE && plan.warning_count == 0);
    expect("its cautions are kept",
            plan.cautions_kept == 1 && strcmp(plan.cautions[0].code, "KEEP_UNDER_WATER") == 0);
    expect("the parameter set is kept", strcmp(plan.parameter_set, "2026.1") == 0);
    expect("it is shown as met", slowpoint_shown_as_met(&plan));
}

static void what_is_unknown_counts_the_careful_way(void) {
    static struct slowpoint_plan plan;
    expect("an unknown member changes nothing",
            read_plan(HEAD "\"laterMember\":{\"a\":[1,null]}," TAKE_OUT MET CAUTIONS NO_WARNINGS, &plan)
                    && slowpoint_shown_as_met(&plan));
    expect("an unknown verdict is read",
            read_plan(HEAD TAKE_OUT "\"safety\":{\"verdict\":\"metInPart\"}," CAUTIONS NO_WARNINGS, &plan));
    expect("an unknown verdict counts as notMet", plan.verdict == SLOWPOINT_NOT_MET && !slowpoint_shown_as_met(&plan));
    expect("a verdict in other letters is unknown",
            read_plan(HEAD TAKE_OUT "\"safety\":{\"verdict\":\"Met\"}," CAUTIONS NO_WARNINGS, &plan)
                    && !slowpoint_shown_as_met(&plan));
    expect("an unknown severity is read",
            read_plan(HEAD TAKE_OUT MET CAUTIONS
                    "\"warnings\":[{\"code\":\"LATER\",\"severity\":\"grave\",\"text\":\"Of later.\"}]}", &plan));
    expect("an unknown severity counts as danger",
            slowpoint_worst(&plan) == SLOWPOINT_DANGER && !slowpoint_shown_as_met(&plan));
}

static void other_verdicts_are_never_shown_as_met(void) {
    static struct slowpoint_plan plan;
    expect("surfaceOnly",
            read_plan(HEAD TAKE_OUT "\"safety\":{\"verdict\":\"surfaceOnly\"}," CAUTIONS NO_WARNINGS, &plan)
                    && plan.verdict == SLOWPOINT_SURFACE_ONLY && !slowpoint_shown_as_met(&plan));
    expect("notApplicable",
            read_plan(HEAD TAKE_OUT "\"safety\":{\"verdict\":\"notApplicable\"}," CAUTIONS NO_WARNINGS, &plan)
                    && plan.verdict == SLOWPOINT_NOT_APPLICABLE && !slowpoint_shown_as_met(&plan));
    expect("notMet",
            read_plan(HEAD TAKE_OUT "\"safety\":{\"verdict\":\"notMet\"}," CAUTIONS NO_WARNINGS, &plan)
                    && plan.verdict == SLOWPOINT_NOT_MET && !slowpoint_shown_as_met(&plan));
    expect("met without a time to take it out",
            read_plan(HEAD "\"noTakeOutReason\":{\"code\":\"SAFE_AFTER_TEXTURE\",\"text\":\"Too late.\"}," MET CAUTIONS
                    NO_WARNINGS, &plan)
                    && !plan.has_take_out && strcmp(plan.reason.code, "SAFE_AFTER_TEXTURE") == 0
                    && !slowpoint_shown_as_met(&plan));
    expect("met with a danger",
            read_plan(HEAD TAKE_OUT MET CAUTIONS
                    "\"warnings\":[{\"code\":\"A\",\"severity\":\"danger\",\"text\":\"a\"}]}", &plan)
                    && !slowpoint_shown_as_met(&plan));
    expect("met with a caution is met, with the caution",
            read_plan(HEAD TAKE_OUT MET CAUTIONS
                    "\"warnings\":[{\"code\":\"A\",\"severity\":\"caution\",\"text\":\"a\"}]}", &plan)
                    && slowpoint_shown_as_met(&plan) && slowpoint_worst(&plan) == SLOWPOINT_CAUTION);
}

static void what_is_no_plan_is_refused(void) {
    expect("no text", refused(""));
    expect("no JSON", refused("<html>Sign in</html>"));
    expect("another JSON", refused("[1,2]"));
    expect("a problem", refused("{\"code\":\"OUT_OF_RANGE\",\"detail\":\"x\",\"status\":400}"));
    expect("no verdict", refused(HEAD TAKE_OUT "\"safety\":{}," CAUTIONS NO_WARNINGS));
    expect("no warnings", refused(HEAD TAKE_OUT MET "\"cautions\":[]}"));
    expect("no cautions", refused(HEAD TAKE_OUT MET NO_WARNINGS));
    expect("a warning without severity",
            refused(HEAD TAKE_OUT MET CAUTIONS "\"warnings\":[{\"code\":\"A\",\"text\":\"a\"}]}"));
    expect("neither a time nor a reason", refused(HEAD MET CAUTIONS NO_WARNINGS));
    expect("a time in quotes",
            refused(HEAD "\"takeOut\":{\"earliestS\":1,\"bestS\":\"2\"}," MET CAUTIONS NO_WARNINGS));
    expect("a time below zero", refused(HEAD "\"takeOut\":{\"earliestS\":-1,\"bestS\":2}," MET CAUTIONS NO_WARNINGS));
    expect("a time longer than any",
            refused(HEAD "\"takeOut\":{\"earliestS\":1,\"bestS\":1209601}," MET CAUTIONS NO_WARNINGS));
    expect("a time beyond all numbers",
            refused(HEAD "\"takeOut\":{\"earliestS\":1,\"bestS\":1e999}," MET CAUTIONS NO_WARNINGS));
    expect("half a second", refused(HEAD "\"takeOut\":{\"earliestS\":1,\"bestS\":2.5}," MET CAUTIONS NO_WARNINGS));
    expect("times out of order", refused(HEAD "\"takeOut\":{\"earliestS\":3,\"bestS\":2}," MET CAUTIONS NO_WARNINGS));
    expect("an end before the best",
            refused(HEAD "\"takeOut\":{\"earliestS\":1,\"bestS\":3,\"latestS\":2}," MET CAUTIONS NO_WARNINGS));
    expect("an answer that nothing closes is read",
            !refused(HEAD "\"takeOut\":{\"earliestS\":1,\"bestS\":3}," MET CAUTIONS NO_WARNINGS));
    bool any = false;
    for (size_t length = 0; length + 1 < sizeof GOOD - 1; length++) {
        static struct slowpoint_plan plan;
        char part[sizeof GOOD];
        memcpy(part, GOOD, length);
        any = any || slowpoint_read_plan(part, length, &plan);
    }
    expect("no answer that broke off is read", !any);
}

static void mutilated_answers_do_no_harm(void) {
    static struct slowpoint_plan plan;
    int read = 0;
    bool sound = true;
    for (int i = 0; i < 50000; i++) {
        char text[sizeof GOOD];
        memcpy(text, GOOD, sizeof GOOD);
        unsigned changes = 1 + next_random() % 3;
        for (unsigned j = 0; j < changes; j++) {
            text[next_random() % (sizeof GOOD - 1)] = (char) (next_random() % 256);
        }
        if (slowpoint_read_plan(text, sizeof GOOD - 1, &plan)) {
            read++;
            sound = sound && (!plan.has_take_out
                    || (plan.earliest_s >= 0 && plan.earliest_s <= plan.best_s && plan.best_s <= 1209600
                            && (!plan.has_latest || plan.best_s <= plan.latest_s)));
        }
    }
    expect("some mutilated answers are still read, and their times are in order", read > 0 && sound);
}

static void the_gravest_warnings_come_first_and_stay(void) {
    static struct slowpoint_plan plan;
    static char text[8192];
    size_t end = (size_t) snprintf(text, sizeof text, "%s", HEAD TAKE_OUT MET CAUTIONS "\"warnings\":[");
    for (int i = 0; i < 20; i++) {
        end += (size_t) snprintf(text + end, sizeof text - end,
                "%s{\"code\":\"N%d\",\"severity\":\"%s\",\"text\":\"t\"}",
                i == 0 ? "" : ",", i, i == 19 ? "danger" : i == 7 ? "caution" : "info");
    }
    snprintf(text + end, sizeof text - end, "]}");
    expect("twenty warnings are read", read_plan(text, &plan) && plan.warning_count == 20);
    expect("as many as fit are kept", plan.warnings_kept == SLOWPOINT_MOST_WARNINGS);
    expect("the last and gravest is the first", strcmp(plan.warnings[0].code, "N19") == 0);
    expect("then what is next in gravity", strcmp(plan.warnings[1].code, "N7") == 0);
    expect("then the others in their order", strcmp(plan.warnings[2].code, "N0") == 0
            && strcmp(plan.warnings[SLOWPOINT_MOST_WARNINGS - 1].code, "N10") == 0);
}

static void long_sentences_are_cut_between_characters(void) {
    static struct slowpoint_plan plan;
    static char text[4096];
    for (int ahead = 0; ahead < 2; ahead++) {
        size_t end = (size_t) snprintf(text, sizeof text, "%s%s", HEAD TAKE_OUT MET CAUTIONS
                "\"warnings\":[{\"code\":\"A\",\"severity\":\"info\",\"text\":\"", ahead == 0 ? "" : "x");
        for (int i = 0; i < 300; i++) {
            end += (size_t) snprintf(text + end, sizeof text - end, "\xC3\xA9");
        }
        snprintf(text + end, sizeof text - end, "\"}]}");
        expect("a long sentence is read", read_plan(text, &plan));
        const char *kept = plan.warnings[0].text;
        size_t length = strlen(kept);
        expect("it fits", length < SLOWPOINT_SENTENCE && length > SLOWPOINT_SENTENCE - 10);
        expect("it says that it was cut", strcmp(kept + length - 6, " [...]") == 0);
        expect("no character is cut in two", (length - 6 - (size_t) ahead) % 2 == 0);
    }
}

static void questions_are_written_as_the_contract_says(void) {
    char text[SLOWPOINT_QUESTION];
    struct slowpoint_question question = {"pork-loin", 45, 4, 60.5, true, "2026.1"};
    expect("a question is written", slowpoint_write_question(&question, text, sizeof text));
    expect("in its words",
            strcmp(text, "{\"food\":{\"id\":\"pork-loin\"},\"geometry\":{\"shape\":\"slab\",\"thicknessMm\":45},"
                         "\"start\":{\"temperatureC\":4},\"surroundings\":{\"bath\":{\"setpointC\":60.5}},"
                         "\"eater\":\"vulnerable\",\"parameterSet\":\"2026.1\"}") == 0);
    question.start_c = (double) NAN;
    expect("a sensor without a reading is no temperature", !slowpoint_write_question(&question, text, sizeof text));
    question.start_c = 4;
    expect("a buffer that is too small is not used", !slowpoint_write_question(&question, text, 40));
}

static void problems_are_read(void) {
    static struct slowpoint_problem problem;
    const char *text = "{\"type\":\"/problems/unknown-food\",\"code\":\"UNKNOWN_FOOD\",\"detail\":\"None of this id.\","
                       "\"errors\":[],\"retryable\":false,\"status\":422,\"title\":\"x\"}";
    expect("a problem is read",
            slowpoint_read_problem(text, strlen(text), &problem) && strcmp(problem.code, "UNKNOWN_FOOD") == 0);
    expect("what is none is refused", !slowpoint_read_problem("{}", 2, &problem));
}

/* ---- asking again ---- */

static void what_may_succeed_later_is_repeated(void) {
    const long later[] = {RETRY_NO_ANSWER, 408, 429, 502, 503, 504};
    for (size_t i = 0; i < sizeof later / sizeof later[0]; i++) {
        expect("408, 429, 502, 503, 504 and no answer are repeated",
                retry_next(1, RETRY_ATTEMPTS_WATCHED, later[i], RETRY_AFTER_ABSENT, 0).again);
    }
    const long never[] = {200, 301, 400, 401, 403, 404, 405, 406, 413, 414, 415, 422, 431, 500, 501, 505};
    for (size_t i = 0; i < sizeof never / sizeof never[0]; i++) {
        struct retry_decision next = retry_next(1, RETRY_ATTEMPTS_WATCHED, never[i], 1, 12345);
        expect("what the same request will meet again is not repeated", !next.again && next.wait_ms == 0);
    }
}

static void waits_double_up_to_a_cap_with_full_jitter(void) {
    const uint32_t ceilings[] = {500, 1000, 2000, 4000, 8000, 16000, 30000, 30000, 30000};
    for (unsigned attempt = 1; attempt < RETRY_ATTEMPTS_UNWATCHED; attempt++) {
        uint32_t longest = 0;
        uint32_t shortest = UINT32_MAX;
        double sum = 0;
        for (int i = 0; i < 20000; i++) {
            struct retry_decision next =
                    retry_next(attempt, RETRY_ATTEMPTS_UNWATCHED, 503, RETRY_AFTER_ABSENT, next_random());
            longest = next.wait_ms > longest ? next.wait_ms : longest;
            shortest = next.wait_ms < shortest ? next.wait_ms : shortest;
            sum += next.wait_ms;
        }
        uint32_t ceiling = ceilings[attempt - 1];
        expect("no wait is longer than its ceiling", longest <= ceiling && longest > ceiling * 99 / 100);
        expect("jitter goes down to nothing", shortest <= ceiling / 100);
        expect("and is even", fabs(sum / 20000 - ceiling / 2.0) < ceiling * 0.02);
    }
    expect("after the last attempt no other follows",
            !retry_next(RETRY_ATTEMPTS_WATCHED, RETRY_ATTEMPTS_WATCHED, 503, RETRY_AFTER_ABSENT, 0).again
                    && !retry_next(10, RETRY_ATTEMPTS_UNWATCHED, 503, RETRY_AFTER_ABSENT, 0).again);
    expect("nor does a number of attempts that ran over",
            !retry_next(UINT32_MAX, RETRY_ATTEMPTS_UNWATCHED, 503, RETRY_AFTER_ABSENT, 0).again);
}

static void retry_after_is_a_least_wait(void) {
    bool least = true;
    for (int i = 0; i < 1000; i++) {
        struct retry_decision next = retry_next(1, RETRY_ATTEMPTS_WATCHED, 503, 5, next_random());
        least = least && next.again && next.wait_ms >= 5000 && next.wait_ms <= 5500;
    }
    expect("no wait is shorter than Retry-After, and jitter comes on top", least);
    expect("two minutes are waited for", retry_next(1, RETRY_ATTEMPTS_WATCHED, 503, 120, 0).again);
    expect("more patience than that is not had", !retry_next(1, RETRY_ATTEMPTS_WATCHED, 503, 121, 0).again);
}

static long seconds_of(const char *value) {
    return retry_after_seconds(value, strlen(value));
}

static void retry_after_is_read_without_a_clock(void) {
    expect("seconds", seconds_of(" 12\r\n") == 12 && seconds_of("0") == 0);
    expect("a date takes a clock", seconds_of(" Fri, 31 Dec 2027 23:59:59 GMT\r\n") == RETRY_AFTER_ABSENT);
    expect("nothing", seconds_of("") == RETRY_AFTER_ABSENT && seconds_of(" \r\n") == RETRY_AFTER_ABSENT);
    expect("what is no number", seconds_of("-3") == RETRY_AFTER_ABSENT && seconds_of("1.5") == RETRY_AFTER_ABSENT
            && seconds_of("3s") == RETRY_AFTER_ABSENT);
    expect("so many seconds that no number holds them are too many",
            !retry_next(1, RETRY_ATTEMPTS_WATCHED, 503, seconds_of("99999999999999999999999999"), 0).again);
}

/* ---- countdown ---- */

static void a_countdown_counts_from_food_in(void) {
    struct countdown c = countdown_from_food_in(1000);
    expect("nothing has passed at first", countdown_elapsed_s(c) == 0 && countdown_until_s(c, 600) == 600);
    c = countdown_at(c, 1000 + 1);
    expect("what is waited for is rounded up", countdown_until_s(c, 600) == 600);
    expect("what must not be passed is rounded down", countdown_left_s(c, 600) == 599);
    expect("only whole seconds have passed", countdown_elapsed_s(c) == 0);
    c = countdown_at(c, 1000 + 600000);
    expect("at the moment nothing is left", countdown_until_s(c, 600) == 0 && countdown_left_s(c, 600) == 0);
    c = countdown_at(c, 1000 + 900000);
    expect("afterwards it stays at nothing", countdown_until_s(c, 600) == 0 && countdown_left_s(c, 600) == 0);
}

static void a_counter_may_wrap(void) {
    struct countdown c = countdown_from_food_in(UINT32_MAX - 999);
    c = countdown_at(c, 2000);
    expect("once", countdown_elapsed_s(c) == 3);
    c = countdown_from_food_in(0);
    uint32_t now_ms = 0;
    for (int64_t day = 0; day < 140; day++) {
        now_ms += 86400000u;
        c = countdown_at(c, now_ms);
    }
    expect("many times", countdown_elapsed_s(c) == 140LL * 86400);
    c = countdown_at(countdown_from_food_in(5), 5);
    expect("the same reading twice is no time", countdown_elapsed_s(c) == 0);
}

static void what_is_not_known_is_not_guessed(void) {
    struct countdown lost = countdown_lost();
    expect("after a reboot nothing is known", countdown_elapsed_s(lost) == COUNTDOWN_UNKNOWN
            && countdown_until_s(lost, 600) == COUNTDOWN_UNKNOWN && countdown_left_s(lost, 600) == COUNTDOWN_UNKNOWN);
    expect("and time does not bring it back", countdown_until_s(countdown_at(lost, 5000), 600) == COUNTDOWN_UNKNOWN);
    struct countdown c = countdown_at(countdown_from_food_in(10000), 9999);
    expect("a counter that goes back does not end the countdown", countdown_until_s(c, 600) == COUNTDOWN_UNKNOWN);
    c = countdown_at(countdown_from_food_in(0), UINT32_MAX / 2);
    expect("half of its range is believed", c.known);
    c = countdown_at(countdown_from_food_in(0), UINT32_MAX / 2 + 1);
    expect("more than half is not", !c.known);
    c = countdown_at(countdown_resumed(70, 3600), 1070);
    expect("what others know is taken up", countdown_elapsed_s(c) == 3601 && countdown_until_s(c, 4000) == 399);
}

/* ---- table ---- */

static char fixture[TABLE_LONGEST_ANSWER];
static size_t fixture_length;
static struct table table;

static enum table_finding at(enum table_quantity quantity, float mm, float setpoint, float start, int32_t *seconds) {
    *seconds = -7;
    return table_lookup(&table, quantity, mm, setpoint, start, seconds);
}

static void every_node_gives_its_own_time(void) {
    const enum table_quantity quantities[] = {TABLE_HOT_THROUGH, TABLE_SAFE, TABLE_GOOD_UNTIL, TABLE_SOFT_FROM};
    const char *words[] = {"hotThrough", "safe", "goodUntil", "softFrom"};
    cJSON *file = cJSON_ParseWithLength(fixture, fixture_length);
    int nodes = 0;
    for (int q = 0; q < 4; q++) {
        const cJSON *column;
        const cJSON *times = NULL;
        cJSON_ArrayForEach(column, cJSON_GetObjectItemCaseSensitive(file, "columns")) {
            if (strcmp(cJSON_GetObjectItemCaseSensitive(column, "quantity")->valuestring, words[q]) == 0) {
                times = cJSON_GetObjectItemCaseSensitive(column, "timesS");
            }
        }
        int i = 0;
        const cJSON *mm;
        const cJSON *setpoint;
        const cJSON *start;
        cJSON_ArrayForEach(mm, cJSON_GetObjectItemCaseSensitive(file, "thicknessMm")) {
            cJSON_ArrayForEach(setpoint, cJSON_GetObjectItemCaseSensitive(file, "setpointC")) {
                cJSON_ArrayForEach(start, cJSON_GetObjectItemCaseSensitive(file, "startC")) {
                    int32_t seconds;
                    enum table_finding found = at(quantities[q], (float) mm->valuedouble, (float) setpoint->valuedouble,
                            (float) start->valuedouble, &seconds);
                    int time = cJSON_GetArrayItem(times, i++)->valueint;
                    expect("a node gives its own time, or never",
                            time < 0 ? found == TABLE_NEVER : found == TABLE_TIME && seconds == time);
                    nodes++;
                }
            }
        }
    }
    expect("all nodes were tried", nodes == 4 * 18);
    cJSON_Delete(file);
}

/* By hand, from the formula of the contract. */
static void between_nodes_times_are_as_the_contract_says(void) {
    int32_t seconds;
    /* (14^2 - 10^2) / (20^2 - 10^2) = 0.32 of the way from 960 to 3840 */
    expect("the square of the thickness counts", at(TABLE_HOT_THROUGH, 14, 60, 2, &seconds) == TABLE_TIME
            && seconds >= 1881 && seconds <= 1883);
    /* 0.25 of the way from 3840 to 3600 */
    expect("the setpoint counts evenly", at(TABLE_HOT_THROUGH, 20, 61, 2, &seconds) == TABLE_TIME && seconds == 3780);
    /* 0.5 of the way from 3840 to 3440 */
    expect("the start counts evenly", at(TABLE_HOT_THROUGH, 20, 60, 4, &seconds) == TABLE_TIME && seconds == 3640);
    /* thickness sqrt(250): half way; setpoint half way, start half way: the mean of all eight around */
    int32_t mean = (960 + 860 + 900 + 800 + 3840 + 3440 + 3600 + 3200) / 8;
    expect("all eight nodes count", at(TABLE_HOT_THROUGH, sqrtf(250), 62, 4, &seconds) == TABLE_TIME
            && seconds >= mean && seconds <= mean + 1);
    /* half way from 15001 to 15000 is 15000.5 */
    expect("what it must be out by is rounded down",
            at(TABLE_GOOD_UNTIL, 10, 58, 4, &seconds) == TABLE_TIME && seconds == 15000);
    /* 0.01 / 4 of the way from 960 to 860 is 959.75 */
    expect("what is waited for is rounded up",
            at(TABLE_HOT_THROUGH, 10, 60, 2.01f, &seconds) == TABLE_TIME && seconds == 960);
}

static void never_counts_where_its_node_does(void) {
    int32_t seconds;
    expect("at the plane itself", at(TABLE_SAFE, 15, 58, 4, &seconds) == TABLE_NEVER);
    expect("a little above it, too", at(TABLE_SAFE, 15, 58.01f, 4, &seconds) == TABLE_NEVER);
    expect("at the next plane it counts with nothing", at(TABLE_SAFE, 15, 60, 4, &seconds) == TABLE_TIME);
    expect("nothing is written for never", at(TABLE_SAFE, 15, 58, 4, &seconds) == TABLE_NEVER && seconds == -7);
}

static void outside_there_is_no_answer(void) {
    int32_t seconds;
    const float outside[][3] = {{9.99f, 60, 4}, {40.01f, 60, 4}, {20, 57.99f, 4}, {20, 64.01f, 4}, {20, 60, 1.99f},
        {20, 60, 6.01f}, {NAN, 60, 4}, {20, NAN, 4}, {20, 60, NAN}, {INFINITY, 60, 4}, {20, -INFINITY, 4},
        {20, 60, -127}, {20, 60, 85}, {0, 0, 0}, {-20, 60, 4}};
    for (size_t i = 0; i < sizeof outside / sizeof outside[0]; i++) {
        expect("outside there is no answer",
                at(TABLE_HOT_THROUGH, outside[i][0], outside[i][1], outside[i][2], &seconds) == TABLE_OUTSIDE
                        && seconds == -7);
        expect("nor for a whole cook",
                table_cook_at(&table, outside[i][0], outside[i][1], outside[i][2]).finding == TABLE_OUTSIDE);
    }
    expect("the edges are inside", at(TABLE_HOT_THROUGH, 10, 58, 2, &seconds) == TABLE_TIME
            && at(TABLE_HOT_THROUGH, 40, 64, 6, &seconds) == TABLE_TIME);
    expect("what the table does not hold is not told", at(TABLE_TENDER, 20, 60, 4, &seconds) == TABLE_NO_COLUMN);
}

static void a_cook_waits_for_the_latest(void) {
    struct table_cook cook = table_cook_at(&table, 20, 60, 2);
    expect("safe is later than hot through and counts", cook.finding == TABLE_TIME && cook.ready_s == 5840
            && cook.safe_counts && cook.has_latest && cook.latest_s == 15001 && !cook.too_late);
    expect("where safe is never, so is the cook", table_cook_at(&table, 20, 58, 2).finding == TABLE_NEVER);
    cook = table_cook_at(&table, 40, 64, 2);
    expect("what must be out before it is ready has no moment", cook.finding == TABLE_TIME && cook.ready_s == 15400
            && cook.latest_s == 14001 && cook.too_late);
    static struct table unsafe;
    unsafe = table;
    unsafe.has[TABLE_SAFE] = false;
    cook = table_cook_at(&unsafe, 20, 60, 2);
    expect("without the column nothing is told of safety", cook.finding == TABLE_TIME && !cook.safe_counts);
}

static void a_table_with_one_plane_works(void) {
    static struct table one;
    const char *text = "{\"parameterSet\":\"p\",\"digest\":\"d\",\"thicknessMm\":[30],\"setpointC\":[60],\"startC\":[4],"
                       "\"columns\":[{\"quantity\":\"safe\",\"timesS\":[7000]}]}";
    int32_t seconds = 0;
    expect("it is read", table_read(text, strlen(text), &one));
    expect("its one point is told",
            table_lookup(&one, TABLE_SAFE, 30, 60, 4, &seconds) == TABLE_TIME && seconds == 7000);
    expect("and nothing beside it",
            table_lookup(&one, TABLE_SAFE, 30, 60, 4.1f, &seconds) == TABLE_OUTSIDE);
}

static bool table_refused(const char *axis, const char *times) {
    static struct table broken;
    char text[1024];
    snprintf(text, sizeof text,
            "{\"parameterSet\":\"p\",\"digest\":\"d\",\"thicknessMm\":%s,\"setpointC\":[60],\"startC\":[4],"
            "\"columns\":[{\"quantity\":\"safe\",\"timesS\":%s}]}", axis, times);
    return !table_read(text, strlen(text), &broken);
}

static void what_is_no_table_is_refused(void) {
    expect("a sound one is read", !table_refused("[10,20]", "[1,2]"));
    expect("planes that fall", table_refused("[20,10]", "[1,2]"));
    expect("planes that stand still", table_refused("[10,10]", "[1,2]"));
    expect("no planes", table_refused("[]", "[]"));
    expect("planes in quotes", table_refused("[\"10\",20]", "[1,2]"));
    expect("a thickness of nothing", table_refused("[0,20]", "[1,2]"));
    expect("too few times", table_refused("[10,20]", "[1]"));
    expect("too many times", table_refused("[10,20]", "[1,2,3]"));
    expect("a time of minus two", table_refused("[10,20]", "[1,-2]"));
    expect("half a second", table_refused("[10,20]", "[1,2.5]"));
    expect("a time that is missing", table_refused("[10,20]", "[1,null]"));
    expect("a time beyond all", table_refused("[10,20]", "[1,1e300]"));
    char planes[512] = "[10";
    for (int i = 11; i < 10 + TABLE_MOST_PLANES + 1; i++) {
        snprintf(planes + strlen(planes), sizeof planes - strlen(planes), ",%d", i);
    }
    strcat(planes, "]");
    expect("more planes than there is room for", table_refused(planes, "[1]"));
    bool any = false;
    static struct table broken;
    for (size_t length = 0; length < fixture_length - 3; length++) {
        any = any || table_read(fixture, length, &broken);
    }
    expect("no table that broke off is read", !any);
}

int main(int count, char **words) {
    char path[1024];
    snprintf(path, sizeof path, "%s/table.json", count == 2 ? words[1] : "fixtures");
    FILE *file = fopen(path, "rb");
    if (file == NULL) {
        printf("FAILED: cannot read %s\n", path);
        return 1;
    }
    fixture_length = fread(fixture, 1, sizeof fixture, file);
    (void) fclose(file);

    a_plan_that_meets_its_rule_is_shown_as_such();
    what_is_unknown_counts_the_careful_way();
    other_verdicts_are_never_shown_as_met();
    what_is_no_plan_is_refused();
    mutilated_answers_do_no_harm();
    the_gravest_warnings_come_first_and_stay();
    long_sentences_are_cut_between_characters();
    questions_are_written_as_the_contract_says();
    problems_are_read();

    what_may_succeed_later_is_repeated();
    waits_double_up_to_a_cap_with_full_jitter();
    retry_after_is_a_least_wait();
    retry_after_is_read_without_a_clock();

    a_countdown_counts_from_food_in();
    a_counter_may_wrap();
    what_is_not_known_is_not_guessed();

    expect("the table of the fixture is read", table_read(fixture, fixture_length, &table));
    every_node_gives_its_own_time();
    between_nodes_times_are_as_the_contract_says();
    never_counts_where_its_node_does();
    outside_there_is_no_answer();
    a_cook_waits_for_the_latest();
    a_table_with_one_plane_works();
    what_is_no_table_is_refused();

    printf("%d passed, %d failed\n", passed, failed);
    return failed == 0 ? 0 : 1;
}
