#include "countdown.h"

#define MS_PER_S 1000

struct countdown countdown_from_food_in(uint32_t now_ms) {
    return countdown_resumed(now_ms, 0);
}

struct countdown countdown_lost(void) {
    struct countdown lost = {false, 0, 0};
    return lost;
}

struct countdown countdown_resumed(uint32_t now_ms, uint32_t elapsed_s) {
    struct countdown resumed = {true, now_ms, (uint64_t) elapsed_s * MS_PER_S};
    return resumed;
}

struct countdown countdown_at(struct countdown before, uint32_t now_ms) {
    /* Unsigned, so that a counter that wrapped in between gives the true step. */
    uint32_t step_ms = now_ms - before.last_ms;
    if (!before.known || step_ms > UINT32_MAX / 2) {
        return countdown_lost();
    }
    struct countdown now = {true, now_ms, before.elapsed_ms + step_ms};
    return now;
}

int64_t countdown_elapsed_s(struct countdown countdown) {
    return countdown.known ? (int64_t) (countdown.elapsed_ms / MS_PER_S) : COUNTDOWN_UNKNOWN;
}

static int64_t left_ms(struct countdown countdown, int32_t moment_s) {
    int64_t left = (int64_t) moment_s * MS_PER_S - (int64_t) countdown.elapsed_ms;
    return left > 0 ? left : 0;
}

int64_t countdown_until_s(struct countdown countdown, int32_t moment_s) {
    return countdown.known ? (left_ms(countdown, moment_s) + MS_PER_S - 1) / MS_PER_S : COUNTDOWN_UNKNOWN;
}

int64_t countdown_left_s(struct countdown countdown, int32_t moment_s) {
    return countdown.known ? left_ms(countdown, moment_s) / MS_PER_S : COUNTDOWN_UNKNOWN;
}
