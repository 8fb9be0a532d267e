/**
 * What the devices see and when they speak: limits, sensors, alarm conditions, the sound and whether it is heard.
 * <p>Lives here: alarm limits by rule, measured values (never the true ones), alarm conditions with condition delay and
 * generation delay apart, latching, audio paused, the chance of being heard.
 * <p>Does not: physics (what is true comes from breath, gas and supply), faults and harm ({@code leeway.core.rehearsal}),
 * reading of sheets.
 * <p>Units: cmH2O at the airway, mmHg for CO2, mL and L/min BTPS as measured, fractions 0 to 1, s.
 * <p>Leans on {@code leeway.core.gas}, {@code leeway.core.kit}, {@code leeway.core.transport} and {@code leeway.core.run}. Sources: docs/physics/alarms.md.
 */
package leeway.core.alarm;
