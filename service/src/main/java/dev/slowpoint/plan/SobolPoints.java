package dev.slowpoint.plan;

import java.util.Random;

/**
 * Points that fill a cube evenly: the sequence of Sobol (1967) with the direction numbers of Joe and Kuo (2008, SIAM J.
 * Sci. Comput. 30:2635, file new-joe-kuo-6), in the Gray-code order of Antonov and Saleev (1979). Of the first {@code 2^m}
 * points just one lies in each {@code 2^m}-th of every axis.
 *
 * <p>A digital shift (L'Ecuyer and Lemieux 2002, from memory) takes the first point out of its corner and keeps that
 * evenness. Whole-number arithmetic only, and a generator whose bits the platform prescribes: the same points everywhere.
 */
final class SobolPoints {

    /** The most axes there are. */
    static final int MOST_AXES = 9;

    private static final int BITS = 32;

    /** Degree, inner coefficients and first numbers for each axis after the first. */
    private static final int[][] DIRECTIONS = {
        {1, 0, 1},
        {2, 1, 1, 3},
        {3, 1, 1, 3, 1},
        {3, 2, 1, 1, 1},
        {4, 1, 1, 1, 3, 3},
        {4, 4, 1, 3, 5, 13},
        {5, 2, 1, 1, 5, 5, 17},
        {5, 4, 1, 1, 5, 5, 5}
    };

    private final int[][] vectors;
    private final int[] shift;

    private SobolPoints(int axes, int[] shift) {
        if (axes < 1 || axes > MOST_AXES) {
            throw new IllegalArgumentException(axes + " axes: there are one to " + MOST_AXES);
        }
        this.vectors = new int[axes][];
        for (int axis = 0; axis < axes; axis++) {
            vectors[axis] = vectors(axis);
        }
        this.shift = shift;
    }

    /** The sequence as published, its first point in the corner. */
    static SobolPoints unshifted(int axes) {
        return new SobolPoints(axes, new int[axes]);
    }

    /** The sequence with a shift that a seed decides. */
    static SobolPoints shifted(int axes, long seed) {
        return new SobolPoints(axes, new Random(seed).ints(axes).toArray());
    }

    private static int[] vectors(int axis) {
        int[] v = new int[BITS];
        if (axis == 0) {
            for (int k = 0; k < BITS; k++) {
                v[k] = 1 << (BITS - 1 - k);
            }
            return v;
        }
        int[] row = DIRECTIONS[axis - 1];
        int degree = row[0];
        int coefficients = row[1];
        for (int k = 0; k < BITS; k++) {
            if (k < degree) {
                v[k] = row[2 + k] << (BITS - 1 - k);
                continue;
            }
            v[k] = v[k - degree] ^ (v[k - degree] >>> degree);
            for (int j = 1; j < degree; j++) {
                if ((coefficients >> (degree - 1 - j) & 1) != 0) {
                    v[k] ^= v[k - j];
                }
            }
        }
        return v;
    }

    /**
     * One coordinate of a point, above zero and below one.
     *
     * @param point counted from zero
     * @param axis counted from zero
     */
    double at(int point, int axis) {
        int bits = shift[axis];
        int gray = point ^ (point >>> 1);
        for (int k = 0; gray != 0; k++, gray >>>= 1) {
            if ((gray & 1) != 0) {
                bits ^= vectors[axis][k];
            }
        }
        return (Integer.toUnsignedLong(bits) + 0.5) * 0x1p-32;
    }
}
