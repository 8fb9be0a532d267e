package leeway.core.settings;

import java.util.List;
import leeway.core.kit.Settings;

/**
 * Starting settings that the device has, with a reason for each.
 *
 * @param settings    what to set; only what the mode needs and the device lets one set
 * @param because     one row a setting, the mode first
 * @param asked       wishes of the file that the device does not have
 * @param reasons     a sentence for each such wish: they speak against the plan
 * @param remarks     what else a reader should know
 * @param strategy    the name of the strategy used
 */
public record Suggested(Settings settings, List<Because> because, Settings asked, List<String> reasons, List<String> remarks, String strategy) {
    public Suggested {
        because = List.copyOf(because);
        reasons = List.copyOf(reasons);
        remarks = List.copyOf(remarks);
    }

    /** Why a setting stands where it stands; {@code setting} is {@code mode} or the key of the file. */
    public record Because(String setting, Origin origin, String why) { }

    /** Who wanted it so. */
    public enum Origin {
        PRESCRIBED, SUGGESTED;

        public String word() { return name().toLowerCase(java.util.Locale.ROOT); }
    }
}
