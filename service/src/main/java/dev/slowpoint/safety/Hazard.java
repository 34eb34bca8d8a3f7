package dev.slowpoint.safety;

/** What can make an eater ill. */
public enum Hazard {
    /** Salmonella. */
    SALMONELLA(Kind.CELLS),
    /** Listeria monocytogenes. */
    LISTERIA_MONOCYTOGENES(Kind.CELLS),
    /** Shiga-toxin forming E. coli, O157:H7 and its kin. */
    E_COLI_O157(Kind.CELLS),
    /** Campylobacter jejuni; grows in no food of interest here. */
    CAMPYLOBACTER(Kind.CELLS),
    /** Yersinia enterocolitica. */
    YERSINIA(Kind.CELLS),
    /** Staphylococcus aureus, whose toxin survives cooking. */
    S_AUREUS(Kind.CELLS),
    /** Vibrio parahaemolyticus. */
    VIBRIO_PARAHAEMOLYTICUS(Kind.CELLS),
    /** Vibrio vulnificus. */
    VIBRIO_VULNIFICUS(Kind.CELLS),
    /** Clostridium perfringens. */
    C_PERFRINGENS(Kind.SPORES),
    /** Clostridium botulinum types that grow from about 10 C. */
    C_BOTULINUM_PROTEOLYTIC(Kind.SPORES),
    /** Clostridium botulinum types that grow from 3 C, the limit of any cold store. */
    C_BOTULINUM_NON_PROTEOLYTIC(Kind.SPORES),
    /** Bacillus cereus, whose emetic toxin survives cooking. */
    B_CEREUS(Kind.SPORES),
    /** Norovirus and hepatitis A virus. */
    VIRUSES(Kind.VIRUS),
    /** Trichinella in the muscle of pigs, boars and bears. */
    TRICHINELLA(Kind.PARASITE),
    /** Anisakis in the muscle of fish. */
    ANISAKIS(Kind.PARASITE);

    /** How a hazard lives. */
    public enum Kind {
        /** Bacteria that form no spores. */
        CELLS,
        /** Bacteria whose spores survive a low-temperature cook. */
        SPORES,
        /** Does not grow in food. */
        VIRUS,
        /** Does not grow in food and sits inside the muscle, where no sear reaches it. */
        PARASITE
    }

    private final Kind kind;

    Hazard(Kind kind) {
        this.kind = kind;
    }

    /** How it lives. */
    public Kind kind() {
        return kind;
    }
}
