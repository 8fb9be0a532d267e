package leeway.app.web.entry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import leeway.files.keys.Table;
import leeway.files.transport.TransportKeys;
import org.junit.jupiter.api.Test;

/** A number beside which the unit was changed: it stays, and what would be as much as before is offered. */
class StayedTest {
    private static final Table TABLE = TransportKeys.TRANSPORT;
    private static final String TEXT = """
            transport: Holm
            patient: {sex: male, height: 180 cm, temperature: 37 Cel}
            oxygen:
              - {name: portable, cylinder: 5 L, pressure: 150 bar}   # read at the gauge
            settings: {peep: 8 cmH2O}
            """;
    private static final Entry FORM = Entry.of(TABLE, TEXT, List.of(), kind -> List.of());

    private static Map<String, Stayed> changed(String... namesAndValues) {
        Map<String, String> posted = new HashMap<>();
        FORM.all().forEach(f -> {
            posted.put(Posted.VALUE + f.path(), f.value());
            posted.put(Posted.UNIT + f.path(), f.unit());
        });
        for (int i = 0; i < namesAndValues.length; i += 2) posted.put(namesAndValues[i], namesAndValues[i + 1]);
        return Stayed.of(FORM, posted::get);
    }

    @Test
    void aNumberThatStaysIsToldWithWhatWouldBeAsMuch() {
        // 1 psi = 6.894 757 kPa (NIST SP 811, appendix B.8), so 150 bar = 2175.6 psi
        assertThat(changed("u:oxygen/0/pressure", "psi")).containsOnly(Map.entry("oxygen/0/pressure", new Stayed("oxygen/0/pressure", "150", "bar", "psi", "2176")));
        assertThat(changed("u:patient/height", "m").get("patient/height").same()).isEqualTo("1.8");
        assertThat(changed("u:patient/temperature", "degF").get("patient/temperature").same()).isEqualTo("98.6");
    }

    @Test
    void nothingIsToldOfANumberThatWasTypedOrOfUnitsThatMeanTheSame() {
        assertThat(changed()).isEmpty();
        assertThat(changed("f:oxygen/0/pressure", "2000", "u:oxygen/0/pressure", "psi")).isEmpty();
        assertThat(changed("f:patient/height", "", "u:patient/height", "m")).isEmpty();
        assertThat(changed("u:settings/peep", "parsec")).isEmpty();
    }

    @Test
    void theOfferWritesTheNumberAndKeepsTheComment() {
        String now = TEXT.replace("150 bar", "150 psi");
        String act = changed("u:oxygen/0/pressure", "psi").get("oxygen/0/pressure").act();
        assertThat(Posted.act(TABLE, now, act)).isEqualTo(TEXT.replace("150 bar", "2176 psi"));
        assertThat(Posted.act(TABLE, now, "same:oxygen/7/pressure=1 bar")).isEqualTo(now);
        assertThat(Posted.act(TABLE, now, "same:")).isEqualTo(now);
    }
}
