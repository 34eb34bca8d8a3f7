package dev.slowpoint.plan;

import dev.slowpoint.food.Film;
import dev.slowpoint.plan.Step.ChillMedium;
import dev.slowpoint.plan.Step.SearMethod;
import java.util.List;
import java.util.Map;

/**
 * What a parameter set says of steps after the bath.
 *
 * @param roomC temperature of the room [C]
 * @param roomToleranceK how much warmer the room may be where the length of a power cut is inferred [K]
 * @param tapC cold tap water [C]
 * @param bathCooling time constant of a covered bath without heater [s]
 * @param doneC level that the depth of a sear is told for [C]
 * @param restWatched how long a rest after the last sear is followed to find the peak of the core [s]
 * @param longestChill when a chill without a stated length is given up [s]
 * @param coolingRule id of the cooling rule judged by, where none is asked for
 * @param interruptionRule id of the cooling rule that a time without heater is held against
 * @param room film of a bag in room air
 * @param seared film of a seared, unpacked surface in room air
 * @param store film of a bag in a refrigerator
 * @param media temperature and film of each way to cool
 * @param sear how hot each way of searing is
 * @param wetLimitC above which a wet surface does not rise [C]
 * @param reheating what reheating has to do
 */
public record AfterBath(
        double roomC,
        double roomToleranceK,
        double tapC,
        Range bathCooling,
        double doneC,
        double restWatched,
        double longestChill,
        String coolingRule,
        String interruptionRule,
        Film room,
        Film seared,
        Film store,
        Map<ChillMedium, Cold> media,
        Map<SearMethod, SearHeat> sear,
        Range wetLimitC,
        List<ReheatRule> reheating) {

    /** Copies the collections and refuses a set that leaves out a medium or a method. */
    public AfterBath {
        media = Map.copyOf(media);
        sear = Map.copyOf(sear);
        reheating = List.copyOf(reheating);
        for (ChillMedium medium : ChillMedium.values()) {
            if (!media.containsKey(medium)) {
                throw new IllegalArgumentException("nothing is said about " + medium);
            }
        }
        for (SearMethod method : SearMethod.values()) {
            if (!sear.containsKey(method)) {
                throw new IllegalArgumentException("nothing is said about " + method);
            }
        }
    }

    /**
     * A cold medium.
     *
     * @param temperatureC usual temperature [C]
     * @param film of a bag in it
     */
    public record Cold(double temperatureC, Film film) {}
}
