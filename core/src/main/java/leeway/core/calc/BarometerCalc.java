package leeway.core.calc;

import java.util.List;
import leeway.core.gas.Barometer;
import leeway.core.quantity.Kind;

/** Pressure at an altitude. */
final class BarometerCalc implements Calc {
    @Override public String name() { return "barometer"; }

    @Override public String plain() { return "Pressure of the standard atmosphere at an altitude"; }

    @Override public List<Key> keys() { return List.of(Key.must("altitude", Kind.ALTITUDE, Barometer.LOWEST_M, Barometer.HIGHEST_M, "pressure altitude of cabin or ground")); }

    @Override public String example() { return "--altitude \"8000 ft\""; }

    @Override public CalcResult of(Given g) {
        double m = g.number("altitude"), hPa = Barometer.pressureHPa(m);
        return new Answer(this).step("1013.25 hPa × (1 − 0.0065 × %s m ÷ 288.15)^5.2559 = %s hPa.", Show.digits(m, 5), Show.digits(hPa, 5)).step("In mercury: %s mmHg.", Show.number(Barometer.mmHg(hPa)))
                .key("pressureHPa", hPa, "hPa").key("pressureMmHg", Barometer.mmHg(hPa), "mmHg").from("ISO 2533:1975, geopotential altitude, up to 11 000 m");
    }
}
