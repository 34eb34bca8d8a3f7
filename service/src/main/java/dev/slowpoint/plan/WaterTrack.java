package dev.slowpoint.plan;

import dev.slowpoint.heat.WaterBath;
import dev.slowpoint.plan.SoFar.Event;
import dev.slowpoint.plan.SoFar.FoodAdded;
import dev.slowpoint.plan.SoFar.HeaterOff;
import dev.slowpoint.plan.SoFar.SetpointChanged;
import dev.slowpoint.safety.Recording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The water of a cook under way in one corner: as recorded where there is a log, else as setpoints and events tell, and held
 * at the last setpoint from now on.
 *
 * <p>A log is the truth. Where it has a gap, nominal and early take a straight line between the readings at its ends; late
 * takes the worst that those readings allow: the bath cools as if the heater were off, as fast as covered baths do, and is
 * warmed up again just in time as fast as heaters can. Without a log a heater of unknown power warms its water at the usual
 * rates; a lower setpoint is there at once, as if water were swapped.
 */
final class WaterTrack {

    /** A piece shorter than this is none [s]. */
    private static final double MOMENT = 1e-6;

    /** Water this near to its setpoint is there [K]: what a thermostat swings (our own choice). */
    private static final double THERE_K = 0.3;

    /** Heat that melts ice [J/kg]; rounded up, from memory. All of a frozen pack is counted as ice, which is the cold side. */
    private static final double MELTING = 334_000.0;

    /** Density of water [kg/m3], rounded; from memory. */
    private static final double WATER_DENSITY = 990.0;

    private final CookTask task;
    private final SoFar soFar;
    private final Corner corner;
    private final Knowledge knowledge;
    private final double roomC;
    private final double horizon;
    private final List<Water> pieces = new ArrayList<>();
    private final List<Off> offs = new ArrayList<>();
    private double setpointC;
    private double waterC;
    private double logErrorK;

    /**
     * A time without heater as counted with.
     *
     * @param from [s from food in]
     * @param over [s from food in]
     * @param inferred whether its length was worked out
     * @param doubted whether a stated length did not fit the water found
     * @param foundC the water when it was over [C]
     */
    record Off(double from, double over, boolean inferred, boolean doubted, double foundC) {}

    private WaterTrack(CookTask task, SoFar soFar, Corner corner, Knowledge knowledge, double horizon) {
        this.task = task;
        this.soFar = soFar;
        this.corner = corner;
        this.knowledge = knowledge;
        this.horizon = horizon;
        this.roomC = task.bath()
                .vessel()
                .map(CookTask.Vessel::roomC)
                .orElse(OptionalDouble.empty())
                .orElse(knowledge.after().roomC());
        this.setpointC = task.bath().setpointC().orElseThrow();
        this.waterC = task.bath()
                .vessel()
                .map(CookTask.Vessel::startC)
                .orElse(OptionalDouble.empty())
                .orElse(setpointC);
    }

    /** The water of a task in a corner until a horizon [s from food in]. */
    static WaterTrack of(CookTask task, SoFar soFar, Corner corner, Knowledge knowledge, double horizon) {
        WaterTrack track = new WaterTrack(task, soFar, corner, knowledge, horizon);
        if (soFar.bathLog().isPresent()) {
            track.recorded(soFar.bathLog().get());
        } else {
            track.told();
        }
        return track;
    }

    /** Its pieces, one after the other without a gap. */
    List<Water> pieces() {
        return pieces;
    }

    /** The setpoint from now on [C]. */
    double setpointC() {
        return setpointC;
    }

    /** The times without heater, where the log does not tell of them. */
    List<Off> offs() {
        return offs;
    }

    /** How far the water counted with lies from a reading of the log, at most [K]. */
    double logErrorK() {
        return logErrorK;
    }

    /** Temperature at a time [C]; of a bath that lives its own life its setpoint. */
    double atC(double time) {
        for (Water piece : pieces) {
            if (time < piece.until()) {
                return piece.atC(time);
            }
        }
        return setpointC;
    }

    private double now() {
        return pieces.isEmpty() ? 0.0 : pieces.get(pieces.size() - 1).until();
    }

