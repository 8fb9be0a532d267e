/**
 * The patient: how heavy, how much oxygen they use, how large the lung, how the blood goes round, and what becomes of the gases.
 * <p>Lives here: weight, metabolism, lung volume, dead space, circulation and haemoglobin by age and size; the patient model
 * with its named assumptions; steady gases; gas exchange in time; the fit to a blood gas.
 * <p>Does not: the breath's mechanics ({@code leeway.core.lung}), settings, devices' draws.
 * <p>Units: mL at body conditions for lung gas, mL (0 °C, 760 mmHg, dry) for amounts, mL/min for metabolism, L/min for
 * cardiac output, mmHg for tensions, cmH2O at the airway, haemoglobin g/dL inside and g/L at the border.
 * <p>Leans on {@code leeway.core.gas}, {@code lung}, {@code kit}, {@code transport} and {@code run}. Formulas with sources: docs/physics/body.md.
 */
package leeway.core.body;
