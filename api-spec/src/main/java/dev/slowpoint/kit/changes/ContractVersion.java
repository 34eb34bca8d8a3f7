package dev.slowpoint.kit.changes;

import java.util.Comparator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The version of a contract (Semantic Versioning 2.0.0, without labels for versions before a release).
 *
 * @param major rises with what breaks
 * @param minor rises with what is added
 * @param patch rises with what is only explained anew
 */
public record ContractVersion(int major, int minor, int patch) implements Comparable<ContractVersion> {

    private static final Pattern FORM = Pattern.compile("(0|[1-9]\\d{0,5})\\.(0|[1-9]\\d{0,5})\\.(0|[1-9]\\d{0,5})");
    private static final Comparator<ContractVersion> ORDER = Comparator.comparingInt(ContractVersion::major)
            .thenComparingInt(ContractVersion::minor)
            .thenComparingInt(ContractVersion::patch);

    /** @throws IllegalArgumentException if the text is no version of three numbers */
    public static ContractVersion parse(String text) {
        Matcher matcher = FORM.matcher(text);
        if (!matcher.matches()) {
            throw new IllegalArgumentException("Not a version of three numbers: " + text);
        }
        return new ContractVersion(
                Integer.parseInt(matcher.group(1)),
                Integer.parseInt(matcher.group(2)),
                Integer.parseInt(matcher.group(3)));
    }

    /** The version that a contract says it has. */
    public static ContractVersion of(JsonNode contract) {
        return parse(contract.at("/info/version").asString(""));
    }

    /** The lowest version that a contract with these differences to a released one may have. */
    public static ContractVersion lowestAfter(JsonNode released, JsonNode current) {
        ContractVersion version = of(released);
        boolean breaks = false;
        boolean changes = false;
        for (ContractChange change : ContractChanges.between(released, current)) {
            changes = true;
            breaks |= change.severity() == Severity.BREAKING;
        }
        if (breaks) {
            return new ContractVersion(version.major + 1, 0, 0);
        }
        if (changes) {
            return new ContractVersion(version.major, version.minor + 1, 0);
        }
        return withoutVersion(released).equals(withoutVersion(current))
                ? version
                : new ContractVersion(version.major, version.minor, version.patch + 1);
    }

    private static JsonNode withoutVersion(JsonNode contract) {
        JsonNode copy = contract.deepCopy();
        ((ObjectNode) copy.path("info")).remove("version");
        return copy;
    }

    @Override
    public int compareTo(ContractVersion other) {
        return ORDER.compare(this, other);
    }

    @Override
    public String toString() {
        return major + "." + minor + "." + patch;
    }
}
