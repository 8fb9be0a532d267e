/**
 * The physics of gases, in air, in the cylinder and in the blood.
 * <p>Lives here: oxygen as a real gas, the barometer, volumes at their conditions, blending, alveolar gas, the oxygen
 * dissociation curve, oxygen and carbon dioxide content of blood, acid and base, and their joint inversion.
 * <p>Does not: patients ({@code leeway.core.body}), stores and draws ({@code leeway.core.supply}).
 * <p>Units: tensions and barometric pressure mmHg (hPa where the name says so), contents mL (0 °C, 760 mmHg, dry) per dL
 * of blood, haemoglobin g/dL in formulas, base excess mmol/L, temperature Cel, shares 0 to 1.
 * <p>Leans on nothing but the language. Formulas with sources: docs/physics/gas.md.
 */
package leeway.core.gas;
