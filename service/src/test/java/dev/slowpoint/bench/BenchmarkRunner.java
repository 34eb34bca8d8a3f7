package dev.slowpoint.bench;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** Runs the benchmarks that a pattern names; its name keeps it out of the tests. */
class BenchmarkRunner {

    @Test
    void the_benchmarks_run() throws RunnerException {
        assertThat(new Runner(new OptionsBuilder()
                                .include(System.getProperty("bench", "Benchmark"))
                                .build())
                        .run())
                .isNotEmpty();
    }
}
