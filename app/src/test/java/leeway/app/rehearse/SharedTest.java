package leeway.app.rehearse;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import leeway.app.command.SheetLibrary;
import leeway.core.journey.JourneyRun;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Settings;
import leeway.core.rehearsal.Fault;
import leeway.core.rehearsal.Journeys;
import leeway.core.rehearsal.Nominal;
import leeway.core.rehearsal.Rehearsal;
import leeway.core.rehearsal.Rehearse;
import leeway.core.rehearsal.Stage.Voyage;
import leeway.core.start.Start;
import leeway.core.transport.Transport;
import leeway.files.sheet.Catalogue;
import leeway.files.transport.TransportReader;
import org.junit.jupiter.api.Test;

class SharedTest {
    @Test void howManyShareTheWorkDoesNotShowInTheAnswer() {
        Catalogue catalogue = Catalogue.builtIn();
        SheetLibrary library = new SheetLibrary(catalogue);
        Transport t = TransportReader.read(Path.of("..", "examples", "infant-by-road.yaml"), catalogue).good().orElseThrow();
        Ventilated v = Ventilated.of(t);
        Settings settings = Start.of(t, v, library::strategy).settings();
        Voyage voyage = Journeys.of(t, settings, library.noises(), draw -> JourneyRun.of(t, v, settings, draw));
        List<Fault> faults = library.faults();
        Rehearse shared = Rehearse.of(voyage, Nominal.of(voyage), faults);
        List<Rehearsal> alone = Rehearse.all(voyage, faults);
        assertThat(Shared.shares(shared, 3, task -> new Thread(task).start()).get()).isEqualTo(alone);
        assertThat(Shared.shares(shared, 2, nobody -> { }).get()).isEqualTo(alone);
        assertThat(shared.central()).isEqualTo(alone);
    }
}
