package dev.slowpoint.heat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Several bodies in one stirred bath: the water that all of them make, and that each of them feels.
 *
 * <p>Each body is run along a line of water; the heat they took up gives the water anew; and so on until the water no longer
 * changes (waveform relaxation: Lelarasmee, Ruehli and Sangiovanni-Vincentelli 1982, from memory). Between two runs a body
 * answers a change of the water as one lump of its heat capacity behind its resistance would, so that few rounds are needed;
 * once the water stands still these lumps have no part in it. The water is found from the heat of water and bodies together,
 * so that no heat is lost or found.
 */
public final class CommonWater {

    /** How little the water may still change in the last round [K]. */
    static final double SETTLED_K = 0.01;

    /** How far straight pieces of the water may miss it [K]. */
    private static final double LINE_K = 0.004;

    /** More rounds are not taken; then the colder of the last two waters is counted with. */
    private static final int MOST_ROUNDS = 12;

    /** Time steps after each event: the first ones [s], and later ones as a share of the time since. */
    private static final double FIRST_STEP = 2.0;

    private static final double STEP_SHARE = 0.01;

    /** Diagonal of the stiffly accurate two-stage method of second order (Alexander 1977, from memory). */
    private static final double GAMMA = 1.0 - Math.sqrt(0.5);

    private static final int NEWTON_STEPS = 50;
    private static final double NEWTON_K = 1e-10;

    private final WaterBath bath;
    private final List<Change> changes;
    private final List<Guest> guests;
    private final double[] times;

    private final double[] waterC;
    private final double[] power;
    private double heated;
    private double lost;
    private double poured;
    private final double[] lumpsK;
    private final double[] lumpBases;

    private CommonWater(WaterBath bath, List<Change> changes, List<Guest> guests, double horizon) {
        this.bath = bath;
        this.changes = List.copyOf(changes);
        this.guests = List.copyOf(guests);
        this.times = grid(horizon);
        this.waterC = new double[times.length];
        this.power = new double[times.length];
        this.lumpsK = new double[guests.size()];
        this.lumpBases = new double[guests.size()];
    }

    /**
     * Another setpoint from a moment on, and the water brought down to a temperature at once, as when cold water is poured in.
     *
     * @param at [s], after all others, above zero
     * @param setpointC of the heater from then on [C]
     * @param waterC of the water right after [C]; water that is colder already stays as it is
     */
    public record Change(double at, double setpointC, double waterC) {}

    /**
     * A body, or several alike.
     *
     * @param entersAt when it comes into the water [s], zero or more
     * @param leavesAt when it leaves it [s], later
     * @param volume of all alike [m3]
     * @param startC usual temperature before it comes in [C]
     * @param capacity heat that all alike take up per kelvin, roughly [J/K]
     * @param rate at which they follow the water, roughly [1/s]
     * @param run what one of them goes through in water, told from the moment it comes in, until the end of that water
     */
    public record Guest(
            double entersAt, double leavesAt, double volume, double startC, double capacity, double rate, Run run) {}

    /** Runs a body along water. */
    @FunctionalInterface
    public interface Run {

        /** What it goes through in that water, both from time zero. */
        TemperatureHistory in(WaterLine water);
    }

    /**
     * What was found.
     *
     * @param water its temperature from the first moment to the horizon
     * @param histories of the guests, in order, each from the moment it comes in, as if it stayed
     * @param limits stretches in which the heater gave all it can
     * @param account of the heat
     * @param rounds how often the bodies were run
     */
    public record Found(
            WaterLine water, List<TemperatureHistory> histories, List<Limit> limits, Account account, int rounds) {

        /** For how long the heater gave all it can until a time [s]. */
        public double atLimit(double until) {
            return limits.stream()
                    .mapToDouble(limit -> Math.max(Math.min(limit.until(), until) - limit.from(), 0.0))
                    .sum();
        }
    }

    /**
     * A stretch in which the heater gave all it can.
     *
     * @param from [s]
     * @param until [s]
     */
    public record Limit(double from, double until) {}

    /**
     * The heat account from the first moment to the horizon [J].
     *
     * @param heated given by the heater
     * @param lost to the room
     * @param poured brought in with other water; below zero where it was colder
     * @param taken by the bodies while they were in the water
     * @param gained by the water
     */
    public record Account(double heated, double lost, double poured, double taken, double gained) {

        /** What is missing or too much, over the largest entry. */
        public double relativeError() {
            double scale = Math.max(Math.max(Math.abs(heated), Math.abs(taken)), Math.abs(gained));
            return scale == 0.0 ? 0.0 : Math.abs(heated - lost + poured - taken - gained) / scale;
        }
    }

