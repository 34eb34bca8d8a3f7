package dev.slowpoint.texture;

import static dev.slowpoint.texture.Computed.bath;
import static dev.slowpoint.texture.Computed.closes;
import static dev.slowpoint.texture.Computed.dose;
import static dev.slowpoint.texture.Computed.extent;
import static dev.slowpoint.texture.Computed.inside;
import static dev.slowpoint.texture.Computed.insideAndEdges;
import static dev.slowpoint.texture.Computed.insideInHours;
import static dev.slowpoint.texture.Computed.law;
import static dev.slowpoint.texture.Computed.mean;
import static dev.slowpoint.texture.Computed.opens;
import static dev.slowpoint.texture.Computed.read;
import static dev.slowpoint.texture.Computed.smoked;

import dev.slowpoint.heat.ConstantPropertyReference;
import dev.slowpoint.heat.Dose;
import dev.slowpoint.heat.Exp;
import dev.slowpoint.heat.PointHistory;
import dev.slowpoint.heat.TemperatureHistory;
import dev.slowpoint.texture.Computed.Outcome;
import java.util.Map;
import java.util.function.Supplier;

/** The rows of {@code checks.csv} that were collected to contradict the model, apart from those on pork and eggs. */
final class ContradictingChecks {

    private static final ArrheniusLaw COLLAGEN = law("beef_tender", ProcessKind.COLLAGEN_WEAKEN);
    private static final ArrheniusLaw COLOUR = law("beef_tender", ProcessKind.COLOUR_LOSS);
    private static final ArrheniusLaw TOUGH = law("beef_tough", ProcessKind.TENDERISE);
    private static final ArrheniusLaw MEDIUM = law("beef_medium", ProcessKind.OVERSOFTEN);

    private ContradictingChecks() {}

    static void addTo(Map<Integer, Supplier<Outcome>> checks) {
        ofBeef(checks);
        ofOthers(checks);
    }

    private static void ofBeef(Map<Integer, Supplier<Outcome>> checks) {
        // The age factor 0.5 to 0.6 of old animals (Naqvi 2021) on the core dose of a 50 mm piece.
        checks.put(79, () -> {
            PointHistory core = bath("beef_tough", 50.0, 60.0).core();
            double younger = Dose.of(TOUGH, core).timeOf(1.0 / 0.6) / 3600.0;
            double older = Dose.of(TOUGH, core).timeOf(1.0 / 0.5) / 3600.0;
            return Outcome.of(younger >= 24.0 && older <= 48.0, younger, older);
        });
        checks.put(80, () -> {
            double at50 = extent(COLLAGEN, 50.0, 60.0);
            double at60 = extent(COLLAGEN, 60.0, 60.0);
            return Outcome.of(at50 < 0.1 && at60 > 0.9, at50, extent(COLLAGEN, 55.0, 60.0), at60);
        });
        checks.put(81, () -> {
            double dose = mean("veal_tender", ProcessKind.OVERSOFTEN, 25.0, 50.0, 480.0);
            return Outcome.of(dose < 0.5, dose);
        });
        checks.put(82, () -> Outcome.of(extent(COLLAGEN, 55.0, 240.0) > 0.9, extent(COLLAGEN, 55.0, 240.0)));
        checks.put(83, () -> {
            double toFifty = 45.0 / 5.0 * 3600.0;
            TemperatureHistory ramp =
                    ConstantPropertyReference.even(new double[] {0.0, toFifty + 7200.0}, new double[] {5.0, 60.0});
            Dose dose = Dose.of(COLLAGEN, ramp.core());
            double before = 1.0 - Exp.exp(-dose.at(toFifty));
            double after = 1.0 - Exp.exp(-dose.total());
            return Outcome.of(before < 0.1 && after > 0.8, before, after);
        });
        checks.put(85, () -> insideInHours(read("beef_medium", "slab", 50.0, 60.0), 6.0));
        // The row gives no size; its figures are those of the core of 30 mm.
        checks.put(86, () -> {
            double mild = Dose.of(TOUGH, bath("beef_tough", 30.0, 60.0).core()).at(6.0 * 3600.0);
            double hot = Dose.of(TOUGH, bath("beef_tough", 30.0, 75.0).core()).at(12.0 * 3600.0);
            return Outcome.of(mild > hot, mild, hot);
        });
        checks.put(87, () -> insideInHours(read("beef_medium", "slab", 50.0, 57.0), 11.0));
        checks.put(88, () -> Outcome.of(MEDIUM.perSecond(63.0) < MEDIUM.perSecond(57.0)));
        checks.put(91, () -> {
            double least = opens(read("beef_medium", "slab", 25.0, 60.0)) / 60.0;
            double most = opens(read("beef_medium", "slab", 50.0, 60.0)) / 60.0;
            return Outcome.of(least <= 2.5, least, most);
        });
        checks.put(92, () -> {
            double hold = 30.0 * 60.0;
            double come = opens(read("beef_tender", "slab", 40.0, 58.0));
            double medium = mean("beef_medium", ProcessKind.OVERSOFTEN, 40.0, 58.0, come + hold);
            double tough = mean("beef_tough", ProcessKind.OVERSOFTEN, 40.0, 58.0, come + hold);
            return Outcome.of(medium <= 1.0, medium, tough).and(tough <= 2.1);
        });
        checks.put(93, () -> {
            double at85 = smoked(85.0, 3.0);
            double at90 = smoked(90.0, 3.0);
            double at75 = smoked(75.0, 0.0);
            return Outcome.of(at75 < at85 && at75 < at90, at85, at90, at75);
        });
        checks.put(108, () -> {
            double early = 100.0 * extent(COLOUR, 53.0, 180.0);
            double late = 100.0 * extent(COLOUR, 53.0, 360.0);
            return Outcome.of(late - early < 15.0, early, late, 100.0 * extent(COLOUR, 58.0, 360.0))
                    .printedAs(1, 2, 5);
        });
    }