    private void told() {
        boolean entered = false;
        for (Event event : soFar.events()) {
            if (event instanceof SetpointChanged change) {
                entered = held(change.at(), entered);
                waterC = task.bath().vessel().isEmpty()
                        ? Math.min(now() > 0.0 ? setpointC : waterC, change.setpointC())
                        : Math.min(setpointC, change.setpointC());
                setpointC = change.setpointC();
                entered = false;
            } else if (event instanceof HeaterOff off) {
                Off counted = counted(
                        off, offs.isEmpty() ? 0.0 : offs.get(offs.size() - 1).over());
                entered = held(counted.from(), entered);
                offs.add(counted);
                cool(counted);
                entered = false;
            } else if (event instanceof FoodAdded food) {
                entered = held(food.at(), entered);
                waterC = corner == Corner.EARLY ? setpointC : mixedC(food);
                entered = false;
            }
        }
        held(horizon, entered);
    }

    /** At the setpoint until a time, warmed up to it first where it has to be; whether there is such a piece now. */
    private boolean held(double until, boolean entered) {
        double from = now();
        if (until - from < MOMENT) {
            return entered;
        }
        boolean stands = task.bath().vessel().isEmpty() || CookSoFar.floated(soFar.events());
        if (stands && waterC < setpointC - THERE_K) {
            double rate = at(knowledge.replan().heatingRate());
            double there = from + (setpointC - waterC) / rate;
            double end = Math.min(there, until);
            pieces.add(new Water.Ramp(from, end, waterC, waterC + rate * (end - from)));
            waterC = pieces.get(pieces.size() - 1).atC(end);
            if (until - end < MOMENT) {
                return false;
            }
            from = end;
        }
        pieces.add(new Water.Held(from, until, setpointC, waterC, false));
        waterC = setpointC;
        return true;
    }

    private void cool(Off off) {
        double duration = off.over() - off.from();
        if (duration < MOMENT) {
            return;
        }
        double beforeC = setpointC;
        double coldC = Math.min(roomC, off.foundC() - 1.0);
        double constant = duration / StrictMath.log((beforeC - coldC) / (off.foundC() - coldC));
        pieces.add(new Water.Cooling(off.from(), off.over(), beforeC, coldC, constant));
        waterC = off.foundC();
    }

    /** What is known of a time without heater, the rest from the usual cooling of a covered bath. */
    private Off counted(HeaterOff off, double notBefore) {
        AfterBath after = knowledge.after();
        if (off.foundC().isEmpty()) {
            double from = off.from().orElseThrow();
            PowerCut cut = PowerCut.of(
                    new Step.Unheated(OptionalDouble.of(off.over() - from), OptionalDouble.empty()),
                    setpointC,
                    corner,
                    after);
            return new Off(from, off.over(), false, false, cut.endC());
        }
        double foundC = off.foundC().getAsDouble();
        PowerCut usual = PowerCut.of(new Step.Unheated(OptionalDouble.empty(), off.foundC()), setpointC, corner, after);
        double inferred = Math.max(notBefore, off.over() - usual.duration());
        if (off.from().isEmpty()) {
            return new Off(inferred, off.over(), true, false, foundC);
        }
        double stated = off.from().getAsDouble();
        PowerCut told = PowerCut.of(
                new Step.Unheated(OptionalDouble.of(Math.max(off.over() - stated, 1.0)), off.foundC()),
                setpointC,
                corner,
                after);
        boolean doubted = told.timeConstant() < after.bathCooling().low();
        return doubted && corner != Corner.EARLY
                ? new Off(Math.min(stated, inferred), off.over(), true, true, foundC)
                : new Off(stated, off.over(), false, doubted, foundC);
    }

    /** The water once cold food has taken all it can at once, which is the coldest it gets [C]. */
    private double mixedC(FoodAdded food) {
        CookTask.Vessel vessel = task.bath().vessel().orElseThrow();
        double water = vessel.volume() * WATER_DENSITY * WaterBath.WATER_J_PER_KG_K;
        double added = food.mass() * WaterBath.WATER_J_PER_KG_K;
        double foodC = food.temperatureC().orElse(knowledge.defaults().fridgeC());
        double melted = foodC < 0.0 ? food.mass() * MELTING : 0.0;
        return Math.max((water * setpointC + added * foodC - melted) / (water + added), Math.min(foodC, 0.0));
    }

    private double at(Range range) {
        return switch (corner) {
            case NOMINAL -> range.nominal();
            case EARLY -> range.high();
            case LATE -> range.low();
        };
    }

