package dev.slowpoint.api;

import dev.slowpoint.ops.Rehearsal;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import org.springframework.stereotype.Component;

/** Plans the examples of the contract, from bytes to bytes and in every representation. */
@Component
final class PlanRehearsal implements Rehearsal {

    private final CookPlanning cooks;
    private final Sentences sentences;
    private final PlannedChills chills;
    private final List<byte[]> cookRequests;
    private final List<byte[]> chillRequests;
    private final ReplannedCooks replans;
    private final List<byte[]> replanRequests;
    private final ProcessWindows windows;
    private final List<byte[]> windowRequests;
    private final PlannedLoads loads;
    private final List<byte[]> loadRequests;

    PlanRehearsal(
            CookPlanning cooks,
            PlannedChills chills,
            ReplannedCooks replans,
            ProcessWindows windows,
            PlannedLoads loads,
            Examples examples,
            Languages languages) {
        this.cooks = cooks;
        this.chills = chills;
        this.replans = replans;
        this.loads = loads;
        this.sentences = languages.english();
        this.cookRequests = some("cook-plan", examples.requests("cook-plan").values());
        this.chillRequests = some("chill-plan", examples.requests("chill-plan").values());
        this.replanRequests = some("replan", examples.requests("replan").values());
        this.windows = windows;
        this.windowRequests =
                some("process-window", examples.requests("process-window").values());
        this.loadRequests = some("load-plan", examples.requests("load-plan").values());
    }

    private static List<byte[]> some(String what, Collection<byte[]> bodies) {
        if (bodies.isEmpty()) {
            throw new IllegalStateException("there is no example of a " + what + " to rehearse");
        }
        return List.copyOf(bodies);
    }

    @Override
    public void rehearse() {
        for (byte[] body : cookRequests) {
            CookPlanRequest request = RequestReader.read(body, Wire.JSON, CookPlanRequest.class);
            // A sample runs the same paths hundreds of times: it would take the time of all other rounds.
            write(cooks.plan(request, EnumSet.complementOf(EnumSet.of(Include.UNCERTAINTY)), sentences));
        }
        for (byte[] body : chillRequests) {
            ChillPlanRequest request = RequestReader.read(body, Wire.JSON, ChillPlanRequest.class);
            write(chills.plan(request, EnumSet.of(Include.CURVE, Include.SOURCES), sentences));
        }
        for (byte[] body : replanRequests) {
            ReplanRequest request = RequestReader.read(body, Wire.JSON, ReplanRequest.class);
            write(replans.plan(request, EnumSet.allOf(Include.class), sentences));
        }
        // A window runs the paths of a cook plan a hundred times: one of them is enough.
        write(windows.answer(
                RequestReader.read(windowRequests.get(0), Wire.JSON, ProcessWindowRequest.class), sentences));
        for (byte[] body : loadRequests) {
            LoadPlanRequest request = RequestReader.read(body, Wire.JSON, LoadPlanRequest.class);
            write(loads.plan(request, EnumSet.of(Include.CURVE, Include.SOURCES), sentences));
        }
    }

    private static void write(Record plan) {
        for (Wire wire : Wire.values()) {
            if (wire.write(plan).length == 0) {
                throw new IllegalStateException("a plan was written as nothing in " + wire);
            }
        }
    }
}
