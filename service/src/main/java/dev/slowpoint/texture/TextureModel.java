package dev.slowpoint.texture;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** All that a parameter set says about texture: the classes and the words for doneness. */
public final class TextureModel {

    private final Map<String, TextureClass> classes = new LinkedHashMap<>();
    private final List<Doneness> doneness;

    /** Refuses two classes of one id, and a class whose scale of doneness has no word. */
    public TextureModel(Collection<TextureClass> classes, Collection<Doneness> doneness) {
        this.doneness = List.copyOf(doneness);
        for (TextureClass textureClass : classes) {
            if (this.classes.put(textureClass.id(), textureClass) != null) {
                throw new IllegalArgumentException("texture class " + textureClass.id() + " stands twice");
            }
            if (textureClass.donenessScale().isPresent()
                    && doneness(textureClass).isEmpty()) {
                throw new IllegalArgumentException("texture class " + textureClass.id() + " names the scale "
                        + textureClass.donenessScale().get() + ", which has no word. Maybe it is spelt differently?");
            }
        }
    }

    /** All classes in the order of the parameter set. */
    public Collection<TextureClass> classes() {
        return List.copyOf(classes.values());
    }

    /** A class by its id, if the set models it. */
    public Optional<TextureClass> find(String id) {
        return Optional.ofNullable(classes.get(id));
    }

    /** A class by its id. */
    public TextureClass get(String id) {
        return find(id).orElseThrow(() -> new IllegalArgumentException(
                "texture class '" + id + "' is not modelled. Maybe one of " + classes.keySet() + "?"));
    }

    /** All words for doneness, of all scales. */
    public List<Doneness> doneness() {
        return doneness;
    }

    /** The words for doneness of a class by rising temperature; empty when it has no scale. */
    public List<Doneness> doneness(TextureClass textureClass) {
        return textureClass
                .donenessScale()
                .map(scale -> doneness.stream()
                        .filter(word -> word.scale().equals(scale))
                        .toList())
                .orElse(List.of());
    }
}