    private static void ofOthers(Map<Integer, Supplier<Outcome>> checks) {
        checks.put(94, () -> {
            double[][] trials = {{55, 260}, {55, 320}, {58, 140}, {58, 200}, {61, 90}, {61, 150}};
            boolean all = true;
            for (double[] trial : trials) {
                all &= inside(read("chicken_breast", "slab", 25.0, trial[0]), trial[1]);
            }
            TextureReading best = read("chicken_breast", "slab", 25.0, 58.0);
            return Outcome.of(all, opens(best), closes(best));
        });
        checks.put(95, () -> insideAndEdges(read("chicken_breast", "slab", 25.0, 60.0), 120.0));
        checks.put(96, () -> {
            ArrheniusLaw breast = law("chicken_breast", ProcessKind.OVERSOFTEN);
            double first = dose(breast, 58.0, 360.0);
            double second = dose(breast, 58.0, 1020.0);
            // Levels good 1, mushy 2, ruined 4: from 1.3 the dose passes mushy and comes near ruined.
            return Outcome.of(second < 2.0, first, second);
        });
        checks.put(97, () -> {
            TextureReading thin = read("chicken_breast", "slab", 15.0, 65.0);
            TextureReading thick = read("chicken_breast", "slab", 20.0, 65.0);
            return Outcome.of(
                            inside(thin, 40.0) && inside(thick, 40.0),
                            opens(thin),
                            closes(thin),
                            opens(thick),
                            closes(thick))
                    .printedAs(0, 1, 3, 4);
        });
        checks.put(98, () -> {
            TextureReading hot = read("chicken_thigh", "slab", 25.0, 65.0);
            boolean never = Double.isInfinite(opens(read("chicken_thigh", "slab", 25.0, 55.0)));
            return Outcome.of(inside(hot, 180.0) && inside(hot, 360.0) && never, opens(hot), closes(hot));
        });
        checks.put(99, () -> {
            TextureReading reading = read("duck_breast", "slab", 22.0, 60.0);
            double ruined = reading.window().ruinedFrom() / 3600.0;
            return Outcome.of(ruined > 12.0, closes(reading) / 60.0, ruined);
        });
        checks.put(100, () -> {
            double closes = closes(read("lamb_tender", "slab", 30.0, 60.0)) / 60.0;
            return Outcome.of(closes >= 12.0, closes);
        });
        checks.put(101, () -> {
            TextureReading thin = read("white_fish", "slab", 15.0, 60.0);
            TextureReading thick = read("white_fish", "slab", 20.0, 60.0);
            boolean open = Double.isInfinite(closes(thin)) && Double.isInfinite(closes(thick));
            return Outcome.of(open && opens(thick) < 45.0, opens(thin), opens(thick));
        });
        checks.put(103, () -> insideAndEdges(read("broccoli", "cyl", 20.0, 85.0), 25.0));
        checks.put(104, () -> {
            double opens = opens(read("carrot", "cyl", 20.0, 85.0));
            return Outcome.of(Math.abs(opens - 40.0) < 4.0, opens);
        });
    }
}
