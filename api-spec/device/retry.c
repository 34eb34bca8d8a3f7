#include "retry.h"

/* More seconds than this are all the same: too many. It keeps the sum below from running over. */
#define MOST_SECONDS 1000000L

/*
 * 408, 429 and 503 ask for it; 502 and 504 come from what stands between. A 500 is a fault that the same request will meet
 * again, and all other 4xx speak of the request.
 */
bool retry_may_help(long status) {
    return status == RETRY_NO_ANSWER || status == 408 || status == 429 || status == 502 || status == 503
            || status == 504;
}

struct retry_decision retry_next(
        unsigned attempt, unsigned most_attempts, long status, long retry_after_s, uint32_t random) {
    struct retry_decision give_up = {false, 0};
    if (!retry_may_help(status) || attempt >= most_attempts || retry_after_s > RETRY_LONGEST_AFTER_S) {
        return give_up;
    }
    uint32_t ceiling = RETRY_BASE_MS;
    for (unsigned i = 1; i < attempt && ceiling < RETRY_CAP_MS; i++) {
        ceiling *= 2;
    }
    if (ceiling > RETRY_CAP_MS) {
        ceiling = RETRY_CAP_MS;
    }
    /* Jitter comes on top of Retry-After: all who were sent away at once were told the same seconds. */
    uint32_t told_ms = retry_after_s > 0 ? (uint32_t) retry_after_s * 1000u : 0;
    struct retry_decision again = {true, told_ms + random % (ceiling + 1)};
    return again;
}

long retry_after_seconds(const char *value, size_t length) {
    size_t i = 0;
    while (i < length && (value[i] == ' ' || value[i] == '\t')) {
        i++;
    }
    size_t begin = i;
    long seconds = 0;
    while (i < length && value[i] >= '0' && value[i] <= '9') {
        seconds = seconds * 10 + (value[i] - '0');
        if (seconds > MOST_SECONDS) {
            seconds = MOST_SECONDS;
        }
        i++;
    }
    if (i == begin) {
        return RETRY_AFTER_ABSENT;
    }
    while (i < length && (value[i] == ' ' || value[i] == '\t' || value[i] == '\r' || value[i] == '\n')) {
        i++;
    }
    return i == length ? seconds : RETRY_AFTER_ABSENT;
}