    /**
     * Finds the water of a bath that bodies come into.
     *
     * @param bath whose own start is told; its load is not looked at
     * @param changes of the setpoint, rising in time
     * @param guests that come in
     * @param horizon end [s], later than all else
     */
    public static Found of(WaterBath bath, List<Change> changes, List<Guest> guests, double horizon) {
        return new CommonWater(bath, changes, guests, horizon).found();
    }

    private Found found() {
        double horizon = times[times.length - 1];
        List<TemperatureHistory> histories = List.of();
        round(histories, null);
        WaterLine line = new WaterLine(times, waterC).within(LINE_K);
        int rounds = 0;
        while (true) {
            rounds++;
            histories = run(line, horizon);
            round(histories, line);
            double changed = 0.0;
            for (int i = 0; i < times.length; i++) {
                changed = Math.max(changed, Math.abs(waterC[i] - lineAt(line, i)));
            }
            if (changed < SETTLED_K) {
                break;
            }
            if (rounds == MOST_ROUNDS) {
                double[] colder = waterC.clone();
                for (int i = 0; i < times.length; i++) {
                    colder[i] = Math.min(colder[i], lineAt(line, i));
                }
                line = new WaterLine(times, colder).within(LINE_K);
                histories = run(line, horizon);
                break;
            }
            line = new WaterLine(times, waterC).within(LINE_K);
        }
        double taken = 0.0;
        for (int g = 0; g < guests.size(); g++) {
            taken += taken(histories, g, horizon);
        }
        return new Found(
                line,
                histories,
                limits(),
                new Account(heated, lost, poured, taken, bath.heatCapacity() * (waterC[times.length - 1] - waterC[0])),
                rounds);
    }

    private List<TemperatureHistory> run(WaterLine line, double horizon) {
        List<TemperatureHistory> histories = new ArrayList<>();
        for (Guest guest : guests) {
            histories.add(guest.run().in(line.between(guest.entersAt(), horizon)));
        }
        return histories;
    }

    /** The line at a sample of the grid; at a jump before or after it, as the sample is. */
    private double lineAt(WaterLine line, int sample) {
        boolean beforeJump = sample + 1 < times.length && times[sample + 1] == times[sample];
        return beforeJump ? line.beforeC(times[sample]) : line.atC(times[sample]);
    }

