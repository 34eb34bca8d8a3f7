package dev.slowpoint.heat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Exact solutions of the heat equation, computed with 40 digits from the series of Carslaw and Jaeger's kind (slab:
 * zeta tan zeta = Bi; cylinder: zeta J1 = Bi J0; sphere: 1 - zeta cot zeta = Bi; two stages by expansion of the first
 * profile in the modes of the second; Neumann's solution for melting), checked against numerical Laplace inversion.
 */
final class AnalyticVectors {

    /** Properties of the test body; every result is dimensionless, so their values do not matter. */
    static final double CONDUCTIVITY = 0.5;

    static final double VOLUMETRIC_HEAT = 3.5e6;
    static final double REACH = 0.02;
    static final double START_C = 5.0;
    static final double MEDIUM_C = 60.0;
    static final double STEP_K = MEDIUM_C - START_C;

    record Vector(
            String kind,
            String geometry,
            double biot,
            double fourier,
            Map<String, String> parameters,
            String quantity,
            double value) {

        double parameter(String name) {
            return Double.parseDouble(Objects.requireNonNull(parameters.get(name), name));
        }
    }

    private AnalyticVectors() {}

    static List<Vector> ofKind(String kind) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(AnalyticVectors.class.getResourceAsStream("/heat/analytic-vectors.csv")),
                StandardCharsets.UTF_8))) {
            return reader.lines()
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .filter(cells -> cells[1].equals(kind))
                    .map(AnalyticVectors::vector)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Vector vector(String[] cells) {
        Map<String, String> parameters = new HashMap<>();
        for (String pair : cells[5].isEmpty() ? new String[0] : cells[5].split(";", -1)) {
            int equals = pair.indexOf('=');
            parameters.put(pair.substring(0, equals), pair.substring(equals + 1));
        }
        return new Vector(
                cells[1],
                cells[2],
                number(cells[3]),
                number(cells[4]),
                parameters,
                cells[6],
                Double.parseDouble(cells[7]));
    }

    private static double number(String cell) {
        if (cell.isEmpty()) {
            return Double.NaN;
        }
        return cell.equals("inf") ? Double.POSITIVE_INFINITY : Double.parseDouble(cell);
    }

    static Body body(String geometry) {
        return switch (geometry) {
            case "slab" -> new Slab(2.0 * REACH);
            case "cylinder" -> new LongCylinder(2.0 * REACH);
            case "sphere" -> new Sphere(2.0 * REACH);
            default -> throw new IllegalArgumentException(geometry);
        };
    }

    static Material material() {
        return Material.constant(CONDUCTIVITY, VOLUMETRIC_HEAT);
    }

    static double film(double biot) {
        return biot * CONDUCTIVITY / REACH;
    }

    /** Seconds of a Fourier number. */
    static double seconds(double fourier) {
        return fourier * REACH * REACH * VOLUMETRIC_HEAT / CONDUCTIVITY;
    }

    static PointHistory point(TemperatureHistory history, String quantity) {
        if (quantity.endsWith("centre")) {
            return history.core();
        }
        return quantity.endsWith("surface") ? history.surface() : history.mean();
    }
}
