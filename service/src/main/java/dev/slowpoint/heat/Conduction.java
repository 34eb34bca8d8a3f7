package dev.slowpoint.heat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * Moves heat through one body and leaves its temperature history.
 *
 * <p>Space: finite volumes on a {@link Mesh}, enthalpy as the unknown. Time: while nothing freezes or thaws the linearly
 * implicit {@link Rosenbrock} method of fourth order; while a front moves {@link TrapezoidThenBdf} with Newton's method.
 * Both look at one step only, so that every change of the surroundings restarts cleanly, and choose the step from an
 * embedded error estimate.
 *
 * <p>Heat is counted by the very flows that change the state, so that the content of the body, the heat that entered and
 * the account of the bath agree to round-off, however large the steps.
 */
public final class Conduction {

    /** How strongly the nodes crowd towards the faces; where a sear strikes them, more. */
    private static final double CLUSTERING = 0.5;

    private static final double SEAR_CLUSTERING = 0.85;

    /** A medium this hot, or any radiation, sears [C]; no bath is. */
    private static final double SEARING_C = 110.0;

    /** How closely a stage ends at its level [K]. */
    private static final double LEVEL_K = 1e-3;

    /** Media nearer to each other than this are the same [K]. */
    private static final double SAME_K = 1e-9;

    /** How much a kink of the medium may amount to in the first step after it [K]. */
    private static final double KINK_K = 0.3;

    /** The least error of temperature that is worth a step [K]. */
    private static final double FINEST_K = 1e-3;

    /** Far enough above the freezing point that all is thawed [K]. */
    private static final double THAWED_K = 10.0;

    private static final int MAX_STEPS = 200_000;

    /** Steps between two looks at whether the result is still wanted; some tens of microseconds. */
    private static final int STEPS_UNASKED = 16;

    private final Material material;
    private final Resolution resolution;
    private final Mesh mesh;
    private final double reach;
    private final int last;
    private final Cells cells;
    private final Stepper smooth;
    private final Stepper front;
    private final BooleanSupplier halt = Halt.ofThread();

    private double[] state;
    private double[] next;
    private final double[] rates;
    private final double[] slopesNow;
    private double waterC;
    private double keptStep;
    private double slopeBefore;

    private double[] times = new double[48];
    private double[] temperaturesC;
    private double[] slopes;
    private double[] mediumC = new double[48];
    private double[] mediumSlopes = new double[48];
    private double[] taken = new double[48];
    private double[] flows = new double[48];
    private int samples;
    private Heat passed = Heat.NONE;

    private Conduction(StandIn body, Material material, Programme programme, boolean melts, Resolution resolution) {
        this.material = material;
        this.resolution = resolution;
        boolean twoFaced = false;
        boolean seared = false;
        for (Stage stage : programme.stages()) {
            Optional<Surroundings> far = stage.farSurroundings();
            twoFaced |= far.isPresent();
            seared |= sears(stage.surroundings()) || (far.isPresent() && sears(far.get()));
        }
        int intervals = seared
                ? resolution.searIntervals()
                : melts ? resolution.frozenIntervals() : resolution.smoothIntervals();
        if (twoFaced && body.shapeExponent() > 0.0) {
            throw new IllegalArgumentException("only a slab has a near and a far face");
        }
        this.mesh = Mesh.of(new Mesh.Layout(
                body.shapeExponent(),
                twoFaced ? 2 * intervals : intervals,
                !melts,
                twoFaced,
                seared ? SEAR_CLUSTERING : CLUSTERING));
        this.reach = twoFaced ? 2.0 * body.reach() : body.reach();
        this.last = mesh.intervals();
        int unknowns = last + 2;
        cells = new Cells(mesh, material, reach, programme.stages().get(0));
        smooth = new Rosenbrock(cells, unknowns);
        front = melts ? new TrapezoidThenBdf(cells, unknowns) : smooth;
        state = new double[unknowns];
        next = new double[unknowns];
        rates = new double[unknowns];
        slopesNow = new double[unknowns];
        temperaturesC = new double[48 * (last + 1)];
        slopes = new double[48 * (last + 1)];
    }

    static boolean sears(Surroundings surroundings) {
        return surroundings.heatFlux() > 0.0
                || surroundings.temperatureC() > SEARING_C
                || surroundings.wetLimitC() < Double.POSITIVE_INFINITY;
    }

