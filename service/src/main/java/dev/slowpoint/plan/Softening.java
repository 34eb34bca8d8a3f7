package dev.slowpoint.plan;

import dev.slowpoint.texture.EarlierDoses;
import dev.slowpoint.texture.TextureClass;

/**
 * How the texture of a piece is read.
 *
 * @param textureClass model
 * @param earlier what earlier cooks have done
 */
record Softening(TextureClass textureClass, EarlierDoses earlier) {}
