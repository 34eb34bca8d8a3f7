package dev.slowpoint.texture;

import dev.slowpoint.heat.ConstantPropertyReference;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.Exp;
import dev.slowpoint.heat.TemperatureHistory;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;

/** Computations that the rows of {@code checks.csv} share. Times in minutes unless named otherwise. */
final class Computed {

    private static final double HORIZON_MINUTES = 6000.0;
    private static final Map<String, TextureReading> READINGS = new ConcurrentHashMap<>();

    private Computed() {}

    /**
     * What a check came to.
     *
     * @param holds whether the statement of the source holds in the model; two values where it has two halves
     * @param values figures in the order in which {@code model_value} prints them
     * @param printedAt which of the numbers in {@code model_value} they are
     */
    record Outcome(boolean[] holds, double[] values, int[] printedAt) {

        static Outcome of(boolean holds, double... values) {
            return new Outcome(
                    new boolean[] {holds},
                    values,
                    IntStream.range(0, values.length).toArray());
        }

        Outcome printedAs(int... numbers) {
            return new Outcome(holds, values, numbers);
        }

        Outcome and(boolean otherHalf) {
            return new Outcome(new boolean[] {holds[0], otherHalf}, values, printedAt);
        }
    }

    static Outcome near(double value, double expected, double tolerance) {
        return Outcome.of(Math.abs(value - expected) <= tolerance, value);
    }

    static Outcome rising(double... values) {
        boolean rises = true;
        for (int i = 1; i < values.length; i++) {
            rises &= values[i] > values[i - 1];
        }
        return Outcome.of(rises, values);
    }

    static Outcome falling(double... values) {
        boolean falls = true;
        for (int i = 1; i < values.length; i++) {
            falls &= values[i] < values[i - 1];
        }
        return Outcome.of(falls, values);
    }

    /** The law of the first process of its kind of a class or of a part. */
    static ArrheniusLaw law(String part, ProcessKind kind) {
        return Released.MODEL.classes().stream()
                .flatMap(textureClass -> textureClass.processes().stream())
                .filter(process -> process.part().equals(part) && process.kind() == kind)
                .findFirst()
                .orElseThrow()
                .law();
    }

    /** A law without a floor, from a rate per minute and kJ/mol. */
    static ArrheniusLaw free(double perMinute, double referenceC, double kilojoules) {
        return new ArrheniusLaw(perMinute / 60.0, referenceC, 1000.0 * kilojoules, -100.0, Double.POSITIVE_INFINITY);
    }

    static double perMinute(ArrheniusLaw law, double temperatureC) {
        return 60.0 * law.perSecond(temperatureC);
    }

    static double ratio(ArrheniusLaw law, double hotC, double mildC) {
        return law.perSecond(hotC) / law.perSecond(mildC);
    }

    static double dose(ArrheniusLaw law, double temperatureC, double minutes) {
        return Dose.of(
                        law,
                        ConstantPropertyReference.hold(temperatureC, 60.0 * minutes)
                                .core())
                .total();
    }

    static double extent(ArrheniusLaw law, double temperatureC, double minutes) {
        return 1.0 - Exp.exp(-dose(law, temperatureC, minutes));
    }

    /**
     * Shear force [N] of pork loin after a hold: 15 N and what is left of the 54.1 N above it, k = 0.069/h at 55 C,
     * 81 kJ/mol, fitted to the six shear forces and the control (69.1 N) of Hwang, Lee and Hong 2019, Table 1.
     */
    static double porkShear(double temperatureC, double hours) {
        return 15.0 + 54.1 * Exp.exp(-dose(free(0.069 / 60.0, 55.0, 81.0), temperatureC, 60.0 * hours));
    }

    static MoistureModel curve(String textureClass) {
        return Released.MODEL.get(textureClass).moisture().orElseThrow();
    }

