package leeway.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leeway.core.journey.Ventilated;
import leeway.core.map.MapMaker;
import leeway.core.map.OperatingMap;
import leeway.core.map.Sensitivity.Result;
import leeway.core.map.Sensitivity.Swing;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.Kinds;
import leeway.files.transport.TransportReader;
import org.junit.jupiter.api.Test;

class MapPictureTest {
    /**
     * A page holds the map in several widths and hides all but one. All once shared one pattern, that of the hidden wide
     * picture, which no browser draws: on a telephone the land had no hatching.
     */
    @Test void eachWidthHatchesWithItsOwnPattern() {
        Catalogue catalogue = Catalogue.builtIn();
        Transport t = TransportReader.read("t.yaml", "transport: t\npatient: {sex: female, height: 170 cm}\nventilator: example turbine\noxygen:\n  - {name: one, cylinder: 2 L, pressure: 180 bar}\nlegs:\n  - {leg: road, takes: 30 min, oxygen: one}\n", catalogue).good().orElseThrow();
        Start start = Start.of(t, Ventilated.of(t), n -> catalogue.read(Kinds.STRATEGY, n).good().orElseThrow());
        OperatingMap map = MapMaker.of(start, t, 12);
        Set<String> names = new HashSet<>();
        for (String width : List.of("", "wide", "narrow", "paper")) {
            String svg = MapPicture.of(map, width, 400);
            Matcher defined = Pattern.compile("<pattern id=\"([^\"]+)\"").matcher(svg);
            assertThat(defined.find()).isTrue();
            assertThat(names.add(defined.group(1))).as(width).isTrue();
            assertThat(svg).contains("fill=\"url(#" + defined.group(1) + ")\"");
        }
        assertThat(MapPicture.rules()).doesNotContain("url(#");
    }

    @Test void aTornadoPrintsEveryTickAsWhatItIsAndATrueMinus() {
        Result r = new Result("plateau pressure", "cmH2O", 19.52, List.of(new Swing("base excess", "-6.22 mmol/L", "1.1 mmol/L", 18.6, 20.9)));
        String svg = TornadoPicture.of(r, "", 340);
        assertThat(svg).contains(">19.5 at the medians".replace(">", "cmH2O: "), ">18.5<", ">19.0<", ">19.5<", ">20.5<", "−6.22 mmol/L to 1.1").doesNotContain("-6.22");
    }
}
