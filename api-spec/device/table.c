#include "table.h"

#include <cjson/cJSON.h>
#include <math.h>
#include <string.h>

#define LONGEST_S 1209600
#define NEVER (-1)

static const char *const QUANTITY_WORDS[TABLE_QUANTITIES] = {"hotThrough", "safe", "tender", "goodUntil", "softFrom"};

static bool awaited(enum table_quantity quantity) {
    return quantity != TABLE_GOOD_UNTIL && quantity != TABLE_SOFT_FROM;
}

static bool read_text(const cJSON *answer, const char *name, char *to) {
    const cJSON *member = cJSON_GetObjectItemCaseSensitive(answer, name);
    if (!cJSON_IsString(member) || strlen(member->valuestring) >= TABLE_TEXT) {
        return false;
    }
    memcpy(to, member->valuestring, strlen(member->valuestring) + 1);
    return true;
}

static bool read_axis(const cJSON *answer, const char *name, struct table_axis *axis) {
    const cJSON *planes = cJSON_GetObjectItemCaseSensitive(answer, name);
    if (!cJSON_IsArray(planes) || cJSON_GetArraySize(planes) < 1
            || cJSON_GetArraySize(planes) > TABLE_MOST_PLANES) {
        return false;
    }
    axis->count = 0;
    const cJSON *plane;
    cJSON_ArrayForEach(plane, planes) {
        if (!cJSON_IsNumber(plane) || !isfinite(plane->valuedouble)) {
            return false;
        }
        float value = (float) plane->valuedouble;
        /* Planes that do not rise would be divided by zero. */
        if (axis->count > 0 && !(value > axis->planes[axis->count - 1])) {
            return false;
        }
        axis->planes[axis->count++] = value;
    }
    return true;
}

static bool read_column(const cJSON *column, int nodes, struct table *table) {
    const cJSON *word = cJSON_GetObjectItemCaseSensitive(column, "quantity");
    const cJSON *times = cJSON_GetObjectItemCaseSensitive(column, "timesS");
    if (!cJSON_IsString(word) || !cJSON_IsArray(times)) {
        return false;
    }
    int quantity = 0;
    while (quantity < TABLE_QUANTITIES && strcmp(word->valuestring, QUANTITY_WORDS[quantity]) != 0) {
        quantity++;
    }
    if (quantity == TABLE_QUANTITIES) {
        return true; /* one that this device does not know is left out */
    }
    if (cJSON_GetArraySize(times) != nodes) {
        return false;
    }
    int node = 0;
    const cJSON *time;
    cJSON_ArrayForEach(time, times) {
        double seconds = cJSON_IsNumber(time) ? time->valuedouble : (double) NAN;
        if (!(seconds >= NEVER && seconds <= LONGEST_S) || seconds != floor(seconds)) {
            return false;
        }
        table->times_s[quantity][node++] = (int32_t) seconds;
    }
    table->has[quantity] = true;
    return true;
}

static bool read_columns(const cJSON *answer, struct table *table) {
    int nodes = table->thickness_mm.count * table->setpoint_c.count * table->start_c.count;
    const cJSON *columns = cJSON_GetObjectItemCaseSensitive(answer, "columns");
    if (nodes > TABLE_MOST_NODES || !cJSON_IsArray(columns)) {
        return false;
    }
    const cJSON *column;
    cJSON_ArrayForEach(column, columns) {
        if (!read_column(column, nodes, table)) {
            return false;
        }
    }
    return true;
}

bool table_read(const char *text, size_t length, struct table *table) {
    memset(table, 0, sizeof *table);
    cJSON *answer = cJSON_ParseWithLength(text, length);
    bool read = read_text(answer, "parameterSet", table->parameter_set)
            && read_text(answer, "digest", table->digest)
            && read_axis(answer, "thicknessMm", &table->thickness_mm)
            && table->thickness_mm.planes[0] > 0
            && read_axis(answer, "setpointC", &table->setpoint_c)
            && read_axis(answer, "startC", &table->start_c)
            && read_columns(answer, table);
    cJSON_Delete(answer);
    return read;
}

/* Where a value lies between two neighbouring planes. */
struct place {
    int below;
    float share; /* of the way to the next plane */
};

/* False for what lies outside, and for what is no number. */
static bool place_in(const struct table_axis *axis, float value, bool squared, struct place *place) {
    if (!(value >= axis->planes[0] && value <= axis->planes[axis->count - 1])) {
        return false;
    }
    place->below = 0;
    place->share = 0;
    if (axis->count == 1) {
        return true;
    }
    while (place->below + 2 < axis->count && value >= axis->planes[place->below + 1]) {
        place->below++;
    }
    float low = axis->planes[place->below];
    float high = axis->planes[place->below + 1];
    place->share = squared ? (value * value - low * low) / (high * high - low * low) : (value - low) / (high - low);
    return true;
}

static float weight(struct place place, int side) {
    return side == 1 ? place.share : 1 - place.share;
}

enum table_finding table_lookup(const struct table *table, enum table_quantity quantity, float thickness_mm,
        float setpoint_c, float start_c, int32_t *seconds) {
    if (!table->has[quantity]) {
        return TABLE_NO_COLUMN;
    }
    struct place size;
    struct place setpoint;
    struct place start;
    /* Conduction takes a time that grows with the square of the thickness. */
    if (!place_in(&table->thickness_mm, thickness_mm, true, &size)
            || !place_in(&table->setpoint_c, setpoint_c, false, &setpoint)
            || !place_in(&table->start_c, start_c, false, &start)) {
        return TABLE_OUTSIDE;
    }
    float sum = 0;
    for (int corner = 0; corner < 8; corner++) {
        int i = corner & 1;
        int j = corner >> 1 & 1;
        int k = corner >> 2;
        float counts = weight(size, i) * weight(setpoint, j) * weight(start, k);
        if (counts <= 0) {
            continue; /* its node may say never, or not exist */
        }
        int node = ((size.below + i) * table->setpoint_c.count + setpoint.below + j) * table->start_c.count
                + start.below + k;
        int32_t time = table->times_s[quantity][node];
        if (time == NEVER) {
            return TABLE_NEVER;
        }
        sum += counts * (float) time;
    }
    *seconds = (int32_t) (awaited(quantity) ? ceilf(sum) : floorf(sum));
    return TABLE_TIME;
}

struct table_cook table_cook_at(const struct table *table, float thickness_mm, float setpoint_c, float start_c) {
    struct table_cook cook = {TABLE_NO_COLUMN, 0, false, 0, false, false};
    for (int quantity = 0; quantity < TABLE_QUANTITIES; quantity++) {
        int32_t seconds = 0;
        enum table_finding found =
                table_lookup(table, (enum table_quantity) quantity, thickness_mm, setpoint_c, start_c, &seconds);
        /* What is too soft for most is for those who want it so; a cook need not be out by then. */
        if (found == TABLE_NO_COLUMN || quantity == TABLE_SOFT_FROM) {
            continue;
        }
        if (found != TABLE_TIME) {
            struct table_cook none = {found, 0, false, 0, false, false};
            return none;
        }
        if (quantity == TABLE_GOOD_UNTIL) {
            cook.has_latest = true;
            cook.latest_s = seconds;
        } else {
            cook.finding = TABLE_TIME;
            cook.safe_counts = cook.safe_counts || quantity == TABLE_SAFE;
            cook.ready_s = seconds > cook.ready_s ? seconds : cook.ready_s;
        }
    }
    cook.too_late = cook.finding == TABLE_TIME && cook.has_latest && cook.ready_s > cook.latest_s;
    return cook;
}
