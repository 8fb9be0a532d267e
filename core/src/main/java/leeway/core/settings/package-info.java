/**
 * From a patient and a device to settings: strategies, their rules, the fit to what a device has, the search for targets.
 * <p>Lives here: {@link leeway.core.settings.Strategy} and its proof, {@link leeway.core.settings.Suggest}, which strategy
 * belongs to which illness, the solver that meets targets on a model it is given, what a device calls a setting.
 * <p>Does not: the model itself (breath and gas are handed in), reading of sheets ({@code leeway.files}), the operating
 * map ({@code leeway.core.map}), orders: every suggestion is a start that a clinician judges.
 * <p>Settings stand in the unit of {@link leeway.core.kit.Setting#unit()}. Leans on kit, transport, quantity and expression.
 */
package leeway.core.settings;
