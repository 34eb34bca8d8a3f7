package dev.slowpoint.plan;

import dev.slowpoint.heat.Brick;
import dev.slowpoint.heat.Slab;
import dev.slowpoint.plan.Refusal.Fault;
import dev.slowpoint.plan.SoFar.CoreReading;
import dev.slowpoint.plan.SoFar.Event;
import dev.slowpoint.plan.SoFar.Floated;
import dev.slowpoint.plan.SoFar.FoodAdded;
import dev.slowpoint.plan.SoFar.HeaterOff;
import dev.slowpoint.plan.SoFar.OutOfBath;
import dev.slowpoint.plan.SoFar.SetpointChanged;
import java.util.ArrayList;
import java.util.List;

/** What is refused of a cook under way before anything is computed: what cannot have been, and what nothing is known of. */
final class ReplanAdmission {

    /** What a common digital probe reports at power-on, and without a sensor [C]; from memory. */
    private static final double POWER_ON_C = 85.0;

    /** A reading may be this much beyond what surrounds the piece, besides its own error [K]: room for a bath that swings. */
    private static final double BEYOND_K = 0.5;

    private static final String EVENTS = "#/soFar/events/";
    private static final String READINGS = "#/soFar/coreReadings/";

    private final ReplanTask task;
    private final SoFar soFar;
    private final Knowledge knowledge;
    private final List<Fault> faults = new ArrayList<>();

    private ReplanAdmission(ReplanTask task, Knowledge knowledge) {
        this.task = task;
        this.soFar = task.soFar();
        this.knowledge = knowledge;
    }

    /** Refuses a task with everything that stands in its way. */
    static void check(ReplanTask task, Knowledge knowledge) {
        Admission.check(task.cook(), knowledge);
        ReplanAdmission admission = new ReplanAdmission(task, knowledge);
        admission.log();
        admission.events();
        admission.readings();
        if (!admission.faults.isEmpty()) {
            throw new Refusal(admission.faults);
        }
    }

    private void log() {
        soFar.bathLog().ifPresent(log -> {
            if (log.lastS() > soFar.elapsed()) {
                faults.add(inTheFuture("#/soFar/bathLog", log.lastS()));
            }
        });
    }

    private Fault inTheFuture(String pointer, double at) {
        return Fault.of(pointer, "AFTER_NOW", "FAULT_AFTER_NOW")
                .withValue(Double.toString(at))
                .withMaximum(soFar.elapsed(), "s")
                .withHint("HINT_SECONDS_FROM_FOOD_IN");
    }

    private void events() {
        double setpointC = task.cook().bath().setpointC().orElseThrow();
        double waterBusy = 0.0;
        double packBusy = 0.0;
        double before = 0.0;
        for (int i = 0; i < soFar.events().size(); i++) {
            Event event = soFar.events().get(i);
            String pointer = EVENTS + i;
            if (Math.max(event.at(), event.over()) > soFar.elapsed()) {
                faults.add(inTheFuture(pointer, Math.max(event.at(), event.over())));
            }
            boolean backwards = event.over() < event.at();
            if (backwards || event.at() < before) {
                faults.add(Fault.of(
                                pointer, "EVENTS_NOT_IN_ORDER", backwards ? "FAULT_ENDS_BEFORE" : "FAULT_BEGINS_BEFORE")
                        .withHint("HINT_IN_ORDER"));
            }
            before = event.at();
            boolean ofThePack = event instanceof Floated || event instanceof OutOfBath;
            if (event.at() < (ofThePack ? packBusy : waterBusy)) {
                faults.add(
                        Fault.of(pointer, "EVENTS_OVERLAP", ofThePack ? "FAULT_FLOAT_AND_OUT" : "FAULT_HEATER_IS_OFF")
                                .withHint("HINT_END_ONE"));
            }
            if (ofThePack) {
                packBusy = Math.max(packBusy, event.over());
            } else {
                waterBusy = Math.max(waterBusy, event.over());
            }
            if (event instanceof SetpointChanged change) {
                setpointC = change.setpointC();
                Admission.hotterThanWater(pointer, setpointC, task.cook().altitude(), faults);
            } else if (event instanceof HeaterOff off) {
                found(pointer, off, setpointC);
            } else if (event instanceof FoodAdded) {
                addedTo(pointer);
            } else if (event instanceof Floated) {
                flat(pointer);
            }
        }
    }