    /**
     * Runs a programme.
     *
     * @param body what is heated or cooled
     * @param material what it is made of
     * @param start its temperatures at time zero
     * @param programme what it passes through
     * @param resolution how finely to work
     * @return the history from time zero to the end of the programme
     * @throws IllegalArgumentException when a body other than a slab is given a far face, or a bath goes on that never was
     * @throws Halt.Halted when this thread asks for it
     */
    public static TemperatureHistory run(
            Body body, Material material, StartField start, Programme programme, Resolution resolution) {
        return run(body, standIn(body, material, start, programme), material, start, programme, resolution);
    }

    /**
     * The same with a stand-in that is known already.
     *
     * @see #standIn
     */
    public static TemperatureHistory run(
            Body body,
            StandIn standIn,
            Material material,
            StartField start,
            Programme programme,
            Resolution resolution) {
        double lowestC = start.lowestC();
        for (Stage stage : programme.stages()) {
            lowestC = Math.min(lowestC, coldest(stage));
        }
        boolean melts = !(lowestC > material.smoothAboveC());
        Films films = new Films(
                body,
                standIn,
                conductivity(material, start, programme),
                Math.max(
                        Math.max(start.coreC(), start.surfaceC()),
                        programme.stages().get(0).surroundings().temperatureC()));
        List<Stage> stages = new ArrayList<>();
        for (Stage stage : programme.stages()) {
            stages.add(films.of(stage));
        }
        Programme adapted = new Programme(stages);
        return new Conduction(standIn, material, adapted, melts, resolution).run(start, stages);
    }

    /** The one-dimensional body that is run for a body, made for the first surroundings that give or take heat. */
    public static StandIn standIn(Body body, Material material, StartField start, Programme programme) {
        double film = Double.POSITIVE_INFINITY;
        for (Stage stage : programme.stages()) {
            if (stage.surroundings().filmCoefficient() > 0.0) {
                film = body.filmThroughShell(stage.surroundings().filmCoefficient());
                break;
            }
        }
        return body.standIn(film * body.reach() / conductivity(material, start, programme));
    }

    /** Conductivity [W/mK] half way from the start to the first medium, thawed: the one value a Biot number needs. */
    private static double conductivity(Material material, StartField start, Programme programme) {
        double mediumC = programme.stages().get(0).surroundings().temperatureC();
        return material.conductivity(Math.max(0.5 * (start.coreC() + mediumC), material.smoothAboveC() + THAWED_K));
    }

    /** The coldest medium of a stage [C]; an insulated face sees none. */
    private static double coldest(Stage stage) {
        double coldestC = mediumC(stage.surroundings());
        if (stage.rampsToC().isPresent() && stage.surroundings().filmCoefficient() > 0.0) {
            coldestC = Math.min(coldestC, stage.mediumAtEndC());
        }
        if (stage.farSurroundings().isPresent()) {
            coldestC = Math.min(coldestC, mediumC(stage.farSurroundings().get()));
        }
        if (stage.bath().isPresent()) {
            WaterBath bath = stage.bath().get();
            coldestC = Math.min(coldestC, Math.min(bath.startC().orElse(bath.roomC()), bath.roomC()));
        }
        return coldestC;
    }

    private static double mediumC(Surroundings surroundings) {
        return surroundings.filmCoefficient() > 0.0 ? surroundings.temperatureC() : Double.POSITIVE_INFINITY;
    }

    private TemperatureHistory run(StartField start, List<Stage> stages) {
        boolean twoFaced = mesh.layout().twoFaced();
        for (int i = 0; i <= last; i++) {
            double position = mesh.positions()[i];
            state[i] = material.enthalpy(start.atC(twoFaced ? Math.abs(2.0 * position - 1.0) : position));
        }
        double atStart = content();
        double time = 0.0;
        double[] stageEnds = new double[stages.size()];
        waterC = Double.NaN;
        boolean bathed = false;
        for (int s = 0; s < stageEnds.length; s++) {
            Stage stage = stages.get(s);
            time = runStage(stage, time, s > 0 && goesOn(stages.get(s - 1), stage));
            stageEnds[s] = time;
            slopeBefore = (stage.mediumAtEndC() - stage.surroundings().temperatureC()) / stage.duration();
            bathed |= movingMedium(stage);
        }
        double volume = 1.0 / (mesh.layout().shapeExponent() + 1.0);
        return new TemperatureHistory(
                Arrays.copyOf(times, samples),
                Arrays.copyOf(temperaturesC, samples * (last + 1)),
                Arrays.copyOf(slopes, samples * (last + 1)),
                mesh.positions(),
                mesh.shares(),
                mesh.sparse(),
                mesh.layout().shapeExponent(),
                reach,
                twoFaced,
                stageEnds,
                bathed
                        ? Optional.of(new PointHistory(
                                Arrays.copyOf(times, samples),
                                Arrays.copyOf(mediumC, samples),
                                Arrays.copyOf(mediumSlopes, samples)))
                        : Optional.empty(),
                new HeatBalance(atStart, content(), passed.intoBody() / volume, passed.heated(), passed.lost()),
                new HeatTaken(
                        Arrays.copyOf(times, samples), Arrays.copyOf(taken, samples), Arrays.copyOf(flows, samples)));
    }

