package dev.slowpoint.plan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The answer to a well-formed question that the model or the safety rules cannot answer. It names everything that stands
 * in the way, the most urgent first, so that a caller corrects a request once and not step by step.
 */
public final class Refusal extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient List<Fault> faults;
    private final transient List<Alternative> alternatives;

    /** Refuses for at least one reason. */
    public Refusal(List<Fault> faults) {
        this(faults, List.of());
    }

    /** Refuses for at least one reason and says what would do instead. */
    public Refusal(List<Fault> faults, List<Alternative> alternatives) {
        super(
                faults.isEmpty()
                        ? "no fault"
                        : faults.get(0).code() + " at " + faults.get(0).pointer());
        if (faults.isEmpty()) {
            throw new IllegalArgumentException("a refusal without a fault says nothing");
        }
        this.faults = List.copyOf(faults);
        this.alternatives = List.copyOf(alternatives);
    }

    /** Refuses for one reason. */
    public Refusal(Fault fault) {
        this(List.of(fault));
    }

    /** Baths that would do instead, if some were looked for. */
    public List<Alternative> alternatives() {
        return alternatives;
    }

    /** The reasons, the most urgent first. */
    public List<Fault> faults() {
        return faults;
    }

    /**
     * A bath that would do instead.
     *
     * @param setpointC its temperature [C]
     * @param safeNominal when the rule is met in it, nominal [s from food in]
     * @param safeLate the same on the late side
     */
    public record Alternative(double setpointC, double safeNominal, double safeLate) {}

    /**
     * One reason.
     *
     * @param pointer place in the request, as a JSON pointer in URI-fragment form, for example {@code #/food/id}
     * @param code upper-case words joined by {@code _}, one of the problem catalogue
     * @param detail what to say of it, with the numbers
     * @param hint what to say of what to do instead
     * @param value what was asked, as text
     * @param minimum least value that would have been answered, in {@code unit}
     * @param maximum greatest value that would have been answered, in {@code unit}
     * @param unit UCUM code of the numbers
     */
    public record Fault(
            String pointer,
            String code,
            Phrase detail,
            Optional<Phrase> hint,
            Optional<String> value,
            OptionalDouble minimum,
            OptionalDouble maximum,
            Optional<String> unit) {

        /** A reason, by the key of its sentence and what that names. */
        public static Fault of(String pointer, String code, String key, Object... values) {
            return new Fault(
                    pointer,
                    code,
                    Phrase.of(key, values),
                    Optional.empty(),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    Optional.empty());
        }

        /** The same reason at another place of the request. */
        Fault at(String place) {
            return new Fault(place, code, detail, hint, value, minimum, maximum, unit);
        }

        /** The same reason with advice, by the key of its sentence and what that names. */
        public Fault withHint(String key, Object... values) {
            return new Fault(pointer, code, detail, Optional.of(Phrase.of(key, values)), value, minimum, maximum, unit);
        }

        /** The same reason with what was asked. */
        public Fault withValue(String asked) {
            return new Fault(pointer, code, detail, hint, Optional.of(asked), minimum, maximum, unit);
        }

        /** The same reason with the least value that would have been answered. */
        public Fault withMinimum(double least, String ucum) {
            return new Fault(pointer, code, detail, hint, value, OptionalDouble.of(least), maximum, Optional.of(ucum));
        }

        /** The same reason with the greatest value that would have been answered. */
        public Fault withMaximum(double greatest, String ucum) {
            return new Fault(
                    pointer, code, detail, hint, value, minimum, OptionalDouble.of(greatest), Optional.of(ucum));
        }
    }
}
