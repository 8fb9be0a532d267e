package leeway.files.transport;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import leeway.core.body.PatientModel;
import leeway.core.journey.Ventilated;
import leeway.core.kit.Mode;
import leeway.core.kit.Setting;
import leeway.core.transport.PatientEntry;
import leeway.core.transport.Store;
import leeway.core.transport.Transport;
import leeway.core.transport.WhatIf;
import leeway.files.sheet.Catalogue;
import leeway.files.yaml.Complaint;
import leeway.files.yaml.Read;
import org.junit.jupiter.api.Test;

class TransportReaderTest {
    static final String LEAST = "patient: {sex: female, height: 170 cm}\nventilator: example turbine\n"
            + "oxygen: [{name: a, cylinder: 2 L, pressure: 185 bar}]\nlegs: [{leg: one, takes: 12 min, oxygen: a}]\n";

    private static Transport good(String text) {
        Read<Transport> read = TransportReader.read("t.yaml", text, Catalogue.builtIn());
        assertThat(read.problems()).isEmpty();
        return read.good().orElseThrow();
    }

    static List<String> lines(String text) { return TransportReader.read("t.yaml", text, Catalogue.builtIn()).problems().stream().map(Complaint::line).toList(); }

    @Test void aMinimalFileIsReadAndEveryDefaultIsNamed() {
        Transport t = good(LEAST);
        assertThat(t.title()).isEqualTo("t");
        assertThat(t.illness().name()).isEqualTo("healthy lungs");
        assertThat(t.airway().name()).isEqualTo("tracheal tube 7.5 mm");
        assertThat(t.circuit().name()).isEqualTo("single limb adult");
        assertThat(t.filter().name()).isEqualTo("adult HME filter");
        assertThat(t.monitor().name()).isEqualTo("example transport monitor");
        assertThat(t.strategy()).isEqualTo("by illness");
        assertThat(t.policy().name()).isEqualTo("default");
        assertThat(t.legs().get(0).atWorstMin()).isCloseTo(18, within(1e-12));
        assertThat(t.legs().get(0).power()).contains("internal");
        assertThat(t.power()).singleElement().satisfies(p -> {
            assertThat(p.charge()).isEqualTo(1);
            assertThat(p.ageYears()).isEqualTo(1);
            assertThat(p.battery().orElseThrow().name()).isEqualTo("example pack");
        });
        Store a = t.store("a");
        assertThat(a.gauge()).isEqualTo(new Store.Gauge(2.5, 315, 5));
        assertThat(a.readAtCel()).isEqualTo(OptionalDouble.of(20));
        assertThat(a.residualBar()).isCloseTo(2.7, within(1e-12));
        assertThat(a.inlet().highPressure()).isTrue();
        assertThat(t.assumed()).containsExactly(
                "age: not given; an adult is taken", "illness: healthy lungs", "airway: tracheal tube 7.5 mm, for an adult", "circuit: single limb adult, for an adult",
                "filter: adult HME filter, for an adult", "monitor: example transport monitor", "strategy: by illness",
                "gauge read at 20 Cel, the warmer of 20 Cel and the first leg (a)", "residual pressure 2.7 bar, what the ventilator's inlet needs (a)",
                "gauge of class 2.5 with a span of 315 bar, read to 5 bar (a)", "power: the ventilator's own pack, full, one year old, 100 cycles",
                "at worst: 1.5 × takes (one)", "power: internal (one)", "altitude: 0 m (one)", "temperature around the kit: 20 Cel (one)", "crew: 2 (one)", "noise: quiet (one)",
                "policy: default", "transport: no title");
        assertThat(t.unused()).isEmpty();
        assertThat(t.sourceHash()).matches("[0-9a-f]{64}");
    }

