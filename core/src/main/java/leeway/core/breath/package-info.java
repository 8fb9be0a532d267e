/**
 * Breaths: what pressures, flows and volumes follow from lungs, kit and settings.
 * <p>Lives here: {@link leeway.core.breath.Mechanics}, {@link leeway.core.breath.BreathSettings} and
 * {@link leeway.core.breath.DeviceLimits} as plain numbers; the breath as a part of the loop; the cyclic steady state; the
 * textbook closed forms that judge both.
 * <p>Does not: sheets and files, gas exchange, alarms. It maps no sheet: whoever has one fills these records.
 * <p>Inside: s, mL, mL/s, cmH2O; resistances in cmH2O.s/mL. At the border names end in their unit. Physics and sources:
 * docs/physics/breath.md and lungs.md. Leans on {@code leeway.core.lung}, {@code leeway.core.kit} (the mode codes), {@code leeway.core.gas} (free flow as it is breathed) and {@code leeway.core.run}.
 */
package leeway.core.breath;