    private void found(String pointer, HeaterOff off, double setpointC) {
        if (off.foundC().isPresent() && off.foundC().getAsDouble() >= setpointC) {
            faults.add(Fault.of(
                            pointer + "/foundC",
                            "FOUND_NOT_BELOW_BATH",
                            "FAULT_FOUND_NOT_BELOW_BATH",
                            Figures.temperature(setpointC))
                    .withValue(Double.toString(off.foundC().getAsDouble()))
                    .withMaximum(setpointC, "Cel"));
        }
    }

    private void addedTo(String pointer) {
        if (soFar.bathLog().isEmpty() && task.cook().bath().vessel().isEmpty()) {
            faults.add(Fault.of(pointer, "WATER_UNKNOWN", "FAULT_WATER_UNKNOWN").withHint("HINT_SEND_VOLUME"));
        }
    }

    private void flat(String pointer) {
        if (!(task.cook().body() instanceof Slab || task.cook().body() instanceof Brick)) {
            faults.add(Fault.of(pointer, "ARRANGEMENT_NEEDS_FLAT", "FAULT_FLOAT_NEEDS_FLAT")
                    .withHint("HINT_AS_SLAB"));
        }
        if (task.cook().arrangement().oneFaceBlocked()) {
            faults.add(Fault.of(pointer, "NO_FACE_IN_WATER", "FAULT_NO_FACE_IN_WATER")
                    .withHint("HINT_TURN_OR_PUSH"));
        }
        if (soFar.bathLog().isEmpty() && task.cook().bath().vessel().isPresent()) {
            faults.add(Fault.of(pointer, "WATER_UNKNOWN", "FAULT_FLOATED_WATER").withHint("HINT_SEND_LOG"));
        }
    }

    private void readings() {
        double highestC =
                Math.max(task.cook().start().coreC(), task.cook().start().surfaceC());
        double lowestC = task.cook().start().lowestC();
        highestC = Math.max(highestC, task.cook().bath().setpointC().orElseThrow());
        lowestC = Math.min(lowestC, task.cook().bath().setpointC().orElseThrow());
        for (Event event : soFar.events()) {
            if (event instanceof SetpointChanged change) {
                highestC = Math.max(highestC, change.setpointC());
            } else if (event instanceof OutOfBath out) {
                lowestC = Math.min(
                        lowestC, out.temperatureC().orElse(knowledge.defaults().fridgeC()));
            }
        }
        if (soFar.bathLog().filter(log -> log.used() > 0).isPresent()) {
            highestC = Math.max(highestC, soFar.bathLog().get().highestC());
            lowestC = Math.min(lowestC, soFar.bathLog().get().lowestC());
        }
        double before = -1.0;
        for (int i = 0; i < soFar.readings().size(); i++) {
            CoreReading reading = soFar.readings().get(i);
            double errorK = reading.errorK().orElse(knowledge.replan().probeK()) + BEYOND_K;
            if (reading.at() > soFar.elapsed()) {
                faults.add(inTheFuture(READINGS + i + "/atS", reading.at()));
            }
            if (reading.at() <= before) {
                faults.add(Fault.of(READINGS + i + "/atS", "EVENTS_NOT_IN_ORDER", "FAULT_READINGS_ORDER")
                        .withHint("HINT_READINGS_ORDER"));
            }
            before = reading.at();
            if (reading.coreC() > highestC + errorK || reading.coreC() < lowestC - errorK) {
                Fault fault = Fault.of(
                                READINGS + i + "/coreC",
                                "READING_IMPOSSIBLE",
                                "FAULT_READING_IMPOSSIBLE",
                                Figures.temperature(reading.coreC()),
                                Figures.temperature(lowestC),
                                Figures.temperature(highestC))
                        .withValue(Double.toString(reading.coreC()));
                faults.add(fault.withHint(reading.coreC() == POWER_ON_C ? "HINT_EXACTLY_85" : "HINT_CHECK_PROBE"));
            }
        }
    }
}
