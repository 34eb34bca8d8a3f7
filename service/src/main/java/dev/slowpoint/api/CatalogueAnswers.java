package dev.slowpoint.api;

import dev.slowpoint.food.FoodGroup;
import dev.slowpoint.food.Form;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The entries of the catalogues, and their lists. */
public final class CatalogueAnswers {

    /** A day as in RFC 3339. */
    static final String DAY = "[0-9]{4}-[0-9]{2}-[0-9]{2}";

    /** Differences that one answer lists. */
    static final int MOST_DIFFERENCES = 500;

    private CatalogueAnswers() {}

    /** One food. */
    @Schema(description = "One food of the current parameter set.")
    public record FoodEntry(
            @Schema(description = "Id for requests.", example = "pork-loin")
            String id,

            @Schema(description = "Readable name.", example = "Pork loin")
            String name,

            @Schema(
                    description = "What kind of food it is.",
                    examples = {"pork", "fish", "vegetable"})
            String group,

            @Schema(description = "Forms in which it may be asked for.", example = "intact") @Items(max = 20)
            List<String> forms,

            @Schema(
                    description = "Raw, or cooked when the composition is that of the cooked food.",
                    examples = {"raw", "cooked"})
            String condition,

            @Schema(description = "Class of the texture model; absent when texture is not modelled.", example = "pork")
            @Nullable
            String textureClass,

            @Schema(description = "Composition, adding up to 100.")
            CompositionEntry composition,

            @Schema(description = "Initial freezing point.", example = "-1.1", minimum = "-40", maximum = "0")
            @Unit("Cel")
            double freezingPointC,

            @Schema(description = "What can be in it.", example = "salmonella") @Items(max = 50)
            List<String> hazards,

            @Schema(description = "Where the values come from.") @Items(max = 20)
            List<Origin> origins) {

        /** Rounds, and copies the lists. */
        public FoodEntry {
            freezingPointC = Figures.temperatureC(freezingPointC);
            forms = List.copyOf(forms);
            hazards = List.copyOf(hazards);
            origins = List.copyOf(origins);
        }

        /** The word of a group on the wire. */
        public static String word(FoodGroup group) {
            return Words.of(group);
        }

        /** The word of a form on the wire. */
        public static String word(Form form) {
            return Words.of(form);
        }
    }

    /** Composition of a food of the catalogue. */
    @Schema(description = "Composition in percent of mass.")
    public record CompositionEntry(
            @Schema(description = "Water.", example = "72", minimum = "0", maximum = "100") @Unit("%")
            double waterPercent,

            @Schema(description = "Protein.", example = "21", minimum = "0", maximum = "100") @Unit("%")
            double proteinPercent,

            @Schema(description = "Fat.", example = "6", minimum = "0", maximum = "100") @Unit("%")
            double fatPercent,

            @Schema(description = "Carbohydrate without fibre.", example = "0", minimum = "0", maximum = "100")
            @Unit("%")
            double carbohydratePercent,

            @Schema(description = "Fibre.", example = "0", minimum = "0", maximum = "100") @Unit("%")
            double fibrePercent,

            @Schema(description = "Ash.", example = "1", minimum = "0", maximum = "100") @Unit("%")
            double ashPercent) {

        /** Rounds. */
        public CompositionEntry {
            waterPercent = Figures.percent(waterPercent);
            proteinPercent = Figures.percent(proteinPercent);
            fatPercent = Figures.percent(fatPercent);
            carbohydratePercent = Figures.percent(carbohydratePercent);
            fibrePercent = Figures.percent(fibrePercent);
            ashPercent = Figures.percent(ashPercent);
        }
    }

    /** Where values come from. */
    @Schema(description = "Where values come from.")
    public record Origin(
            @Schema(
                    description = "How they are known." + " Treat an unknown word as `memory`.",
                    examples = {"read", "fitted", "memory"})
            String mark,

            @Schema(description = "Author, year and table.", example = "Choi and Okos 1986")
            String source) {}

