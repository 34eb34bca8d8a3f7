package dev.slowpoint.texture;

import dev.slowpoint.heat.Body;
import dev.slowpoint.heat.ConstantPropertyReference;
import dev.slowpoint.heat.LongCylinder;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.heat.Sphere;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.parameters.TextureFiles;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import tools.jackson.databind.MappingIterator;
import tools.jackson.dataformat.csv.CsvMapper;
import tools.jackson.dataformat.csv.CsvSchema;

/** The released texture model and the pieces for which its vectors were computed. */
final class Released {

    static final TextureModel MODEL = TextureFiles.read(name -> bytes("/parameters/2026.1/" + name));

    private Released() {}

    static byte[] bytes(String resource) {
        try (InputStream in = Released.class.getResourceAsStream(resource)) {
            return Objects.requireNonNull(in, resource).readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Rows of a table among the test resources of this package, by column. */
    static List<Vector> vectors(String file) {
        List<Vector> rows = new ArrayList<>();
        try (MappingIterator<Map<String, String>> lines = CsvMapper.builder()
                .build()
                .readerForMapOf(String.class)
                .with(CsvSchema.emptySchema().withHeader())
                .readValues(bytes("/texture/" + file))) {
            lines.forEachRemaining(cells -> rows.add(new Vector(cells)));
        }
        return rows;
    }

    /**
     * The piece the vectors assume: 5 C, h = 400 W/m2K, a = 1.4e-7 m2/s, k = 0.48 W/mK; vegetables, fruit and pulses
     * 1.45e-7 and 0.55; an egg is a sphere of 45 mm at 8 C, h = 600, a = 1.38e-7, k = 0.52.
     */
    static TemperatureHistory bath(TextureClass textureClass, String shape, double mm, double bathC, double minutes) {
        boolean egg = textureClass.id().equals("egg_yolk");
        return piece(textureClass, shape, mm).bath(egg ? 8.0 : 5.0, bathC, 60.0 * minutes);
    }

    static ConstantPropertyReference piece(TextureClass textureClass, String shape, double mm) {
        Body body = body(shape, mm);
        if (textureClass.id().equals("egg_yolk")) {
            return new ConstantPropertyReference(body, 1.38e-7, 0.52, 600.0);
        }
        return textureClass.opening() == Opening.DOSES_ALONE
                ? new ConstantPropertyReference(body, 1.45e-7, 0.55, 400.0)
                : new ConstantPropertyReference(body, 1.4e-7, 0.48, 400.0);
    }

    static TextureReading read(String id, String shape, double mm, double bathC, double minutes) {
        TextureClass textureClass = MODEL.get(id);
        return TextureReading.of(
                textureClass, bath(textureClass, shape, mm, bathC, minutes), TextureWindow.hotThroughC(bathC, bathC));
    }

    private static Body body(String shape, double mm) {
        return switch (shape) {
            case "slab" -> new Slab(mm / 1000.0);
            case "cyl" -> new LongCylinder(mm / 1000.0);
            case "sphere" -> new Sphere(mm / 1000.0);
            default -> throw new IllegalArgumentException("shape " + shape);
        };
    }

    /** One row of a table of vectors. */
    record Vector(Map<String, String> cells) {

        String text(String column) {
            return Objects.requireNonNull(cells.get(column), column);
        }

        double number(String column) {
            return Double.parseDouble(text(column));
        }
    }
}
