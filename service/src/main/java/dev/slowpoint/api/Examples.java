package dev.slowpoint.api;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.stereotype.Component;

/** The examples of the contract, as files that also the tests send and receive. */
@Component
final class Examples {

    private static final String PLACE = "classpath:contract/examples/";

    /** The request bodies of an operation by the names of their examples, for instance {@code cook-plan}. */
    Map<String, byte[]> requests(String operation) {
        return read(operation, ".request.json");
    }

    /** The answer bodies of an operation by the names of their examples. */
    Map<String, byte[]> answers(String operation) {
        return read(operation, ".answer.json");
    }

    private static Map<String, byte[]> read(String operation, String ending) {
        Map<String, byte[]> examples = new TreeMap<>();
        for (Resource file : files(PLACE + operation + "-*" + ending)) {
            String name = Objects.requireNonNull(file.getFilename());
            String scene = name.substring(operation.length() + 1, name.length() - ending.length());
            try {
                examples.put(scene, file.getContentAsByteArray());
            } catch (IOException e) {
                throw new UncheckedIOException("cannot read example " + name, e);
            }
        }
        return examples;
    }

    private static List<Resource> files(String pattern) {
        try {
            return Arrays.stream(new PathMatchingResourcePatternResolver().getResources(pattern))
                    .sorted(Comparator.comparing(file -> Objects.requireNonNull(file.getFilename())))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot list examples " + pattern, e);
        }
    }
}
