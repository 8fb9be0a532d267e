package leeway.core.settings;

import leeway.core.kit.Settings;

/** The breath and gas-exchange model of one patient on one device, as the solver sees it: settings in, steady state out. */
@FunctionalInterface
public interface Model {
    Outlook at(Settings settings);
}