    @Test void aFullFileIsReadToTheLastKey() {
        Transport t = good("""
                transport: Night transfer, Holm clinic to Westhaven
                patient:
                  sex: female
                  height: 170 cm
                  height estimated: yes
                  weight: 74 kg
                  age: 58 years
                  illness: healthy lungs
                  airway: tracheal tube 7.5 mm
                  airway depth: 22 cm
                  cuff: saline
                  lungs: {compliance: 34 mL/cmH2O, resistance: 11 cmH2O.s/L, effort: none}
                  shunt: 18 %
                  dead space: 160 mL
                  temperature: 37.8 Cel
                  haemoglobin: 12 g/dL
                  position: head up
                  paralysed: yes
                  chest drain: yes
                  cardiac output: 5 L/min
                  blood gas: {ph: 7.31, paco2: 52 mmHg, pao2: 74 mmHg, fio2: 60 %, tidal volume: 360 mL, rate: 20 /min, peep: 8 cmH2O, after: 30 min}
                ventilator: example pneumatic
                circuit: single limb adult
                filter: none
                monitor: none
                strategy: by illness
                settings: {mode: SIMV-VC\\PS, fio2: 60 %, peep: 8 cmH2O, rate: 20 /min, i:e: "1:2", inspiratory pressure absolute: 23 cmH2O, pressure limit: 40 cmH2O}
                oxygen:
                  - {name: portable, cylinder: 2 L, pressure: 185 bar, read at: 68 degF, count: 2, residual: 10 bar, gauge: {class: 1.6, span: 300 bar, read to: 2 bar}, mass: 4 kg}
                  - {name: vehicle, cylinder: US E, pressure: 2000 psi, read at: 15 °C, inlet: high pressure}
                  - {name: wall, wall: yes}
                  - {name: tank, liquid: 20 L}
                power:
                  - {name: internal, battery: example pack, charge: 90 %, age: 3 years, cycles: 200}
                  - {name: vehicle, mains: yes}
                legs:
                  - {leg: ward, takes: 12 min, at worst: 12 min, oxygen: portable, power: internal, charging: no, waiting: yes, crew: 3}
                  - {leg: flight, takes: 0.9 h, at worst: 75 min, oxygen: [vehicle, portable], power: vehicle, cabin altitude: 6500 ft, altitude: 24000 ft, climb: 10 min,
                     temperature: 12 Cel, noise: propeller, diversion: {chance: 5 %, adds: 40 min}}
                events:
                  - {at: 10 min, set: {fio2: 100 %}, for: 90 s}
                  - {at: 57 min, change over: portable}
                what if:
                  - {at: 60 min, apnoea: airway closed, for: 3 min}
                  - {at: 61 min, apnoea: open to oxygen}
                policy: {like: default, reserve: 30 min, harm: {saturation: 88 %}}
                kit: island service
                device: LW-0042
                delays: {correlation: 0.3}
                alarms: {airway pressure high: {high: 45 cmH2O, delay: 2 s}, saturation low: {off: yes}}
                """);
        PatientEntry p = t.patient();
        assertThat(p.haemoglobinGPerL()).hasValue(120);
        assertThat(p.lungs().shunt()).hasValue(0.18);
        assertThat(p.lungs().deadSpaceMl()).hasValue(160);
        assertThat(p.cuff()).contains(PatientEntry.Cuff.SALINE);
        assertThat(p.bloodGas().orElseThrow().paco2MmHg()).isEqualTo(52);
        assertThat(t.prescribed().mode()).contains(Mode.SIMV_VC_PS);
        assertThat(t.prescribed().get(Setting.INSPIRATORY_TIME)).hasValue(1.0);
        assertThat(t.prescribed().get(Setting.INSPIRATORY_PRESSURE)).hasValue(15);
        assertThat(t.store("portable").readAtCel().orElseThrow()).isCloseTo(20, within(1e-9));
        assertThat(t.store("vehicle").pressureBar().orElseThrow()).isCloseTo(137.895, within(0.0005));
        assertThat(t.store("vehicle").size()).contains("US E");
        assertThat(t.legs().get(1).altitudeM()).isCloseTo(1981.2, within(1e-9));
        assertThat(t.legs().get(1).aircraftAltitudeM().orElseThrow()).isCloseTo(7315.2, within(1e-9));
        assertThat(t.legs().get(1).takesMin()).isCloseTo(54, within(1e-9));
        assertThat(t.whatIf().get(1).apnoea()).contains(WhatIf.Apnoea.OXYGEN);
        assertThat(t.policy().reserveMin()).isEqualTo(30);
        assertThat(t.policy().harm().saO2()).isEqualTo(0.88);
        assertThat(t.policy().harm().paco2MmHg()).isEqualTo(75);
        assertThat(t.delayCorrelation()).isEqualTo(0.3);
        assertThat(t.unused()).containsExactly("\"device\" is read and checked, and not used yet");
        assertThat(t.assumed()).containsExactly("residual pressure 2.7 bar, what the ventilator's inlet needs (vehicle)",
                "gauge of class 2.5 with a span of 315 bar, read to 5 bar (vehicle)", "altitude: 0 m (ward)", "temperature around the kit: 20 Cel (ward)", "noise: quiet (ward)", "crew: 2 (flight)",
                "alarms: neither ventilator nor monitor warns of saturation low; what the file says of it has no effect");
    }

