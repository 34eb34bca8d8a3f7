/*
 * A clock of the calendar that jumps: put before a program with LD_PRELOAD, it tells the time, then an hour more, a day less and
 * 400 days more, each for a second. Clocks that only count up are left alone, as they are when people or time servers set a
 * machine's clock.
 *
 *   cc -shared -fPIC -o jumping-clock.so jumping-clock.c -ldl
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <stddef.h>
#include <sys/time.h>
#include <time.h>

static int (*real_clock)(clockid_t, struct timespec *);

static int tell(clockid_t clock, struct timespec *now) {
    static const long jumps[] = {0L, 3600L, -86400L, 400L * 86400L};
    struct timespec up;
    int failed;
    if (real_clock == NULL) {
        real_clock = (int (*)(clockid_t, struct timespec *)) dlsym(RTLD_NEXT, "clock_gettime");
    }
    failed = real_clock(clock, now);
    if (failed == 0 && (clock == CLOCK_REALTIME || clock == CLOCK_REALTIME_COARSE)) {
        real_clock(CLOCK_MONOTONIC, &up);
        now->tv_sec += jumps[up.tv_sec % 4];
    }
    return failed;
}

int clock_gettime(clockid_t clock, struct timespec *now) {
    return tell(clock, now);
}

int gettimeofday(struct timeval *restrict now, void *restrict zone) {
    struct timespec told;
    int failed = tell(CLOCK_REALTIME, &told);
    (void) zone;
    now->tv_sec = told.tv_sec;
    now->tv_usec = told.tv_nsec / 1000;
    return failed;
}

time_t time(time_t *into) {
    struct timespec told;
    tell(CLOCK_REALTIME, &told);
    if (into != NULL) {
        *into = told.tv_sec;
    }
    return told.tv_sec;
}
