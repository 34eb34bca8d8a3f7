package dev.slowpoint.texture;

/** What heat does to texture. */
public enum ProcessKind {
    /** Proteins of the raw piece set: it is no longer raw to the bite. */
    SET,
    /** A hard piece becomes soft enough to eat with pleasure. */
    TENDERISE,
    /** A soft piece becomes too soft: mushy, rubbery or falling apart. */
    OVERSOFTEN,
    /** Collagen loses its strength; explains, never an edge. */
    COLLAGEN_WEAKEN,
    /** Actin sets, the piece firms and dries; explains, never an edge. */
    FIRM_ACTIN,
    /** The red of meat fades; explains, never an edge. */
    COLOUR_LOSS
}