    @Test void anEventMayLeanOnTheSettingsBeforeIt() {
        String set = "settings: {rate: 20 /min, peep: 8 cmH2O}\nevents: [{at: 1 min, set: {i:e: \"1:1\", inspiratory pressure absolute: 20 cmH2O}}]\n";
        Transport t = good(LEAST + set);
        assertThat(t.events().get(0).set().get(Setting.INSPIRATORY_TIME)).hasValue(1.5);
        assertThat(t.events().get(0).set().get(Setting.INSPIRATORY_PRESSURE)).hasValue(12);
        assertThat(lines(LEAST + set.replace("rate: 20 /min, ", ""))).singleElement().asString().contains("\"i:e\" needs a \"rate\"");
    }

    @Test void childrenNeedNoHeight() {
        assertThat(good(LEAST.replace("sex: female, height: 170 cm", "age: 10 days")).airway().name()).isEqualTo("tracheal tube 3.0 mm");
        Transport six = good(LEAST.replace("sex: female, height: 170 cm", "age: 6 years"));
        assertThat(six.airway().name()).isEqualTo("tracheal tube 5.0 mm");
        assertThat(six.circuit().name()).isEqualTo("single limb child");
        assertThat(six.assumed()).contains("sex: not given; female is taken");
        assertThat(good(LEAST.replace("sex: female, height: 170 cm", "age: 15 years, weight: 50 kg")).assumed()).as("a youth may have age and weight alone").contains("sex: not given; female is taken");
        Transport baby = good(LEAST.replace("sex: female, height: 170 cm", "weight: 3600 g"));
        assertThat(baby.filter().name()).isEqualTo("infant HME filter");
        assertThat(baby.patient().weightKg()).hasValue(3.6);
    }

    private static PatientModel patient(String who) { return Ventilated.of(good(LEAST.replace("sex: female, height: 170 cm", who))).patient(); }

    /** A girl of 8 years who weighs 60 kg was suggested breaths of 360 mL, a boy of 15 with 110 kg breaths of 660 mL. */
    @Test void aHeavyChildWithoutAHeightGetsNoBreathsForItsFat() {
        PatientModel girl = patient("age: 8 years, weight: 60 kg");
        assertThat(girl.predictedKg()).isCloseTo(1.25 * 31, within(1e-9));
        assertThat(girl.assumed()).anySatisfy(a -> assertThat(a).isEqualTo("predicted weight held at 38.8 kg, the most that is usual for the age, for no height is given: breaths follow it, not the 60.0 kg weighed"));
        PatientModel boy = patient("sex: male, age: 15 years, weight: 110 kg");
        assertThat(boy.predictedKg()).isCloseTo(50 + 0.91 * (167 - 152.4), within(1e-9));
        assertThat(patient("age: 17 years, weight: 90 kg").heightCm()).as("a girl of 17 is as tall as a woman").isEqualTo(163);
        for (String usual : List.of("age: 8 years, weight: 35 kg", "age: 15 years, weight: 50 kg", "age: 6 months, weight: 9 kg", "weight: 35 kg")) {
            PatientModel p = patient(usual);
            assertThat(p.predictedKg()).as(usual).isEqualTo(p.weightKg());
        }
    }

    /** Twenty stores once ended in a fault of ours: the engine follows sixteen, and eight packs. */
    @Test void moreStoresThanTheEngineFollowsAreRefused() {
        String many = "", packs = "";
        for (int i = 0; i < 17; i++) many += (i == 0 ? "" : ", ") + "{name: s" + i + ", cylinder: 2 L, pressure: 185 bar}";
        for (int i = 0; i < 9; i++) packs += (i == 0 ? "" : ", ") + "{name: p" + i + ", battery: example pack}";
        assertThat(lines(LEAST.replace("{name: a, cylinder: 2 L, pressure: 185 bar}", many).replace("oxygen: a", "oxygen: s0"))).anySatisfy(l -> assertThat(l).contains("\"oxygen\" has 17 items; the most is 16"));
        assertThat(lines(LEAST + "power: [" + packs + "]\n")).anySatisfy(l -> assertThat(l).contains("\"power\" has 9 items; the most is 8"));
    }

    @Test void theHandBagNeedsNoPowerAndTakesAFlowmeter() {
        Transport t = good(LEAST.replace("example turbine", "hand bag"));
        assertThat(t.power()).isEmpty();
        assertThat(t.legs().get(0).power()).isEmpty();
        assertThat(t.store("a").inlet().flowmeterLPerMin()).hasValue(15);
        assertThat(t.assumed()).noneMatch(a -> a.startsWith("power"));
    }
}
