package leeway.core.calc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Every calc answers its example, names what it was given wrong, and never throws. */
class CalcsTest {

    static List<Calc> all() {
        return Calcs.all();
    }

    @ParameterizedTest
    @MethodSource("all")
    void theExampleWorksAndIsShown(Calc calc) {
        if (calc.keys().stream().anyMatch(k -> k.sheet().isPresent())) return;   // needs a catalogue; tested where that is
        CalcResult result = done(calc.name(), arguments(calc.example()));
        assertThat(result.calc()).isEqualTo(calc.name());
        assertThat(result.working()).isNotEmpty().allSatisfy(step -> assertThat(step).doesNotContain("NaN").doesNotContain("Infinity").matches("(?s).*\\.|Minutes, .*:|.* \\| .*"));   // a sentence, or a line of a table
        assertThat(result.source()).isNotBlank();
        assertThat(result.keys().values().iterator().next()).isEqualTo(result.value());
        assertThat(calc.plain()).isNotBlank();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "weight|--sex female --height '170 cm'|predictedBodyWeightKg|61.516",
        "weight|--age '6 months'|predictedBodyWeightKg|7",
        "blend|--flow '10 L/min' --fio2 '60 %'|oxygenLPerMin|4.93671",
        "alveolar|--fio2 '21 %' --paco2 '40 mmHg'|palvO2MmHg|101.83",
        "alveolar|--fio2 '21 %' --paco2 '5.33 kPa' --altitude '8000 ft'|palvO2MmHg|60.77",
        "saturation|--po2 '60 mmHg'|saturation|0.90582",
        "po2|--saturation '90 %'|po2MmHg|58.6615",
        "oxygen-content|--po2 '100 mmHg' --saturation '97.5 %'|mlPerDl|19.9075",
        "co2-content|--pco2 '40 mmHg' --ph 7.40 --haemoglobin '15 g/dL' --saturation '97.5 %'|mlPerDl|46.68",
        "acid-base|--ph 7.40 --pco2 '40 mmHg' --haemoglobin '150 g/L'|baseExcessMmolL|0.00188",
        "rate-for-co2|--paco2 '60 mmHg' --rate '12 /min' --tidal-volume '500 mL' --dead-space '150 mL' --target '40 mmHg'|ratePerMin|18",
        "rate-for-co2|--paco2 '60 mmHg' --rate '12 /min' --target '40 mmHg'|ratePerMin|18",
        "dead-space|--paco2 '40 mmHg' --mixed-expired-co2 '28 mmHg'|fraction|0.3",
        "dead-space|--age '6 years'|mlPerKg|2.19029",
        "metabolism|--weight '10 kg' --age '1 year'|vco2MlPerMin|54.4",
        "lung-volume|--height '100 cm' --age '4 years'|frcMl|365.6",
        "alveolar|--fio2 '20.93 %' --pressure '760 mmHg'|palvO2MmHg|101.32",
        "metabolism|--weight '25 kg'|vo2MlPerMin|144.8",
        "metabolism|--weight '30 kg'|vo2MlPerMin|147.805",
        "metabolism|--weight '50 kg'|vo2MlPerMin|188.03",
        "barometer|--altitude '8000 ft'|pressureHPa|752.62",
        "volume|--value '500 mL' --from ATPD --to BTPS|volumeMl|563.8"})
    void answersByTheNamesOfTheContract(String calc, String typed, String key, double value) {
        assertThat(done(calc, arguments(typed)).keys().get(key)).isCloseTo(value, within(1e-3 * Math.abs(value) + 1e-3));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "weight|--sex femal --height '170 cm'|Did you mean \"female\"?",
        "weight|--heigth '170 cm' --sex male|Did you mean \"height\"?",
        "weight|--sex male --height 170|has no unit",
        "weight|--sex male --height '17 m'|lies between",
        "weight|--sex male --height '90 cm'|below the formula's range",
        "weight|--age '14 years'|no formula by age",
        "weight|--sex male|needs a height",
        "alveolar|--fio2 '4 %'|It lies between 5 % and 100 %.",
        "weight|--sex male --height '1,70 m'|Did you mean \"1.70 m\"?",
        "alveolar|--fio2 NaN|which is no number",
        "alveolar|--fio2 '50 %' --paco2 '40 cm'|is no unit of it",
        "alveolar|--fio2 '50 %' --paco2 '40 mmhg'|Did you mean \"mmHg\"?",
        "alveolar|--fio2 '21 %' --paco2 '200 mmHg'|no oxygen would be left",
        "saturation|--po2 '60 mmHg' --temperature '-5 K'|It lies between",
        "saturation|--ph 7.4|needs \"po2\"",
        "po2|--saturation '100 %'|It lies between",
        "dead-space|--paco2 '40 mmHg' --mixed-expired-co2 '50 mmHg'|cannot hold more",
        "rate-for-co2|--paco2 '60 mmHg' --rate '12 /min' --tidal-volume '100 mL' --dead-space '150 mL' --target '40 mmHg'|takes the whole breath",
        "rate-for-co2|--paco2 '60 mmHg' --rate '12 /min' --tidal-volume '100 mL' --target '40 mmHg'|are needed together",
        "cylinder|--water 'E' --pressure '100 bar'|the letters differ between countries",
        "cylinder|--water 'UK Q' --pressure '100 bar'|no number and no size",
        "barometer|--altitude '60000 ft'|lies between",
        "blend|--flow '10 L/min' --fio2 '95 %' --source '93 %'|cannot come from a source",
        "nonsense|--x 1|there is no calc \"nonsense\"",
        "barometr|--altitude '1 m'|Did you mean \"barometer\"?"})
    void saysWhatIsWrong(String calc, String typed, String said) {
        Outcome outcome = Calcs.run(calc, arguments(typed), Sheets.NONE);
        assertThat(outcome).isInstanceOf(Outcome.Wrong.class);
        assertThat(((Outcome.Wrong) outcome).complaints().stream().map(CalcComplaint::line).toList()).anySatisfy(line -> assertThat(line.toLowerCase()).contains(said.toLowerCase()));
    }

    @Test
    void aSizeWithItsCountryStandsForItsWaterCapacity() {
        CalcResult size = done("cylinder", arguments("--water 'us e' --pressure '2000 psi'"));
        assertThat(size.keys()).isEqualTo(done("cylinder", arguments("--water '4.5 L' --pressure '2000 psi'")).keys());
        assertThat(size.working()).first().asString().contains("US E: 4.5 L of water, from memory");
        assertThat(done("duration", arguments("--water 'UK E' --pressure '100 bar' --flow '10 L/min'")).value())
                .isEqualTo(done("duration", arguments("--water '4.68 L' --pressure '100 bar' --flow '10 L/min'")).value());
    }

    @Test
    void allThatIsWrongIsSaidAtOnce() {
        Outcome outcome = Calcs.run("acid-base", Map.of("ph", "74", "pco2", "52", "hb", "12 g/dL"), Sheets.NONE);
        assertThat(((Outcome.Wrong) outcome).complaints()).hasSize(3);
    }

    @Test
    void moreHaemoglobinOrLessShuntRaisesTheTension() {
        double base = done("shunt-po2", arguments("--fio2 '60 %' --shunt '20 %'")).value();
        assertThat(done("shunt-po2", arguments("--fio2 '60 %' --shunt '30 %'")).value()).isLessThan(base);
        assertThat(done("shunt-po2", arguments("--fio2 '60 %' --shunt '20 %' --altitude '8000 ft'")).value()).isLessThan(base);
        assertThat(done("shunt-po2", arguments("--fio2 '60 %' --shunt '0 %'")).value()).isCloseTo(done("alveolar", arguments("--fio2 '60 %'")).value(), within(0.01));
    }

    static CalcResult done(String calc, Map<String, String> given) {
        Outcome outcome = Calcs.run(calc, given, Sheets.NONE);
        assertThat(outcome).as("%s %s", calc, given).isInstanceOf(Outcome.Done.class);
        return ((Outcome.Done) outcome).result();
    }

    /** Splits what somebody types: --key value, with quotes. */
    static Map<String, String> arguments(String typed) {
        List<String> parts = new ArrayList<>();
        StringBuilder part = new StringBuilder();
        char quote = 0;
        for (char c : (typed + " ").toCharArray()) {
            if (quote != 0) {
                if (c == quote) quote = 0;
                else part.append(c);
            } else if (c == '"' || c == '\'') {
                quote = c;
            } else if (c == ' ') {
                if (!part.isEmpty()) parts.add(part.toString());
                part.setLength(0);
            } else {
                part.append(c);
            }
        }
        Map<String, String> given = new LinkedHashMap<>();
        for (int i = 0; i + 1 < parts.size(); i += 2) given.put(parts.get(i).substring(2), parts.get(i + 1));
        return given;
    }
}