    /** Mean enthalpy of the body [J/m3]. */
    private double content() {
        double sum = 0.0;
        for (int i = 0; i <= last; i++) {
            sum += mesh.shares()[i] * state[i];
        }
        return sum;
    }

    private static boolean movingMedium(Stage stage) {
        return stage.bath().isPresent() || stage.rampsToC().isPresent();
    }

    /**
     * Whether a stage goes on where a ramp, or what leads to one, left the medium: then only the slope of the medium has a
     * kink, the field stays smooth, and the time step is kept.
     */
    private static boolean goesOn(Stage before, Stage stage) {
        return (before.rampsToC().isPresent() || stage.rampsToC().isPresent())
                && before.bath().isEmpty()
                && stage.bath().isEmpty()
                && before.until().isEmpty()
                && before.farSurroundings().equals(stage.farSurroundings())
                && before.surroundings()
                        .equals(stage.surroundings().at(before.surroundings().temperatureC()))
                && Math.abs(before.mediumAtEndC() - stage.surroundings().temperatureC()) < SAME_K;
    }

    private double runStage(Stage stage, double begin, boolean goesOn) {
        enter(stage);
        boolean calm = prepare();
        int startSample = sample(begin, stage);
        double end = begin + stage.duration();
        double time = begin;
        double step = goesOn ? stepAfterKink(stage) : Math.min(stage.duration(), firstStep());
        Optional<CoreLevel> level = stage.until();
        if (level.isPresent() && beyond(level.get(), state) >= 0.0) {
            return begin;
        }
        boolean first = !goesOn;
        for (int count = 0; time < end; count++) {
            if (count > MAX_STEPS) {
                throw new IllegalStateException("the solver needs more than " + MAX_STEPS + " steps");
            }
            if (count % STEPS_UNASKED == 0 && halt.getAsBoolean()) {
                throw new Halt.Halted();
            }
            double left = end - time;
            double dt = step >= left ? left : (step > 0.5 * left ? 0.5 * left : step);
            Stepper stepper = calm ? smooth : front;
            double toleranceK =
                    Math.max((calm ? resolution.tolerance() : resolution.frontTolerance()) * cells.spreadK(), FINEST_K);
            double error = stepper.attempt(dt, state, rates, toleranceK, next);
            if (error > 1.0) {
                step = dt * Math.max(0.2, 0.9 * root(1.0 / error, stepper.errorOrder()));
                prepare();
                continue;
            }
            boolean reached = level.isPresent() && beyond(level.get(), next) >= 0.0;
            if (reached) {
                dt = shortened(dt, stepper, toleranceK, level.get());
            }
            passed = passed.plus(1.0, stepper.passed());
            time = dt == left ? end : time + dt;
            double[] before = state;
            state = next;
            next = before;
            calm = prepare();
            sample(time, stage);
            if (first) {
                levelFirstPiece(startSample);
                first = false;
            }
            if (reached) {
                return time;
            }
            // A step cut short by the end of its stage says little about how long the next one may be.
            double foretold = dt * Math.min(4.0, 0.9 * root(1.0 / Math.max(error, 1e-8), stepper.errorOrder()));
            keptStep = dt < step ? Math.max(foretold, Math.min(step, 4.0 * foretold)) : foretold;
            step = foretold;
        }
        return end;
    }

    private void enter(Stage stage) {
        cells.enter(stage, reach, mesh.layout().twoFaced());
        if (stage.rampsToC().isPresent()) {
            waterC = stage.surroundings().temperatureC();
        }
        stage.bath().ifPresent(bath -> {
            double startC = bath.startC().orElse(waterC);
            if (Double.isNaN(startC)) {
                throw new IllegalArgumentException("a bath can only go on where there was one before");
            }
            waterC = startC;
        });
        state[last + 1] = waterC;
    }

