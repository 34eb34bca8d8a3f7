/*
 * When to ask again. Pure: the same arguments give the same decision; waiting is left to the caller.
 *
 * Every operation of the service is free of side effects, so that asking twice does no harm and the same question gets
 * the same answer. What must be kept in check is only how often all devices of a street ask after a power cut: hence the
 * exponential back-off with full jitter, and the end of it.
 */
#ifndef RETRY_H
#define RETRY_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* For `status`: no answer came at all, or not all of it. */
#define RETRY_NO_ANSWER 0L

/* For `retry_after_s`: the answer had no such header, or one that takes a clock to read. */
#define RETRY_AFTER_ABSENT (-1L)

/* Attempts in all: while a person waits, and while nobody does (a table that is fetched in good time). */
#define RETRY_ATTEMPTS_WATCHED 5u
#define RETRY_ATTEMPTS_UNWATCHED 10u

/* The ceiling of the wait after the first attempt; it doubles with each, up to the cap. */
#define RETRY_BASE_MS 500u
#define RETRY_CAP_MS 30000u

/* A server that wants more patience than this is as good as gone: the offline table answers instead. */
#define RETRY_LONGEST_AFTER_S 120L

struct retry_decision {
    bool again;
    uint32_t wait_ms; /* zero unless `again` */
};

/* Whether what ended with this status may succeed later. */
bool retry_may_help(long status);

/*
 * What follows an attempt that brought no plan.
 *
 * attempt: how many were made, from 1.
 * most_attempts: how many may be made in all.
 * status: of HTTP, or RETRY_NO_ANSWER.
 * retry_after_s: as retry_after_seconds() reads it; not negative, or RETRY_AFTER_ABSENT.
 * random: any number, evenly distributed; it must differ between devices.
 */
struct retry_decision retry_next(
        unsigned attempt, unsigned most_attempts, long status, long retry_after_s, uint32_t random);

/* Seconds of a Retry-After header, whose value need not end with a zero; RETRY_AFTER_ABSENT for a date. */
long retry_after_seconds(const char *value, size_t length);

#endif
