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

    /** Refuses for at least one reason. */
    public Refusal(List<Fault> faults) {
        super(faults.isEmpty() ? "no fault" : faults.get(0).detail());
        if (faults.isEmpty()) {
            throw new IllegalArgumentException("a refusal without a fault says nothing");
        }
        this.faults = List.copyOf(faults);
    }

    /** Refuses for one reason. */
    public Refusal(Fault fault) {
        this(List.of(fault));
    }

    /** The reasons, the most urgent first. */
    public List<Fault> faults() {
        return faults;
    }

    /**
     * One reason.
     *
     * @param pointer place in the request, as a JSON pointer in URI-fragment form, for example {@code #/food/id}
     * @param code upper-case words joined by {@code _}, one of the problem catalogue
     * @param detail one sentence for a person, with the numbers
     * @param hint one sentence on what to do instead
     * @param value what was asked, as text
     * @param minimum least value that would have been answered, in {@code unit}
     * @param maximum greatest value that would have been answered, in {@code unit}
     * @param unit UCUM code of the numbers
     */
    public record Fault(
            String pointer,
            String code,
            String detail,
            Optional<String> hint,
            Optional<String> value,
            OptionalDouble minimum,
            OptionalDouble maximum,
            Optional<String> unit) {

        /** A reason without numbers. */
        public static Fault of(String pointer, String code, String detail) {
            return new Fault(
                    pointer,
                    code,
                    detail,
                    Optional.empty(),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    Optional.empty());
        }

        /** The same reason with advice. */
        public Fault withHint(String advice) {
            return new Fault(pointer, code, detail, Optional.of(advice), value, minimum, maximum, unit);
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
