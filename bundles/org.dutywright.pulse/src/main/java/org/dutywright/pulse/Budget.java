// SPDX-License-Identifier: EPL-2.0
package org.dutywright.pulse;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The uncertainty budget of one value (JCGM 100): independent components in the unit of the value, from which the
 * standard uncertainty and the 95 % interval come.
 *
 * <p>The standard uncertainty is the root of the sum of squares. The interval is that of the components' own
 * distribution, see {@link Coverage#halfWidth}.
 *
 * @param components those above 0, in the order in which they were added
 */
public record Budget(List<Component> components) {
    /** A budget of nothing: of values whose uncertainty was given as a number. */
    public static final Budget NONE = new Budget(List.of());

    /** How a component was evaluated, JCGM 100 clause 4. */
    public enum Evaluation {
        /** From the scatter of what was recorded. */
        A,
        /** From anything else that is known. */
        B
    }

    /** Distribution of the error that a component stands for. */
    public enum Shape {
        /** Normal. */
        NORMAL("normal"),
        /** Student's t: a normal one whose spread was estimated from few observations. */
        STUDENT("t"),
        /** Anywhere between two bounds. */
        RECTANGULAR("rectangular"),
        /** A sine of unknown phase: what small noise leaves of a code step. */
        ARCSINE("arcsine");

        private final String word;

        Shape(String word) {
            this.word = word;
        }

        /** The word in files. */
        public String word() {
            return word;
        }

        /** Whether its errors end at a bound that is less than two standard deviations away. */
        boolean isBounded() {
            return this == RECTANGULAR || this == ARCSINE;
        }
    }

    /**
     * One source of error.
     *
     * @param name what it is, for people
     * @param evaluation type A or B
     * @param shape its distribution
     * @param u standard uncertainty that it contributes, in the unit of the value
     * @param degreesOfFreedom of {@code u}, infinite where it is taken as known
     */
    public record Component(String name, Evaluation evaluation, Shape shape, double u, double degreesOfFreedom) {
        /** Refuses what no budget can hold. */
        public Component {
            if (!(u >= 0) || !Double.isFinite(u) || !(degreesOfFreedom > 0)) {
                throw new IllegalArgumentException(name + ": u " + u + ", degrees of freedom " + degreesOfFreedom);
            }
        }

        /** From observations; normal where their number is not limited. */
        public static Component typeA(String name, double u, double degreesOfFreedom) {
            Shape shape = Double.isInfinite(degreesOfFreedom) ? Shape.NORMAL : Shape.STUDENT;
            return new Component(name, Evaluation.A, shape, u, degreesOfFreedom);
        }

        /** A normal one that is taken as known. */
        public static Component normal(String name, double u) {
            return new Component(name, Evaluation.B, Shape.NORMAL, u, Double.POSITIVE_INFINITY);
        }

        /** Anywhere within a half-width: u is the half-width over the root of 3 (JCGM 100, 4.3.7). */
        public static Component rectangular(String name, double halfWidth) {
            return bounded(name, Shape.RECTANGULAR, halfWidth / Math.sqrt(3));
        }

        /** A bounded one of a given standard uncertainty. */
        public static Component bounded(String name, Shape shape, double u) {
            return new Component(name, Evaluation.B, shape, u, Double.POSITIVE_INFINITY);
        }

        /** The same error acting on another quantity. */
        public Component times(double sensitivity) {
            return new Component(name, evaluation, shape, Math.abs(sensitivity) * u, degreesOfFreedom);
        }

        /** The same error under another name. */
        public Component named(String other) {
            return new Component(other, evaluation, shape, u, degreesOfFreedom);
        }
    }

    /** Leaves out what contributes nothing. */
    public Budget {
        components = components.stream().filter(it -> it.u() > 0).toList();
    }

    /** A budget of these components. */
    public static Budget of(Component... components) {
        return new Budget(Arrays.asList(components));
    }

    /** This one with more components. */
    public Budget and(List<Component> more) {
        List<Component> all = new ArrayList<>(components);
        all.addAll(more);
        return new Budget(all);
    }

    /** The same errors acting on another quantity. */
    public Budget times(double sensitivity) {
        return new Budget(components.stream().map(it -> it.times(sensitivity)).toList());
    }

    /** Standard uncertainty (k = 1). */
    public double u() {
        return Math.sqrt(components.stream().mapToDouble(it -> it.u() * it.u()).sum());
    }

    /** Half-width of the 95 % interval. */
    public double u95() {
        return Coverage.halfWidth(this, Coverage.P95);
    }

    /** The largest component, empty without any. */
    public Optional<Component> dominant() {
        return components.stream().max(Comparator.comparingDouble(Component::u));
    }

    /**
     * Effective degrees of freedom of Welch and Satterthwaite, truncated to a whole number of at least 1 (JCGM 100,
     * G.4.1); infinite where no component has finite ones.
     */
    public double effectiveDegreesOfFreedom() {
        double sum = 0;
        for (Component component : components) {
            sum += Math.pow(component.u(), 4) / component.degreesOfFreedom();
        }
        double effective = Math.pow(u(), 4) / sum;
        return sum > 0 ? Math.max(1, Math.floor(effective)) : Double.POSITIVE_INFINITY;
    }

    /** A value with this budget. */
    public Uncertain around(double value) {
        return new Uncertain(value, u(), u95(), this);
    }
}
