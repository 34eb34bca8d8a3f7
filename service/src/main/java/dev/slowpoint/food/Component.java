package dev.slowpoint.food;

/** What a food is made of, as far as its thermal properties depend on it. */
public enum Component {
    /** Liquid water, bound or free. */
    WATER,
    /** Frozen water; no part of a composition, which counts all water as liquid. */
    ICE,
    /** Protein. */
    PROTEIN,
    /** Fat. */
    FAT,
    /** Carbohydrate without fibre. */
    CARBOHYDRATE,
    /** Dietary fibre. */
    FIBRE,
    /** Minerals. */
    ASH;

    /** The mass fraction of this component in a food that is not frozen [kg/kg]. */
    public double fractionIn(Composition composition) {
        return switch (this) {
            case WATER -> composition.water();
            case ICE -> 0.0;
            case PROTEIN -> composition.protein();
            case FAT -> composition.fat();
            case CARBOHYDRATE -> composition.carbohydrate();
            case FIBRE -> composition.fibre();
            case ASH -> composition.ash();
        };
    }
}