    /** All foods. */
    @Schema(description = "All foods of the current parameter set.")
    public record FoodList(
            @Schema(description = "The foods, by id.") @Items(max = 10000)
            List<FoodEntry> foods) {}

    /** One rule. */
    @Schema(description = "One published rule: what a cook must do, or how fast cooked food must be cooled.")
    public record RuleEntry(
            @Schema(description = "Id for requests.", example = "us-fsis-2021")
            String id,

            @Schema(
                    description = "What it is about: `cooking` for cook plans, `cooling` for chill plans.",
                    examples = {"cooking", "cooling"})
            String kind,

            @Schema(description = "Readable name.", example = "FSIS cooking guideline with the FDA tables for the rest")
            String name,

            @Schema(
                    description = "Who issued it, and where it holds; of a cooling rule see `origins`.",
                    example = "United States")
            @Nullable
            String jurisdiction,

            @Schema(description = "Edition or year; of a cooling rule see `origins`.", example = "2021") @Nullable
            String edition,

            @Schema(description = "What it asks of which food; empty for a cooling rule.") @Items(max = 200)
            List<RequirementEntry> requirements,

            @Schema(description = "All limits that a cooling rule sets; empty for another.") @Items(max = 20)
            List<CoolingEntry> coolingLimits,

            @Schema(description = "What it says of each topic, and what counts in plans; empty for a cooling rule.")
            @Items(max = 20)
            List<TopicEntry> topics,

            @Schema(description = "What to know about it.", example = "Guidance, not law.") @Nullable
            String note,

            @Schema(description = "Where it was published.") @Items(max = 20)
            List<Origin> origins) {

        /** Copies the lists. */
        public RuleEntry {
            requirements = List.copyOf(requirements);
            coolingLimits = List.copyOf(coolingLimits);
            topics = List.copyOf(topics);
            origins = List.copyOf(origins);
        }
    }

    /** One topic of a rule. */
    @Schema(description = "What a rule says of one topic.")
    public record TopicEntry(
            @Schema(
                    description = "The topic.",
                    examples = {
                        "cooking",
                        "warmUp",
                        "holding",
                        "cooling",
                        "storage",
                        "reheating",
                        "parasites",
                        "eaters",
                        "labels"
                    })
            String topic,

            @Schema(
                    description = "`read` if something was read, `recalled` if all that is known is from memory,"
                            + " `notRead` if nothing is known: then the rule may still speak of it."
                            + " Treat an unknown word as `notRead`.",
                    examples = {"read", "recalled", "notRead"})
            String coverage,

            @Schema(description = "The limit that counts in plans judged by this rule, where plans have one.") @Nullable
            PlanLimit planLimit,

            @Schema(description = "What it asks, in our words.") @Items(max = 200)
            List<ClauseEntry> clauses) {

        /** Copies the list. */
        public TopicEntry {
            clauses = List.copyOf(clauses);
        }
    }