    /** Moments at which the water is found: after each event close together, and then farther and farther apart. */
    private double[] grid(double horizon) {
        TreeSet<Double> events = new TreeSet<>();
        events.add(0.0);
        for (Guest guest : guests) {
            events.add(guest.entersAt());
            if (guest.leavesAt() < horizon) {
                events.add(guest.leavesAt());
            }
        }
        changes.forEach(change -> events.add(change.at()));
        List<Double> grid = new ArrayList<>();
        for (double event : events) {
            Double next = events.higher(event);
            double until = next == null ? horizon : next;
            grid.add(event);
            double at = event;
            while (at < until) {
                double step = Math.max(FIRST_STEP, STEP_SHARE * (at - event));
                at = until - at < 1.5 * step ? until : at + step;
                if (at < until) {
                    grid.add(at);
                }
            }
            if (next == null) {
                grid.add(horizon);
            } else if (changes.stream().anyMatch(change -> change.at() == next)) {
                // The water jumps: told once before and once after it.
                grid.add(next);
            }
        }
        return grid.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private double taken(List<TemperatureHistory> histories, int guest, double time) {
        Guest g = guests.get(guest);
        return histories.isEmpty()
                ? 0.0
                : g.volume() * histories.get(guest).heatTaken().until(Math.min(time, g.leavesAt()) - g.entersAt());
    }

    /** Finds the water once: from the heat that bodies took up along a line, and their lumps where it differs from that. */
    private void round(List<TemperatureHistory> histories, @Nullable WaterLine line) {
        double capacity = bath.heatCapacity();
        Heater heater = new Heater(bath);
        Arrays.fill(lumpsK, 0.0);
        heated = 0.0;
        lost = 0.0;
        poured = 0.0;
        double temperatureC = bath.startC().orElseThrow();
        waterC[0] = temperatureC;
        power[0] = heater.power(temperatureC);
        int change = 0;
        double[] bases = new double[guests.size()];
        for (int i = 1; i < times.length; i++) {
            if (times[i] == times[i - 1]) {
                Change now = changes.get(change++);
                heater = new Heater(at(now.setpointC()));
                double afterC = Math.min(now.waterC(), temperatureC);
                poured += capacity * (afterC - temperatureC);
                temperatureC = afterC;
                waterC[i] = temperatureC;
                power[i] = heater.power(temperatureC);
                continue;
            }
            double dt = times[i] - times[i - 1];
            double heat = temperatureC + stored(histories, times[i - 1]) / capacity;
            System.arraycopy(lumpsK, 0, bases, 0, bases.length);
            System.arraycopy(bases, 0, lumpBases, 0, bases.length);
            double middle = times[i - 1] + GAMMA * dt;
            double middleC = stage(heater, heat, histories, line, middle, times[i - 1], GAMMA * dt, temperatureC);
            double middlePower = heater.power(middleC);
            double middleLost = heater.losses(middleC);
            double rest = (1.0 - GAMMA) * dt;
            for (int g = 0; g < bases.length; g++) {
                lumpBases[g] = bases[g] + (1.0 - GAMMA) / GAMMA * (lumpsK[g] - bases[g]);
            }
            double carried = heat + rest * (middlePower - middleLost) / capacity;
            double endC = stage(heater, carried, histories, line, times[i], times[i - 1], GAMMA * dt, middleC);
            double endPower = heater.power(endC);
            heated += rest * middlePower + GAMMA * dt * endPower;
            lost += rest * middleLost + GAMMA * dt * heater.losses(endC);
            temperatureC = endC;
            waterC[i] = temperatureC;
            power[i] = endPower;
        }
    }

    /** Heat that the bodies hold above their starts, their lumps with it [J]. */
    private double stored(List<TemperatureHistory> histories, double time) {
        double sum = 0.0;
        for (int g = 0; g < guests.size(); g++) {
            sum += taken(histories, g, time) + guests.get(g).capacity() * lumpsK[g];
        }
        return sum;
    }

    /**
     * One implicit stage: the water whose heat, with that of the bodies, is what the stage before left and the heater and the
     * room change. The equation rises steadily with the temperature; Newton's method, kept between bounds, finds it.
     */
    private double stage(
            Heater heater,
            double heat,
            List<TemperatureHistory> histories,
            @Nullable WaterLine line,
            double time,
            double begins,
            double weight,
            double guessC) {
        double capacity = bath.heatCapacity();
        double fixed = 0.0;
        double perKelvin = 1.0;
        for (int g = 0; g < guests.size(); g++) {
            Guest guest = guests.get(g);
            fixed += taken(histories, g, time);
            double share = guest.capacity() / capacity;
            if (inWater(guest, begins)) {
                double follows = weight * guest.rate();
                double referenceC = line == null ? guest.startC() : lineC(line, time, begins);
                fixed += guest.capacity() * (lumpBases[g] - follows * referenceC) / (1.0 + follows);
                perKelvin += share * follows / (1.0 + follows);
            } else {
                fixed += guest.capacity() * lumpBases[g];
            }
        }
        double wanted = heat - fixed / capacity;
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        double t = guessC;
        for (int n = 0; n < NEWTON_STEPS; n++) {
            double left = perKelvin * t - wanted - weight * (heater.power(t) - heater.losses(t)) / capacity;
            if (left > 0.0) {
                high = t;
            } else {
                low = t;
            }
            double slope = perKelvin - weight * (heater.powerSlope(t) - heater.lossesSlope(t)) / capacity;
            double next = t - left / slope;
            if (!(next > low && next < high)) {
                next = Double.isInfinite(low) || Double.isInfinite(high) ? next : 0.5 * (low + high);
            }
            double moved = Math.abs(next - t);
            t = next;
            if (moved < NEWTON_K) {
                break;
            }
        }
        for (int g = 0; g < guests.size(); g++) {
            Guest guest = guests.get(g);
            if (inWater(guest, begins)) {
                double follows = weight * guest.rate();
                double referenceC = line == null ? guest.startC() : lineC(line, time, begins);
                lumpsK[g] = (lumpBases[g] + follows * (t - referenceC)) / (1.0 + follows);
            } else {
                lumpsK[g] = lumpBases[g];
            }
        }
        return t;
    }

    /** The line within a step, so that a jump at its end has not happened yet. */
    private static double lineC(WaterLine line, double time, double begins) {
        return time > begins ? line.beforeC(time) : line.atC(time);
    }

    /** Whether a body is in the water over the step that begins then. */
    private static boolean inWater(Guest guest, double begins) {
        return guest.entersAt() <= begins && guest.leavesAt() > begins;
    }

    private WaterBath at(double setpointC) {
        return new WaterBath(
                bath.startC(),
                setpointC,
                bath.heatCapacity(),
                bath.heaterPower(),
                bath.lossCoefficient(),
                bath.openSurface(),
                bath.roomC(),
                bath.loadVolume());
    }

    private List<Limit> limits() {
        List<Limit> limits = new ArrayList<>();
        double from = Double.NaN;
        for (int i = 0; i < times.length; i++) {
            boolean full = power[i] >= bath.heaterPower();
            if (full && Double.isNaN(from)) {
                from = times[i];
            } else if (!full && !Double.isNaN(from)) {
                limits.add(new Limit(from, times[i]));
                from = Double.NaN;
            }
        }
        if (!Double.isNaN(from)) {
            limits.add(new Limit(from, times[times.length - 1]));
        }
        return limits;
    }
}
