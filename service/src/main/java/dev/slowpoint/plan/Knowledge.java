package dev.slowpoint.plan;

import dev.slowpoint.food.Catalogue;
import dev.slowpoint.food.Film;
import dev.slowpoint.food.Food;
import dev.slowpoint.food.ThermalModel;
import dev.slowpoint.safety.SafetyKnowledge;
import dev.slowpoint.texture.TextureModel;
import java.util.EnumMap;
import java.util.Map;

/**
 * All that one parameter set says, as plain values; no file, no format.
 *
 * @param version name of the set
 * @param digest of its files
 * @param catalogue the foods
 * @param thermal from composition to thermal properties
 * @param films film coefficients by id
 * @param safety rules and kinetics
 * @param texture texture classes
 * @param notices what each warning rests on
 * @param defaults what holds where a question says nothing
 * @param vessels what holds for a bath where a question says nothing
 * @param after what holds for steps after the bath
 * @param spreads of the real values about the stated ones
 * @param logs what holds for recorded logs
 * @param replan what holds for a cook under way
 * @param window what holds for a process window
 * @param sheets what holds for sheets of portions
 */
public record Knowledge(
        String version,
        String digest,
        Catalogue catalogue,
        ThermalModel thermal,
        Map<String, Film> films,
        SafetyKnowledge safety,
        TextureModel texture,
        Map<NoticeCode, NoticeRule> notices,
        Defaults defaults,
        VesselDefaults vessels,
        AfterBath after,
        Spreads spreads,
        LogDefaults logs,
        ReplanDefaults replan,
        WindowDefaults window,
        SheetDefaults sheets) {

    /** Copies the maps, refuses a set that leaves out a notice and a food whose texture class is not modelled. */
    public Knowledge {
        films = Map.copyOf(films);
        notices = new EnumMap<>(notices);
        for (NoticeCode code : NoticeCode.values()) {
            if (!notices.containsKey(code)) {
                throw new IllegalArgumentException("parameter set " + version + " says nothing about notice " + code);
            }
        }
        for (Food food : catalogue.foods()) {
            food.textureClass().ifPresent(texture::get);
        }
    }
}
