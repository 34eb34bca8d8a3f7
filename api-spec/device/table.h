/*
 * The table that answers while the network is gone: fetched from POST /v1/lookup-tables in good times and kept with the
 * request that it answers, because it does not say for which food it is.
 */
#ifndef TABLE_H
#define TABLE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* What this device has room for; `longestBytes` of the request keeps the answer within it. */
#define TABLE_LONGEST_ANSWER 16384
#define TABLE_MOST_PLANES 64
#define TABLE_MOST_NODES 1024
#define TABLE_TEXT 65

enum table_quantity {
    TABLE_HOT_THROUGH,
    TABLE_SAFE,
    TABLE_TENDER,
    TABLE_GOOD_UNTIL,
    TABLE_SOFT_FROM,
    TABLE_QUANTITIES /* how many there are */
};

struct table_axis {
    int count;
    float planes[TABLE_MOST_PLANES];
};

struct table {
    char parameter_set[TABLE_TEXT];
    char digest[TABLE_TEXT];
    struct table_axis thickness_mm;
    struct table_axis setpoint_c;
    struct table_axis start_c;
    bool has[TABLE_QUANTITIES];
    int32_t times_s[TABLE_QUANTITIES][TABLE_MOST_NODES]; /* -1 is never */
};

enum table_finding {
    TABLE_TIME,      /* there is a time */
    TABLE_NEVER,     /* do not cook so */
    TABLE_OUTSIDE,   /* outside the table: no answer, and none to be guessed */
    TABLE_NO_COLUMN  /* the table does not hold this */
};

/* What a display needs of one cook. */
struct table_cook {
    enum table_finding finding;
    int32_t ready_s; /* not before; only with TABLE_TIME */
    bool has_latest;
    int32_t latest_s; /* not after */
    bool too_late;    /* ready only after it must be out: no moment satisfies all */
    bool safe_counts; /* whether `safe` is among what is waited for; if not, nothing may be shown as safe */
};

/* Reads an answer in JSON. False if it is no table, holds what cannot be, or is larger than there is room. */
bool table_read(const char *text, size_t length, struct table *table);

/*
 * One time at one point: what is waited for is rounded up, what the food must be out by is rounded down.
 */
enum table_finding table_lookup(const struct table *table, enum table_quantity quantity, float thickness_mm,
        float setpoint_c, float start_c, int32_t *seconds);

/* All that the table says of one cook: the latest of what is waited for, and what it must be out by. */
struct table_cook table_cook_at(const struct table *table, float thickness_mm, float setpoint_c, float start_c);

#endif