    /** The limit that counts in plans. */
    @Schema(description = "A limit that counts in plans.")
    public record PlanLimit(
            @Schema(description = "Id in the parameter set; of cooling that of a cooling rule.", example = "A-CUT-6H")
            String id,

            @Schema(
                    description = "Whether it is the rule's own. Else it stands in because no own one was read, or the"
                            + " own one is the laxer.",
                    example = "true")
            boolean own,

            @Schema(
                    description = "Lower end of the warm-up range, or the lowest for food that waits hot.",
                    example = "10",
                    minimum = "-40",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double fromC,

            @Schema(
                    description = "Upper end of the warm-up range, or the warmest store.",
                    example = "54.44",
                    minimum = "-40",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double toC,

            @Schema(description = "The longest time.", example = "21600", minimum = "0", maximum = "1209600")
            @Unit("s")
            @Nullable
            Integer longestS,

            @Schema(description = "What it rests on.") Origin origin) {

        /** Rounds. */
        public PlanLimit {
            fromC = fromC == null ? null : Figures.temperatureC(fromC);
            toC = toC == null ? null : Figures.temperatureC(toC);
        }
    }

    /** One thing that a rule asks, to be read. */
    @Schema(description = "One thing that a rule asks, in our words.")
    public record ClauseEntry(
            @Schema(description = "Id in the parameter set.", example = "FC-HOLD-HOT")
            String id,

            @Schema(description = "What it asks.", example = "Food waits hot at 57 C or above.")
            String text,

            @Schema(
                    description = "Temperature it starts at, or the lowest it allows.",
                    example = "57",
                    minimum = "-40",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double fromC,

            @Schema(
                    description = "Temperature it ends at, or the highest it allows.",
                    example = "5",
                    minimum = "-40",
                    maximum = "100")
            @Unit("Cel")
            @Nullable
            Double toC,

            @Schema(description = "The number it sets, in `unit`.", example = "6", minimum = "0", maximum = "1000")
            @Nullable
            Double limit,

            @Schema(
                    description = "Unit of `limit`."
                            + " A limit in an unknown word is not to be reckoned with: show the text.",
                    examples = {"s", "min", "h", "d", "log10", "CFU/g"})
            @Nullable
            String unit,

            @Schema(description = "What else to know.", example = "A ceiling and no proof.") @Nullable
            String note,

            @Schema(description = "Where it was read; `memory` or `mixed` if it was not.")
            Origin origin) {

        /** Rounds. */
        public ClauseEntry {
            fromC = fromC == null ? null : Figures.temperatureC(fromC);
            toC = toC == null ? null : Figures.temperatureC(toC);
        }
    }

    /** One limit of a cooling rule. */
    @Schema(description = "One limit of a cooling rule, for the warmest point of a piece.")
    public record CoolingEntry(
            @Schema(description = "Id in the parameter set.", example = "FC-COOL-1")
            String id,

            @Schema(
                    description = "The clock starts when the piece falls to it, or at once when it is colder.",
                    example = "57",
                    minimum = "-40",
                    maximum = "100")
            @Unit("Cel")
            double fromC,

            @Schema(description = "The clock stops here.", example = "21", minimum = "-40", maximum = "100")
            @Unit("Cel")
            double toC,

            @Schema(description = "The longest time.", example = "7200", minimum = "0", maximum = "1209600") @Unit("s")
            int longestS,

            @Schema(description = "What it rests on.") Origin origin) {

        /** Rounds. */
        public CoolingEntry {
            fromC = Figures.temperatureC(fromC);
            toC = Figures.temperatureC(toC);
        }
    }

    /** One thing that a rule asks. */
    @Schema(description = "What a rule asks of some foods for one organism.")
    public record RequirementEntry(
            @Schema(description = "Id, as in plans.", example = "RQ-POULTRY-CHICKEN")
            String id,

            @Schema(
                    description = "`own` if the rule itself asks it; `fallback` if the rule names nothing that was read"
                            + " for these foods, and the strictest benchmark that was read stands in."
                            + " Treat an unknown word as `fallback`.",
                    examples = {"own", "fallback"})
            String basis,

            @Schema(description = "Groups of foods it speaks of.", example = "chicken") @Items(max = 50)
            List<String> groups,

            @Schema(
                    description = "Which pieces it speaks of." + " Treat an unknown word as `any`.",
                    examples = {"any", "intact", "nonIntact"})
            String pieces,

            @Schema(description = "Purposes it speaks of.", example = "keep") @Items(max = 20)
            List<String> purposes,

            @Schema(description = "The organism.", example = "salmonella")
            String organism,

            @Schema(
                    description = "Log reduction asked; 1 for one whole treatment.",
                    example = "7",
                    minimum = "0",
                    maximum = "20")
            @Unit("1")
            double requiredLog10,

            @Schema(description = "Below it nothing counts.", example = "57.78", minimum = "0", maximum = "100")
            @Unit("Cel")
            double floorC,

            @Schema(description = "Published table it is judged by, if any.", example = "fsis-chicken-7.0") @Nullable
            String table,

            @Schema(description = "Whether it informs only and does not decide.", example = "false")
            boolean advisory,

            @Schema(description = "Where it comes from.") Origin origin) {

        /** Rounds, and copies the lists. */
        public RequirementEntry {
            groups = List.copyOf(groups);
            purposes = List.copyOf(purposes);
            requiredLog10 = Figures.requiredLog10(requiredLog10);
            floorC = Figures.temperatureC(floorC);
        }
    }

    /** All rules. */
    @Schema(description = "All rules of the current parameter set.")
    public record RuleList(
            @Schema(description = "The rules, by id.") @Items(max = 200)
            List<RuleEntry> rules) {}

    /** One parameter set. */
    @Schema(description = "One parameter set.")
    public record ParameterSetEntry(
            @Schema(description = "Version for requests.", example = "2026.1")
            String version,

            @Schema(description = "SHA-256 digest over its files.", example = "5d41402abc4b2a76b9719d911017c592")
            String digest,

            @Schema(
                    description = "Its standing." + " Treat an unknown word as `deprecated`.",
                    examples = {"current", "available", "deprecated"})
            String status,

            @Schema(
                    description = "Day in UTC from which it should not be pinned anew; only of a deprecated set.",
                    example = "2027-01-01",
                    pattern = DAY,
                    maxLength = 10)
            @Nullable
            String deprecatedOn,

            @Schema(
                    description = "Day in UTC from which it may be gone; only where that is known.",
                    example = "2029-01-01",
                    pattern = DAY,
                    maxLength = 10)
            @Nullable
            String sunsetOn,

            @Schema(
                    description = "Version of the set to change to; only of a deprecated set.",
                    example = "2027.1",
                    pattern = CookPlanRequest.VERSION,
                    maxLength = 64)
            @Nullable
            String successor) {}

    /** All parameter sets. */
    @Schema(description = "All parameter sets that requests may pin.")
    public record ParameterSetList(
            @Schema(description = "The parameter sets, newest first.") @Items(max = 100)
            List<ParameterSetEntry> parameterSets) {}

    /** What differs between two parameter sets. */
    @Schema(
            description =
                    "What differs in one parameter set from another: how many rows of which tables, and cell by cell."
                            + " Cells are compared as text.")
    public record ParameterSetDifferences(
            @Schema(description = "Version of the set looked at.", example = "2026.1")
            String version,

            @Schema(description = "SHA-256 digest over its files.", example = "5d41402abc4b2a76b9719d911017c592")
            String digest,

            @Schema(description = "Version of the set that it is compared with.", example = "2026.1")
            String from,

            @Schema(
                    description = "SHA-256 digest over the files of that one.",
                    example = "7d793037a0760186574b0282f2f435e7")
            String fromDigest,

            @Schema(description = "The tables whose files differ, by name.") @Items(max = 100)
            List<TableDifference> tables,

            @Schema(
                    description = "How many differences there are, listed or not.",
                    example = "3",
                    minimum = "0",
                    maximum = "1000000")
            int count,

            @Schema(description = "The differences, by table; the first 500 where there are more.")
            @Items(max = MOST_DIFFERENCES)
            List<SetDifference> differences) {

        /** Copies the lists. */
        public ParameterSetDifferences {
            tables = List.copyOf(tables);
            differences = List.copyOf(differences);
        }
    }

    /** How many rows of a table differ. */
    @Schema(
            description =
                    "How many rows of one table differ. All three are zero where only the writing does: the order of"
                            + " rows, quotes, blanks.")
    public record TableDifference(
            @Schema(description = "File of the table.", example = "foods.csv")
            String table,

            @Schema(
                    description = "Rows that only the set looked at has.",
                    example = "1",
                    minimum = "0",
                    maximum = "1000000")
            int added,

            @Schema(
                    description = "Rows that only the other set has.",
                    example = "0",
                    minimum = "0",
                    maximum = "1000000")
            int removed,

            @Schema(
                    description = "Rows that both have, with other cells.",
                    example = "1",
                    minimum = "0",
                    maximum = "1000000")
            int changed) {}

    /** One cell that changed, or one row that came or went. */
    @Schema(description = "One cell that changed, or one row that came or went.")
    public record SetDifference(
            @Schema(description = "File of the table.", example = "foods.csv")
            String table,

            @Schema(
                    description = "What happened to the row." + " Treat an unknown word as `changed`.",
                    examples = {"added", "removed", "changed"})
            String change,

            @Schema(
                    description = "The cells that name the row, joined by `/`: the fewest leading columns that tell all"
                            + " rows apart.",
                    example = "pork-loin")
            String key,

            @Schema(description = "Column of the cell; absent for a whole row.", example = "fat") @Nullable
            String column,

            @Schema(
                    description = "What the other set says; absent where its cell is empty, and for a whole row.",
                    example = "0.06")
            @Nullable
            String oldValue,

            @Schema(
                    description = "What the set looked at says; absent where its cell is empty, and for a whole row.",
                    example = "0.07")
            @Nullable
            String newValue,

            @Schema(
                    description = "Source of the row, in the set looked at where it has the row; absent where the table"
                            + " names none.",
                    example = "USDA National Nutrient Database SR28")
            @Nullable
            String source) {}

    /** One warning. */
    @Schema(description = "One warning that a plan may carry.")
    public record WarningEntry(
            @Schema(description = "As it stands in plans.", example = "WARM_UP_OVER_4H")
            String code,

            @Schema(
                    description = "How grave it is at most." + " Treat an unknown word as `danger`.",
                    examples = {"info", "caution", "danger"})
            String severity,

            @Schema(
                    description =
                            "Of one plan, or a caution that stands always." + " Treat an unknown word as `warning`.",
                    examples = {"warning", "caution"})
            String kind,

            @Schema(description = "When it is given.", example = "start below the freezing point")
            String trigger,

            @Schema(
                    description = "Its sentence; values of a plan stand in braces.",
                    example = "The plan counts thawing. It holds for separate, flat pieces only.")
            String text,

            @Schema(description = "What it rests on.") Origin origin) {}

    /** All warnings. */
    @Schema(description = "All warnings that plans may carry.")
    public record WarningList(
            @Schema(description = "The warnings, by code.") @Items(max = 1000)
            List<WarningEntry> warnings) {}

    /** One problem. */
    @Schema(description = "One problem or fault that the service may answer with.")
    public record ProblemEntry(
            @Schema(description = "As it stands in problems and faults.", example = "OUT_OF_RANGE")
            String code,

            @Schema(description = "The path that names it.", example = "/problems/out-of-range")
            String type,

            @Schema(description = "HTTP status.", example = "400", minimum = "400", maximum = "599")
            int status,

            @Schema(description = "The problem in a few words.", example = "Out of range")
            String title,

            @Schema(description = "Why it happens.", example = "The number lies outside what can be meant.")
            String cause,

            @Schema(description = "What to do about it.", example = "Check the unit.")
            String remedy,

            @Schema(description = "Whether the same request may succeed later.", example = "false")
            boolean retryable) {

        static ProblemEntry of(ProblemCode code, Sentences sentences) {
            return new ProblemEntry(
                    code.name(),
                    code.type(),
                    code.status(),
                    sentences.title(code),
                    sentences.cause(code),
                    sentences.remedy(code),
                    code.retryable());
        }
    }

    /** All problems. */
    @Schema(description = "All problems and faults that the service may answer with.")
    public record ProblemList(
            @Schema(description = "The problems, by status.") @Items(max = 1000)
            List<ProblemEntry> problems) {}
}
