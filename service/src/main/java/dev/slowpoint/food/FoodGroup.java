package dev.slowpoint.food;

/** What a food is, as far as its freezing point and its hazards depend on it. */
public enum FoodGroup {
    /** Beef and veal. */
    BEEF,
    /** Lamb and mutton. */
    LAMB,
    /** Pork. */
    PORK,
    /** Chicken. */
    CHICKEN,
    /** Turkey. */
    TURKEY,
    /** Duck, goose and other birds, for which the longer of the published tables counts. */
    OTHER_POULTRY,
    /** Fish with fins. */
    FISH,
    /** Shrimp, lobster and their kin. */
    CRUSTACEAN,
    /** Molluscs with two shells: scallop, mussel. */
    BIVALVE,
    /** Squid and octopus. */
    CEPHALOPOD,
    /** Eggs in their shell. */
    EGG_IN_SHELL,
    /** Beaten egg, custard and other mixes with egg. */
    EGG_MIX,
    /** Vegetables, and boiled grain. */
    VEGETABLE,
    /** Fruit. */
    FRUIT,
    /** Beans, lentils and peas. */
    PULSE,
    /** Tofu. */
    SOY;

    /** Whether the rules for birds apply. */
    public boolean poultry() {
        return this == CHICKEN || this == TURKEY || this == OTHER_POULTRY;
    }

    /** Whether the rules for the meat of mammals apply. */
    public boolean redMeat() {
        return this == BEEF || this == LAMB || this == PORK;
    }

    /** Whether it comes from water. */
    public boolean seafood() {
        return this == FISH || this == CRUSTACEAN || this == BIVALVE || this == CEPHALOPOD;
    }

    /** Whether it grows in a field or on a tree. */
    public boolean plant() {
        return this == VEGETABLE || this == FRUIT || this == PULSE || this == SOY;
    }
}
