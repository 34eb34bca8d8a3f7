package dev.slowpoint.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * The planes of a lookup table: sizes [m], setpoints [C] and starts [C], each rising. The start varies fastest.
 *
 * @param axes one list for each
 */
record TableGrid(List<List<Double>> axes) {

    /** Nodes around a point. */
    static final int AROUND = 8;

    /** Copies the lists. */
    TableGrid {
        axes = axes.stream().map(List::copyOf).toList();
    }

    /** What a value is linear in along an axis: the square of the size, the temperature itself. */
    static double coordinate(int axis, double at) {
        return axis == 0 ? at * at : at;
    }

    int nodes() {
        return axes.get(0).size() * axes.get(1).size() * axes.get(2).size();
    }

    int node(int size, int setpoint, int start) {
        return (size * axes.get(1).size() + setpoint) * axes.get(2).size() + start;
    }

    /** The same with one more plane. */
    TableGrid with(int axis, double plane) {
        List<List<Double>> more = new ArrayList<>(axes);
        List<Double> planes = new ArrayList<>(axes.get(axis));
        planes.add(-Collections.binarySearch(planes, plane) - 1, plane);
        more.set(axis, planes);
        return new TableGrid(more);
    }

    /** Where each node lies, in their order. */
    List<Spot> spots() {
        List<Spot> spots = new ArrayList<>(nodes());
        for (double size : axes.get(0)) {
            for (double setpointC : axes.get(1)) {
                for (double startC : axes.get(2)) {
                    spots.add(new Spot(size, setpointC, startC));
                }
            }
        }
        return spots;
    }

    /** The middle of each cell, in the coordinates that values are linear in. */
    List<Spot> middles() {
        List<Spot> middles = new ArrayList<>();
        for (double size : between(0)) {
            for (double setpointC : between(1)) {
                for (double startC : between(2)) {
                    middles.add(new Spot(size, setpointC, startC));
                }
            }
        }
        return middles;
    }

    private List<Double> between(int axis) {
        List<Double> planes = axes.get(axis);
        if (planes.size() == 1) {
            return planes;
        }
        List<Double> middles = new ArrayList<>();
        for (int i = 1; i < planes.size(); i++) {
            double middle = 0.5 * (coordinate(axis, planes.get(i - 1)) + coordinate(axis, planes.get(i)));
            middles.add(axis == 0 ? Math.sqrt(middle) : middle);
        }
        return middles;
    }

    /** The nodes around a point within the ranges, with their weights; those without weight are left out. */
    Weights weights(Spot spot) {
        int[] nodes = new int[AROUND];
        double[] weights = new double[AROUND];
        int[] below = new int[3];
        double[] share = new double[3];
        for (int axis = 0; axis < 3; axis++) {
            List<Double> planes = axes.get(axis);
            int i = 0;
            while (i + 2 < planes.size() && spot.at(axis) >= planes.get(i + 1)) {
                i++;
            }
            below[axis] = i;
            if (planes.size() > 1) {
                double low = coordinate(axis, planes.get(i));
                double high = coordinate(axis, planes.get(i + 1));
                share[axis] = (coordinate(axis, spot.at(axis)) - low) / (high - low);
            }
        }
        int n = 0;
        for (int corner = 0; corner < AROUND; corner++) {
            double weight = 1.0;
            int[] index = new int[3];
            for (int axis = 0; axis < 3; axis++) {
                boolean upper = (corner >> axis & 1) != 0;
                weight *= upper ? share[axis] : 1.0 - share[axis];
                index[axis] = below[axis] + (upper ? 1 : 0);
            }
            if (weight > 0.0) {
                nodes[n] = node(index[0], index[1], index[2]);
                weights[n++] = weight;
            }
        }
        return new Weights(Arrays.copyOf(nodes, n), Arrays.copyOf(weights, n));
    }

    /**
     * A point of the ranges.
     *
     * @param size [m]
     * @param setpointC [C]
     * @param startC [C]
     */
    record Spot(double size, double setpointC, double startC) {

        double at(int axis) {
            return axis == 0 ? size : axis == 1 ? setpointC : startC;
        }

        Spot with(int axis, double value) {
            return new Spot(axis == 0 ? value : size, axis == 1 ? value : setpointC, axis == 2 ? value : startC);
        }
    }

    /** Nodes and what each counts for; the weights add up to one. */
    static final class Weights {

        private final int[] nodes;
        private final double[] weights;

        private Weights(int[] nodes, double[] weights) {
            this.nodes = nodes;
            this.weights = weights;
        }

        int count() {
            return nodes.length;
        }

        int node(int i) {
            return nodes[i];
        }

        double weight(int i) {
            return weights[i];
        }

        /** The node that counts most. */
        int nearest() {
            int nearest = 0;
            for (int i = 1; i < weights.length; i++) {
                nearest = weights[i] > weights[nearest] ? i : nearest;
            }
            return nodes[nearest];
        }

        /** The value between nodes; infinity where any of them is. */
        double of(double[] values) {
            double sum = 0.0;
            for (int i = 0; i < nodes.length; i++) {
                sum += weights[i] * values[nodes[i]];
            }
            return sum;
        }

        double squares() {
            double sum = 0.0;
            for (double weight : weights) {
                sum += weight * weight;
            }
            return sum;
        }
    }
}
