/*
 * The one question a display asks, and the one answer it needs: when to take the food out, and whether the rule is met.
 *
 * What a server answers may grow. Unknown members are passed over; an unknown word counts as the contract says, which
 * is always the careful way.
 */
#ifndef SLOWPOINT_H
#define SLOWPOINT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* The longest answer to a cook plan that is read: a default one stays under 2 KB, with steps after the bath under 8. */
#define SLOWPOINT_LONGEST_ANSWER 16384

/* Bytes of a question, and of the texts of an answer, with the zero at the end. Longer sentences are cut and say so. */
#define SLOWPOINT_QUESTION 512
#define SLOWPOINT_CODE 64
#define SLOWPOINT_SENTENCE 400

#define SLOWPOINT_MOST_WARNINGS 12
#define SLOWPOINT_MOST_CAUTIONS 4

/* A slab in a bath; a slab of the greatest thickness is the slow side of every other shape. */
struct slowpoint_question {
    const char *food;          /* id as in /v1/foods */
    double thickness_mm;
    double start_c;
    double setpoint_c;
    bool for_the_vulnerable;   /* the very young and old, the pregnant, people with weak immunity */
    const char *parameter_set; /* the version to use; NULL for the current one */
};

/* Zero is what an unknown word means. */
enum slowpoint_verdict {
    SLOWPOINT_NOT_MET = 0,
    SLOWPOINT_MET,
    SLOWPOINT_SURFACE_ONLY,
    SLOWPOINT_NOT_APPLICABLE
};

enum slowpoint_severity { SLOWPOINT_NONE = 0, SLOWPOINT_INFO, SLOWPOINT_CAUTION, SLOWPOINT_DANGER };

struct slowpoint_notice {
    enum slowpoint_severity severity;
    char code[SLOWPOINT_CODE];
    char text[SLOWPOINT_SENTENCE];
};

struct slowpoint_plan {
    char parameter_set[SLOWPOINT_CODE];
    char digest[SLOWPOINT_CODE];
    double setpoint_c;
    enum slowpoint_verdict verdict;

    /* Seconds from food in; only if has_take_out. */
    bool has_take_out;
    int32_t earliest_s;
    int32_t best_s;
    bool has_latest; /* false: nothing known closes the texture */
    int32_t latest_s;

    /* Why there is no time to take it out; its severity is SLOWPOINT_NONE. */
    struct slowpoint_notice reason;

    /* The gravest first; `warning_count` counts those that found no room, too. */
    size_t warning_count;
    size_t warnings_kept;
    struct slowpoint_notice warnings[SLOWPOINT_MOST_WARNINGS];
    size_t cautions_kept;
    struct slowpoint_notice cautions[SLOWPOINT_MOST_CAUTIONS];
};

struct slowpoint_problem {
    char code[SLOWPOINT_CODE];
    char text[SLOWPOINT_SENTENCE];
};

/*
 * Writes the body of POST /v1/cook-plans. False if a number is not finite (a sensor without a reading is no
 * temperature), or if the buffer is too small.
 */
bool slowpoint_write_question(const struct slowpoint_question *question, char *buffer, size_t size);

/*
 * Reads the answer. False if it is no plan: text that is no JSON, a required member that is missing or of another type,
 * a time out of range or out of order. Then nothing of `plan` may be shown.
 */
bool slowpoint_read_plan(const char *text, size_t length, struct slowpoint_plan *plan);

/* Reads a problem (RFC 9457). False if it is none. */
bool slowpoint_read_problem(const char *text, size_t length, struct slowpoint_problem *problem);

/* The gravest of all warnings. */
enum slowpoint_severity slowpoint_worst(const struct slowpoint_plan *plan);

/*
 * Whether a display may show the plan as one that meets its rule: the verdict says so, there is a time to take it out,
 * and nothing warns of danger.
 */
bool slowpoint_shown_as_met(const struct slowpoint_plan *plan);

/* The words of the contract, for the log and for people. */
const char *slowpoint_verdict_word(enum slowpoint_verdict verdict);
const char *slowpoint_severity_word(enum slowpoint_severity severity);

#endif
