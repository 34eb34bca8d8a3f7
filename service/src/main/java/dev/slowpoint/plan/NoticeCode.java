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
    FROM_FROZEN,
    /** Start temperature in C. */
    START_WARM,
    FISH_PARASITES,
    FISH_NOT_PASTEURISED,
    SHELLFISH_VIRUSES,
    SOFT_EGG,
    SALTED_KEEPS_TOUGHER,
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
    KEEP_UNDER_WATER,
    ESTIMATE_NOT_GUARANTEE
}
