package leeway.files.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import leeway.core.kit.Illness;
import leeway.files.yaml.Read;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The illnesses that come along read without complaint and describe somebody who could live. */
class IllnessSheetsTest {
    private static final Catalogue CATALOGUE = Catalogue.builtIn();

    @ParameterizedTest
    @ValueSource(strings = {"healthy lungs", "moderate pneumonia", "severe ARDS", "asthma attack", "COPD exacerbation", "head injury", "after cardiac arrest", "blood loss",
        "pulmonary oedema", "chest injury", "obesity", "bronchiolitis", "newborn respiratory distress", "test lung"})
    void reads(String name) {
        Read<Illness> read = CATALOGUE.read(new IllnessKind(), name);
        assertThat(read).as(read.toString()).isInstanceOf(Read.Good.class);
        Illness illness = ((Read.Good<Illness>) read).value();
        assertThat(illness.name()).isEqualTo(name);
        assertThat(illness.source()).isNotBlank();
        assertThat(illness.shunt().central() + illness.lowVentilationShare().central()).isLessThan(0.6);
        assertThat(List.of(illness.complianceTimes(), illness.cardiacOutputTimes(), illness.lungVolumeTimes())).allSatisfy(b -> assertThat(b.central()).isBetween(0.2, 2.0));
        assertThat(illness.testLung()).isEqualTo(name.equals("test lung"));
    }
}
