/*
 * A countdown that needs no clock. Times of a plan are seconds from food in; the device has a counter of milliseconds
 * that may wrap, and forgets everything when the power fails. Pure: the caller reads the counter.
 *
 * A countdown is never shortened by guesswork. Where it is not certain how long the food has been in, the answer is
 * that nobody knows.
 */
#ifndef COUNTDOWN_H
#define COUNTDOWN_H

#include <stdbool.h>
#include <stdint.h>

/* Answers about a countdown that is not known. */
#define COUNTDOWN_UNKNOWN (-1)

struct countdown {
    bool known;
    uint32_t last_ms;
    uint64_t elapsed_ms;
};

/* The food goes in now. */
struct countdown countdown_from_food_in(uint32_t now_ms);

/* After a reboot: how long the food has been in cannot be known from the counter. */
struct countdown countdown_lost(void);

/* It is known by other means (a person, a clock that ran on) how long the food has been in. */
struct countdown countdown_resumed(uint32_t now_ms, uint32_t elapsed_s);

/*
 * Brings it up to now. To be called at least once in 24 days: a counter that seems to have moved by more than half of
 * its range has gone back or was not watched, and then the countdown is lost.
 */
struct countdown countdown_at(struct countdown before, uint32_t now_ms);

/* How long ago the food went in, whole seconds that are over: `soFar.elapsedS` of a replan. Or COUNTDOWN_UNKNOWN. */
int64_t countdown_elapsed_s(struct countdown countdown);

/* Seconds until a moment that is waited for, rounded up; zero once it is there. Or COUNTDOWN_UNKNOWN. */
int64_t countdown_until_s(struct countdown countdown, int32_t moment_s);

/* Seconds left until a moment that must not be passed, rounded down; zero once it is there. Or COUNTDOWN_UNKNOWN. */
int64_t countdown_left_s(struct countdown countdown, int32_t moment_s);

#endif
