/**
 * The one place where sheets and transport become what the rooms of body, breath and supply start from.
 * <p>Lives here: the patient on a device ({@link leeway.core.journey.Ventilated}), the steady state
 * ({@link leeway.core.journey.Steady}), and the run of a whole journey with its legs, climbs and events.
 * <p>Does not: physics of its own, choice of settings ({@code leeway.core.settings}), faults ({@code leeway.core.rehearsal}).
 * <p>Units as in the records it maps: cmH2O, mL BTPS, L/min, mmHg for gases, hPa or mmHg for the barometer as the name says.
 * <p>Leans on kit, transport, body, breath, lung, supply, gas and run.
 */
package leeway.core.journey;
