package leeway.core.quantity;

/** What a quantity measures, as exponents of kilogram, metre, second, kelvin and mole. */
public record Dimension(int kilogram, int metre, int second, int kelvin, int mole) {
    public static final Dimension NONE = new Dimension(0, 0, 0, 0, 0);
    public static final Dimension LENGTH = new Dimension(0, 1, 0, 0, 0);
    public static final Dimension MASS = new Dimension(1, 0, 0, 0, 0);
    public static final Dimension TIME = new Dimension(0, 0, 1, 0, 0);
    public static final Dimension TEMPERATURE = new Dimension(0, 0, 0, 1, 0);
    public static final Dimension VOLUME = LENGTH.power(3);
    public static final Dimension RATE = NONE.over(TIME);
    public static final Dimension FLOW = VOLUME.over(TIME);
    public static final Dimension PRESSURE = new Dimension(1, -1, -2, 0, 0);
    public static final Dimension COMPLIANCE = VOLUME.over(PRESSURE);
    public static final Dimension RESISTANCE = PRESSURE.over(FLOW);
    public static final Dimension DENSITY = MASS.over(VOLUME);
    public static final Dimension CONCENTRATION = new Dimension(0, -3, 0, 0, 1);
    public static final Dimension ENERGY = new Dimension(1, 2, -2, 0, 0);
    public static final Dimension POWER = ENERGY.over(TIME);
    public static final Dimension VOLUME_PER_MASS = VOLUME.over(MASS);
    public static final Dimension FLOW_PER_MASS = FLOW.over(MASS);

    /** By hand, for what the compiler makes costs a short command some 20 ms of its start. */
    @Override public boolean equals(Object o) {
        return this == o || o instanceof Dimension d && kilogram == d.kilogram && metre == d.metre && second == d.second && kelvin == d.kelvin && mole == d.mole;
    }

    @Override public int hashCode() { return (((kilogram * 31 + metre) * 31 + second) * 31 + kelvin) * 31 + mole; }

    public Dimension times(Dimension o) {
        return new Dimension(kilogram + o.kilogram, metre + o.metre, second + o.second, kelvin + o.kelvin, mole + o.mole);
    }

    public Dimension over(Dimension o) {
        return new Dimension(kilogram - o.kilogram, metre - o.metre, second - o.second, kelvin - o.kelvin, mole - o.mole);
    }

    public Dimension power(int n) {
        return new Dimension(kilogram * n, metre * n, second * n, kelvin * n, mole * n);
    }
}