    private void recorded(Recording log) {
        double gap = knowledge.replan().logGap();
        int used = log.used();
        Optional<LogPath> path = used == 0
                ? Optional.empty()
                : Optional.of(LogPath.of(log, knowledge.replan().logTolerance()));
        logErrorK = path.map(LogPath::errorK).orElse(0.0);
        double shift = corner == Corner.LATE ? -logErrorK : corner == Corner.EARLY ? logErrorK : 0.0;
        if (path.isEmpty()) {
            unread(0.0, soFar.elapsed(), OptionalDouble.empty());
        } else {
            double[] times = path.get().times();
            double[] temperaturesC = path.get().temperaturesC();
            double first = temperaturesC[0] + shift;
            if (times[0] > gap) {
                unread(0.0, times[0], OptionalDouble.of(first));
            } else if (times[0] > MOMENT) {
                double startsC = task.bath()
                        .vessel()
                        .flatMap(v ->
                                v.startC().isPresent() ? Optional.of(v.startC().getAsDouble()) : Optional.empty())
                        .orElse(first);
                pieces.add(new Water.Ramp(0.0, times[0], startsC, first));
            }
            waterC = first;
            for (int i = 1; i < times.length; i++) {
                double next = temperaturesC[i] + shift;
                if (path.get().unread()[i]) {
                    unread(times[i - 1], times[i], OptionalDouble.of(next));
                } else {
                    pieces.add(new Water.Ramp(times[i - 1], times[i], waterC, next));
                }
                waterC = next;
            }
            double left = soFar.elapsed() - times[times.length - 1];
            if (left > gap) {
                unread(times[times.length - 1], soFar.elapsed(), OptionalDouble.empty());
            } else if (left > MOMENT) {
                pieces.add(new Water.Ramp(times[times.length - 1], soFar.elapsed(), waterC, waterC));
            }
        }
        for (Event event : soFar.events()) {
            if (event instanceof SetpointChanged change) {
                setpointC = change.setpointC();
            }
        }
        held(horizon, false);
    }

    /** A stretch without readings. */
    private void unread(double from, double until, OptionalDouble endC) {
        AfterBath after = knowledge.after();
        if (corner != Corner.LATE) {
            Optional<HeaterOff> off = soFar.events().stream()
                    .filter(e -> e instanceof HeaterOff o && o.from().isPresent() && o.at() < until && o.over() > from)
                    .map(HeaterOff.class::cast)
                    .findFirst();
            if (off.isPresent()) {
                offInGap(off.get(), from, until, endC);
            } else {
                pieces.add(new Water.Ramp(from, until, waterC, endC.orElse(waterC)));
                waterC = endC.orElse(waterC);
            }
            return;
        }
        double startC = waterC;
        Water.Cooling off = new Water.Cooling(
                from,
                until,
                startC,
                Math.min(roomC, startC),
                after.bathCooling().low());
        if (endC.isEmpty()) {
            pieces.add(off);
            waterC = off.atC(until);
            return;
        }
        double afterC = endC.getAsDouble();
        double rate = knowledge.replan().heatingRate().high();
        if (off.atC(until) > afterC) {
            // Colder than cooling alone makes it: something else took heat, so take the way there that cooling law
            // gives.
            double coldC = Math.min(roomC, afterC - 1.0);
            double constant = (until - from) / StrictMath.log((startC - coldC) / (afterC - coldC));
            pieces.add(new Water.Cooling(from, until, startC, coldC, constant));
        } else if (startC <= afterC - rate * (until - from)) {
            pieces.add(new Water.Ramp(from, until, startC, afterC));
        } else {
            double low = from;
            double high = until;
            while (high - low > 0.01) {
                double middle = 0.5 * (low + high);
                if (off.atC(middle) > afterC - rate * (until - middle)) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            pieces.add(off.part(from, high));
            pieces.add(new Water.Ramp(high, until, off.atC(high), afterC));
        }
        waterC = afterC;
    }

    /** A stretch without readings in which the heater is known to have been off. */
    private void offInGap(HeaterOff event, double from, double until, OptionalDouble endC) {
        double offFrom = Math.max(from, event.at());
        double offOver = Math.min(until, event.over());
        if (offFrom - from > MOMENT) {
            pieces.add(new Water.Ramp(from, offFrom, waterC, waterC));
        }
        Water.Cooling cooling = new Water.Cooling(
                offFrom,
                offOver,
                waterC,
                Math.min(roomC, waterC),
                knowledge.after().bathCooling().nominal());
        pieces.add(cooling);
        double foundC = event.foundC().orElse(cooling.atC(offOver));
        double afterC = endC.orElse(foundC);
        if (until - offOver > MOMENT) {
            pieces.add(new Water.Ramp(offOver, until, cooling.atC(offOver), afterC));
            waterC = afterC;
        } else {
            waterC = cooling.atC(offOver);
        }
    }
}
