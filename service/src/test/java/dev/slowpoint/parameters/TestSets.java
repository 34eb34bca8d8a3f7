package dev.slowpoint.parameters;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Parameter sets beside the released one, invented for tests: the released one with a few rows changed. */
public final class TestSets {

    /** An older set, deprecated on the first of January 2027, with a sunset two years later. */
    public static final String OLD = "2025.9";

    private static final String LIST = """
            version,status,released,deprecated,sunset,successor,note
            2025.9,deprecated,2025-09-01,2027-01-01,2029-01-01,2026.1,invented
            2026.1,current,2026-01-01,,,,first set
            """;

    private TestSets() {}

    /** The released set, and an older one that lacks a food, has one more, and holds one of them to be leaner. */
    public static ParameterSets withAnOldOne() {
        return read(LIST);
    }

    /** Both sets by another list. */
    static ParameterSets read(String list) {
        return ParameterSets.read(
                list.getBytes(StandardCharsets.UTF_8),
                version -> version.equals(OLD) ? old() : ParameterFiles.released(version));
    }

    /** The files of the older set. */
    static ParameterFiles old() {
        ParameterFiles released = ParameterFiles.released("2026.1");
        Map<String, byte[]> files = new HashMap<>();
        for (String name : released.names()) {
            files.put(name, released.bytes(name));
        }
        List<String> foods =
                Arrays.asList(new String(released.bytes("foods.csv"), StandardCharsets.UTF_8).split("\n", -1));
        files.put(
                "foods.csv",
                foods.stream()
                        .filter(line -> !line.startsWith("artichoke,"))
                        .map(line -> line.startsWith("apple,")
                                ? line.replace(",-1.10,", ",-1.20,") + "\n" + line.replace("apple,", "apple-of-old,")
                                : line)
                        .collect(Collectors.joining("\n"))
                        .getBytes(StandardCharsets.UTF_8));
        String films = new String(released.bytes("films.csv"), StandardCharsets.UTF_8);
        files.put("films.csv", films.replace("\n", "\r\n").getBytes(StandardCharsets.UTF_8));
        return ParameterFiles.of(OLD, files);
    }
}
