package dev.slowpoint.plan;

/**
 * Everything a plan can warn of. The parameter set says how severe each is, when it is given and what it rests on; the
 * message bundle says it in plain words, with the values in the order named here.
 */
public enum NoticeCode {
    CORE_BELOW_54,
    SURFACE_ONLY,
    /** Hours between 10 and 54.4 C. */
    WARM_UP_OVER_6H,
    /** Hours between 10 and 54.4 C. */
    WARM_UP_OVER_4H,
    HOLD_55_60_OVER_6H,
    NONINTACT_MEAT,
    /** Hours between 10 and 54.4 C. */
    ROLLED_WARMS_SLOWLY,
    /** Log reduction of E. coli O157:H7 given. */
    MINCED_BELOW_STEC_LINE,
    POULTRY_BELOW_58,
    /** Log reduction given, log reduction asked, organism. */
    NOT_MET,
    THIN_MARGIN_54_60,
    SLOW_WARM_UP_ADAPTS,
    VULNERABLE_EATERS,
    EATEN_UNDERCOOKED,
    SEAR_BOTH_FACES,
    RAW_GARLIC_OR_HERBS,
    CHILL_IN_ICE_WATER,
    KEEP_COLD_7_DAYS,
    /** Log reduction of Listeria given. */
    KEEP_NEEDS_LISTERIA_TARGET,
    SPORES_SURVIVE,
    HOLD_BELOW_57,
    /** Hot-holding temperature in C that counts for the rule. */
    HOLD_BELOW_RULE,
    FROM_FROZEN,
    /** Start temperature in C. */
    START_WARM,
    FISH_PARASITES,
    FISH_NOT_PASTEURISED,
    SHELLFISH_VIRUSES,
    SOFT_EGG,
    SALTED_KEEPS_TOUGHER,
    FAT_UNKNOWN,
    /** Temperature in C that the first published time is for. */
    NO_TABLE_SO_COOL,
    /** Predicted growth of S. aureus in decimal orders. */
    TOXIN_STAYS,
    HALF_THAWED,
    STUFFED_PIECE,
    MUSCLE_PARASITES,
    WILD_GAME,
    FISH_SEALED_RAW,
    SWEET_OR_SALTED_EGG,
    LYSOZYME_HELPS_SPORES,
    COOL_STARCH_FAST,
    RAW_GARLIC_KEPT,
    BAG_SOLD,
    CURED_OR_DRIED,
    SALTED_ROLLED_MEAT,
    /** Days in cold stores. */
    STORE_OVER_10_DAYS,
    /** Temperature of the store in C. */
    SEALED_AND_WARM,
    REHEAT_TO_74,
    REHEAT_TOO_SLOW,
    PULSES_MUST_BOIL,
    STAYS_FIRM,
    /** Setpoint in C, growth of a pocket of air as a factor. */
    BAG_MAY_FLOAT,
    /** What closes the window: key of a word in the bundle. */
    TEXTURE_PAST,
    TEXTURE_NOT_YET,
    SAFE_AFTER_TEXTURE,
    /** Id of the cooling rule. */
    COOLING_NOT_KEPT,
    /** Hours without heater at most, hours of the piece below the growth limit at most. */
    INTERRUPTED_COOK,
    BATH_IN_GROWTH_RANGE,
    /** Hours at room temperature. */
    REST_TOO_LONG,
    /** Days asked for, days allowed. */
    STORE_TOO_LONG,
    REHEAT_IS_NO_KILL_STEP,
    /** Peak of the core in C, core wanted in C. */
    SEAR_OVERSHOOTS,
    FACE_IN_AIR,
    PACKS_TOUCH,
    /** Thickness of the layer in mm. */
    TRAPPED_AIR,
    /** Lowest temperature of the water in C. */
    BATH_SAGS,
    /** Temperature in C that the water ends at. */
    HEATER_TOO_WEAK,
    /** Temperature in C that the water starts at. */
    STARTS_COLD,
    LOG_SHOWS_NO_CORE,
    /** Hours without heater at most. */
    HEATER_WAS_OFF,
    OFF_TIME_DOUBTED,
    OFF_TIME_WORKED_OUT,
    /** Hours without a reading. */
    LOG_HAS_GAP,
    COLD_FOOD_ADDED,
    FLOATED,
    /** Hours out of the bath. */
    WAS_OUT_OF_BATH,
    /** Size told in mm, size measured in mm. */
    MEASURED_THICKER,
    /** Size told in mm, size that the readings mean in mm. */
    READINGS_MEAN_THICKER,
    /** Size told in mm, size that the readings mean in mm. */
    READINGS_MEAN_THINNER,
    /** How far the readings miss the model in K. */
    READINGS_DISAGREE,
    /** Hours that some of it was below the growth limit at most. */
    FELL_BACK,
    TOXIN_NOT_UNDONE,
    /** Hours asked for, hours needed. */
    LOAD_READY_LATE,
    /** Temperature in C before, temperature in C after. */
    LOAD_COOL_THE_WATER,
    /** Minutes. */
    LOAD_HEATER_AT_LIMIT,
    LOAD_WATER_NOT_COMPUTED,
    KEEP_UNDER_WATER,
    LOG_SHOWS_ONE_PLACE,
    /** Random points at which a table was held against plans, the share of its range in percent that they may have missed. */
    TABLE_CHECKED_NOT_PROVEN,
    ESTIMATE_NOT_GUARANTEE
}