    /** Readies the cells for a step from the present state; whether nothing freezes or thaws there. */
    private boolean prepare() {
        cells.evaluate(state);
        cells.flows(rates);
        if (smooth == front) {
            return true;
        }
        double lowestC = cells.coldestMediumC();
        for (int i = 0; i <= last; i++) {
            lowestC = Math.min(lowestC, cells.temperatureC(i));
        }
        return lowestC > material.smoothAboveC();
    }

    /** A step in which heat passes through a few thousandths of the body; the error control takes it from there. */
    private double firstStep() {
        return 1e-3 * reach * reach / Math.max(cells.smallestDiffusivity(), 1e-9);
    }

    /** The step kept over a kink of the medium: the sharper the kink, the shorter, down to that of a fresh start. */
    private double stepAfterKink(Stage stage) {
        double kink =
                Math.abs((stage.mediumAtEndC() - stage.surroundings().temperatureC()) / stage.duration() - slopeBefore);
        return Math.min(keptStep, Math.max(firstStep(), KINK_K / Math.max(kink, 1e-9)));
    }

    /** How far a state is beyond a level [K]; below zero when it has not got there. */
    private double beyond(CoreLevel level, double[] enthalpies) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= last; i++) {
            double above = material.temperatureC(enthalpies[i]) - level.levelC();
            least = Math.min(least, level.falling() ? -above : above);
        }
        return least;
    }

    /** Tries the step again, shorter and shorter, until it ends at the level. */
    private double shortened(double dt, Stepper stepper, double toleranceK, CoreLevel level) {
        double low = 0.0;
        double lowBeyond = beyond(level, state);
        double high = dt;
        double highBeyond = beyond(level, next);
        while (highBeyond > LEVEL_K) {
            double share = Math.min(Math.max(-lowBeyond / (highBeyond - lowBeyond), 0.05), 0.95);
            double middle = low + share * (high - low);
            prepare();
            stepper.attempt(middle, state, rates, toleranceK, next);
            double found = beyond(level, next);
            if (found >= 0.0) {
                high = middle;
                highBeyond = found;
            } else if (high - low < 1e-9 * dt) {
                return high;
            } else {
                low = middle;
                lowBeyond = found;
                if (found > -LEVEL_K) {
                    return middle;
                }
            }
        }
        return high;
    }

    private int sample(double time, Stage stage) {
        int n = last + 1;
        if (samples == times.length) {
            times = Arrays.copyOf(times, 2 * samples);
            mediumC = Arrays.copyOf(mediumC, 2 * samples);
            mediumSlopes = Arrays.copyOf(mediumSlopes, 2 * samples);
            taken = Arrays.copyOf(taken, 2 * samples);
            flows = Arrays.copyOf(flows, 2 * samples);
            temperaturesC = Arrays.copyOf(temperaturesC, 2 * samples * n);
            slopes = Arrays.copyOf(slopes, 2 * samples * n);
        }
        cells.massSolve(rates, slopesNow);
        times[samples] = time;
        double perVolume = mesh.layout().shapeExponent() + 1.0;
        taken[samples] = passed.intoBody() * perVolume;
        flows[samples] = cells.intoBody() * perVolume;
        int at = samples * n;
        for (int i = 0; i < n; i++) {
            temperaturesC[at + i] = cells.temperatureC(i);
            slopes[at + i] = slopesNow[i] * cells.temperatureSlope(i);
        }
        if (movingMedium(stage)) {
            waterC = state[last + 1];
            mediumC[samples] = waterC;
            mediumSlopes[samples] = rates[last + 1];
        } else {
            mediumC[samples] = stage.surroundings().temperatureC();
            mediumSlopes[samples] = 0.0;
        }
        return samples++;
    }

    /** Right after a change of surroundings the slope is not defined; the first piece is made a straight line. */
    private void levelFirstPiece(int sample) {
        int n = last + 1;
        double span = times[sample + 1] - times[sample];
        for (int i = 0; i < n; i++) {
            slopes[sample * n + i] = (temperaturesC[(sample + 1) * n + i] - temperaturesC[sample * n + i]) / span;
        }
    }

    private static double root(double x, double order) {
        return order == 4.0 ? Math.sqrt(Math.sqrt(x)) : StrictMath.cbrt(x);
    }
}