    /** Loss [%] of a piece held at one temperature. */
    static double loss(String textureClass, double temperatureC, double hours) {
        TemperatureHistory hold = ConstantPropertyReference.hold(temperatureC, 3600.0 * hours);
        return curve(textureClass).over(hold, 0.0).percentAt(3600.0 * hours);
    }

    static TextureReading read(String id, String shape, double mm, double bathC) {
        return READINGS.computeIfAbsent(
                id + " " + shape + " " + mm + " " + bathC, key -> Released.read(id, shape, mm, bathC, HORIZON_MINUTES));
    }

    static TemperatureHistory bath(String id, double mm, double bathC) {
        return Released.bath(Released.MODEL.get(id), "slab", mm, bathC, HORIZON_MINUTES);
    }

    /** Volume mean of the dose of a slab at a time. */
    static double mean(String id, ProcessKind kind, double mm, double bathC, double minutes) {
        return bath(id, mm, bathC).meanDose(law(id, kind)).at(60.0 * minutes);
    }

    static TemperatureHistory eggBath(double bathC, double minutes) {
        return Released.bath(Released.MODEL.get("egg_yolk"), "sphere", 45.0, bathC, minutes);
    }

    /** Boiling water and water at 30 C in turn, two minutes each, for 32 minutes (Di Lorenzo et al. 2025). */
    static TemperatureHistory alternatingBaths() {
        double[] from = IntStream.range(0, 16).mapToDouble(i -> 120.0 * i).toArray();
        double[] bathsC = IntStream.range(0, 16)
                .mapToDouble(i -> i % 2 == 0 ? 100.0 : 30.0)
                .toArray();
        return Released.piece(Released.MODEL.get("egg_yolk"), "sphere", 45.0).baths(8.0, from, bathsC, 1920.0);
    }

    static double eggDose(Place place, ArrheniusLaw law, double bathC, double minutes) {
        return place.dose(law, eggBath(bathC, minutes)).total();
    }

    /** Mean over the white of the extent of setting. */
    static double whiteExtent(TemperatureHistory egg) {
        ArrheniusLaw white = law("egg_white", ProcessKind.SET);
        double[] shares = egg.shellShares(Place.YOLK_SHARE_OF_RADIUS, 1.0);
        double mean = 0.0;
        for (int node = 0; node < shares.length; node++) {
            double dose = Dose.of(white, egg.node(node)).total();
            mean += shares[node] * (1.0 - Exp.exp(-dose));
        }
        return mean;
    }

    static double opens(TextureReading reading) {
        return reading.window().opens() / 60.0;
    }

    /** The close by softening alone. */
    static double closes(TextureReading reading) {
        return reading.window().softens() / 60.0;
    }

    static boolean inside(TextureReading reading, double minutes) {
        return minutes >= opens(reading) && minutes <= closes(reading);
    }

    static Outcome insideAndEdges(TextureReading reading, double minutes) {
        return Outcome.of(inside(reading, minutes), opens(reading), closes(reading));
    }

    /** Inside, or within a tenth of an edge, as the rows of the first collection allow. */
    static Outcome nearlyInside(TextureReading reading, double minutes) {
        return Outcome.of(
                minutes >= 0.9 * opens(reading) && minutes <= 1.1 * closes(reading), opens(reading), closes(reading));
    }

    static Outcome insideInHours(TextureReading reading, double hours) {
        return Outcome.of(inside(reading, 60.0 * hours), opens(reading) / 60.0, closes(reading) / 60.0);
    }

    /** Tough-cut dose of brisket in a smoker: ten hours from 10 C to the end temperature in a line, then a hold. */
    static double smoked(double temperatureC, double hours) {
        double[] times = {0.0, 36_000.0, 36_000.0 + 3600.0 * Math.max(hours, 1e-6)};
        TemperatureHistory smoke =
                ConstantPropertyReference.even(times, new double[] {10.0, temperatureC, temperatureC});
        return Dose.of(law("beef_brisket", ProcessKind.TENDERISE), smoke.core()).total();
    }
}
