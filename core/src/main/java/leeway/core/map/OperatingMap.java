package leeway.core.map;

import java.util.List;
import java.util.Optional;
import leeway.core.kit.Setting;

/**
 * The room left to the nearest limit, over two settings, in the steady state; the others stand as chosen.
 * Grids are {@code [row of y][column of x]}.
 *
 * @param limits  what must not be crossed; a measure that the model does not know is absent
 * @param lines   what is worth seeing though nothing breaks: PaCO2, oxygen draw, minutes of supply
 * @param signed  the least room of all limits, below 0 beyond one; {@link #room} is the same cut at 0
 * @param sensitivity what moves the results of the chosen settings most
 * @param little a sentence where the chosen settings keep every limit, but one by little
 * @param held    how the other settings stand while these two are turned, a sentence each
 */
public record OperatingMap(String title, Axis x, Axis y, List<Limit> limits, List<Line> lines, double[][] signed, Chosen chosen, List<String> held, Optional<String> little,
        Sensitivity sensitivity) {
    public OperatingMap {
        limits = List.copyOf(limits);
        lines = List.copyOf(lines);
        held = List.copyOf(held);
    }

    /** A setting along an edge of the map. */
    public record Axis(Setting setting, String name, String unit, double[] values) { }

    /**
     * A limit with the value of its measure everywhere.
     *
     * @param upper true where the value must stay below {@code limit}
     * @param full  the distance inside it at which the room is 1
     */
    public record Limit(String name, String unit, double limit, boolean upper, double full, double[][] values) {
        /** Room at a value of the measure: 1 where full or more, 0 at the limit, below 0 beyond. */
        public double room(double value) { return Math.min(1, (upper ? limit - value : value - limit) / full); }

        /** The value at which the room is so much. */
        public double at(double room) { return upper ? limit - room * full : limit + room * full; }
    }

    /** A measure worth seeing, with the levels at which a line is drawn. */
    public record Line(String name, String unit, double[] levels, double[][] values) {
        public Line { levels = levels.clone(); }
    }

    /**
     * The settings chosen.
     *
     * @param room    0 to 1, 0 beyond a limit
     * @param nearest the limit with the least room; the worst of those crossed where some are
     * @param beyond  names of all limits that are crossed
     * @param turnX   how far x may be turned alone; absent where the point lies beyond a limit
     */
    public record Chosen(double x, double y, double room, String nearest, List<String> beyond, Optional<Turn> turnX, Optional<Turn> turnY) {
        public Chosen { beyond = List.copyOf(beyond); }
    }

    /** From where to where a knob may be turned, and what ends it at either end; empty where the map ends first. */
    public record Turn(double from, String endsFrom, double to, String endsTo) { }

    /** 0 to 1; 0 beyond a limit. */
    public double[][] room() {
        double[][] room = new double[signed.length][];
        for (int j = 0; j < signed.length; j++) {
            room[j] = new double[signed[j].length];
            for (int i = 0; i < room[j].length; i++) room[j][i] = Math.max(0, Math.min(1, signed[j][i]));
        }
        return room;
    }
}
