package leeway.app.report;

import java.io.OutputStream;
import java.util.List;
import leeway.core.alarm.AlarmLimit;
import leeway.core.kit.Setting;
import leeway.core.kit.Settings;
import leeway.core.plan.Expected;
import leeway.core.plan.Plan;
import leeway.core.settings.Suggested;
import leeway.core.supply.SupplyResult;
import leeway.core.supply.SupplyResult.Needed;
import leeway.core.supply.SupplyResult.Oxygen;
import leeway.core.supply.SupplyResult.Power;
import leeway.core.supply.SupplyResult.Series;
import leeway.core.supply.SupplyResult.Take;

/** A plan as JSON: keys end in their unit, what is absent is left out. */
public final class PlanJson {
    private PlanJson() { }

    public static void write(Plan plan, String version, OutputStream to) {
        try (Json json = new Json(to)) {
            json.text("transport", plan.title());
            json.text("version", version);
            json.count("seed", plan.seed());
            json.text("sourceHash", plan.sourceHash());
            json.object("verdict", () -> {
                json.flag("holds", plan.verdict().holds());
                json.text("word", plan.verdict().word());
                json.texts("reasons", plan.verdict().reasons());
                json.texts("remarks", plan.verdict().remarks());
            });
            json.texts("assumed", plan.assumed());
            json.object("patient", () -> {
                json.number("predictedBodyWeightKg", plan.patient().predictedBodyWeightKg());
                json.text("summary", plan.patient().summary());
                json.text("kit", plan.patient().kit());
            });
            settings(json, plan.suggested());
            plan.ownBreathing().ifPresent(o -> json.object("ownBreathing", () -> {
                json.number("byPatientPerMin", o.byPatientPerMin());
                json.number("byNobodyPerMin", o.byNobodyPerMin());
                json.number("missedPerMin", o.missedPerMin());
                json.number("outOfStepPerMin", o.outOfStepPerMin());
                json.number("p01CmH2O", o.p01CmH2O());
                json.number("workOfBreathingJPerL", o.workJPerL());
                json.number("workOfBreathingJPerMin", o.workJPerMin());
                json.number("pressureTimeProductCmH2OSPerMin", o.pressureTimePerMin());
                json.number("patientShare", o.patientShare());
            }));
            plan.expected().ifPresent(e -> json.object("expected", () -> {
                expected(json, e);
                plan.bands().ifPresent(b -> {
                    json.object("p05", () -> expected(json, b.p05()));
                    json.object("p95", () -> expected(json, b.p95()));
                });
                json.objects("byLeg", plan.byLeg(), leg -> {
                    json.text("leg", leg.leg());
                    expected(json, leg.expected());
                });
            }));
            if (!plan.alarmLimits().isEmpty()) json.objects("alarmLimits", plan.alarmLimits(), limit -> limit(json, limit));
            oxygen(json, plan.supply().oxygen());
            plan.supply().power().ifPresent(p -> power(json, p));
            plan.supply().home().ifPresent(h -> home(json, h));
            plan.monitorEndsMin().ifPresent(m -> json.number("monitorEndsMin", m));
            plan.suppliesEndMin().ifPresent(m -> json.number("suppliesEndMin", m));
            RehearsalJson.write(json, plan.rehearsals());
            json.objects("legs", plan.legs(), leg -> {
                json.text("leg", leg.leg());
                json.number("startMin", leg.startMin());
                json.number("endMin", leg.endMin());
                json.number("worstMin", leg.worstMin());
            });
            json.texts("turnaround", plan.turnaround());
            json.texts("cautions", plan.cautions());
        }
    }

    /** Keys of the settings of a plan, and of its wishes. */
    static String key(Setting setting) {
        return switch (setting) {
            case TIDAL_VOLUME -> "tidalVolumeMl";
            case RATE -> "ratePerMin";
            case INSPIRATORY_TIME -> "inspiratoryTimeS";
            case PAUSE -> "pauseS";
            case INSPIRATORY_PRESSURE -> "inspiratoryPressureAbovePeepCmH2O";
            case SUPPORT_PRESSURE -> "supportPressureAbovePeepCmH2O";
            case PEEP -> "peepCmH2O";
            case FIO2 -> "fio2";
            case RISE_TIME -> "riseTimeS";
            case FLOW_TRIGGER -> "flowTriggerLPerMin";
            case PRESSURE_TRIGGER -> "pressureTriggerCmH2O";
            case CYCLE_OFF -> "cycleOff";
            case PRESSURE_LIMIT -> "pressureLimitCmH2O";
            case BIAS_FLOW -> "biasFlowLPerMin";
            case CYCLE_AFTER -> "cycleOffAfterS";
            case SIGH_EVERY -> "sighEveryS";
            case SIGH_PRESSURE -> "sighPressureCmH2O";
        };
    }

    private static void settings(Json json, Suggested s) {
        json.object("settings", () -> {
            values(json, s.settings());
            json.text("strategy", s.strategy());
            json.objects("because", s.because(), b -> {
                json.text("setting", b.setting());
                json.text("origin", b.origin().word());
                json.text("why", b.why().equals(b.origin().word()) ? "in the file" : b.why());
            });
            if (any(s.asked())) json.object("asked", () -> values(json, s.asked()));
        });
        if (any(s.asked())) json.object("asked", () -> values(json, s.asked()));
    }

    private static boolean any(Settings s) { return s.mode().isPresent() || !s.values().isEmpty(); }

    private static void values(Json json, Settings s) {
        s.mode().ifPresent(m -> json.text("mode", m.code()));
        s.mode().ifPresent(m -> json.text("modeInWords", m.plain()));
        for (Setting setting : Setting.values()) json.number(key(setting), s.get(setting));
    }

    static void expected(Json json, Expected e) {
        json.number("tidalVolumeMl", e.tidalVolumeMl());
        json.number("peakCmH2O", e.peakCmH2O());
        json.number("plateauCmH2O", e.plateauCmH2O());
        json.number("drivingCmH2O", e.drivingCmH2O());
        json.number("autoPeepCmH2O", e.autoPeepCmH2O());
        json.number("meanCmH2O", e.meanCmH2O());
        json.number("mechanicalPowerJPerMin", e.mechanicalPowerJPerMin());
        json.number("minuteVolumeLPerMin", e.minuteVolumeLPerMin());
        json.number("paco2MmHg", e.paco2MmHg());
        json.number("etco2MmHg", e.etco2MmHg());
        json.number("pao2MmHg", e.pao2MmHg());
        json.number("spo2", e.spo2());
        json.number("ph", e.ph());
    }

    private static void limit(Json json, AlarmLimit limit) {
        json.text("condition", limit.condition().words());
        json.text("from", limit.from().words());
        json.number("low", limit.low());
        json.number("high", limit.high());
        if (!limit.unit().isEmpty()) json.text("unit", limit.unit());
        json.number("conditionDelayS", limit.conditionDelayS());
        if (limit.conditionBreaths() > 0) json.count("conditionBreaths", limit.conditionBreaths());
        json.number("generationDelayS", limit.generationDelayS());
        json.text("priority", limit.priority().name().toLowerCase(java.util.Locale.ROOT));
        json.text("rule", limit.rule());
    }

    private static void oxygen(Json json, Oxygen o) {
        json.object("oxygen", () -> {
            json.objects("byLeg", o.byLeg(), leg -> {
                json.text("leg", leg.leg());
                json.number("drawLPerMin", leg.drawLPerMin());
                json.number("neededL", leg.neededL());
                json.texts("from", leg.from());
                json.number("fio2", leg.fio2());
                json.number("at100LPerMin", leg.at100LPerMin());
                json.texts("working", leg.working());
            });
            json.objects("stores", o.stores(), s -> {
                json.text("name", s.name());
                json.count("count", s.count());
                json.number("freeGasL", s.freeGasL());
                json.number("usableL", s.usableL());
                json.number("z", s.z());
                json.number("emptyChance", s.emptyChance());
            });
            needed(json, "neededL", o.neededL());
            json.number("usableL", o.usableL());
            json.number("emptyChance", o.emptyChance());
            json.number("emptyChanceError", o.emptyChanceError());
            o.marginMin().ifPresent(m -> json.object("marginMin", () -> {
                minutes(json, "p50", m.p50());
                minutes(json, "p05", m.p05());
            }));
            json.number("leftAtEndMin", o.leftAtEndMin());
            json.objects("changeovers", o.changeovers(), c -> {
                json.text("store", c.store());
                json.number("atGaugeBar", c.atGaugeBar());
                json.number("aboutMin", c.aboutMin());
                json.count("cylinder", c.cylinder());
                json.text("to", c.to());
                json.text("why", c.why());
                json.flag("handBag", c.handBag());
            });
            json.objects("handovers", o.handovers(), h -> {
                json.text("leg", h.leg());
                json.number("atMin", h.atMin());
                json.text("store", h.store());
                json.count("cylinder", h.cylinder());
                json.number("gaugeBar", h.gaugeBar());
                json.number("gaugeLowBar", h.gaugeLowBar());
            });
            json.number("withoutLargestMin", o.withoutLargestMin());
            json.number("at100Min", o.at100Min());
            json.number("handBagMin", o.handBagMin());
            json.number("turnBackByMin", o.turnBackByMin());
            json.number("reserveL", o.reserveL());
            o.take().ifPresent(t -> json.object("take", () -> take(json, t)));
            json.objects("nextBest", o.nextBest(), t -> take(json, t));
            json.objects("savings", o.savings(), s -> {
                json.text("what", s.what());
                json.number("savesL", s.savesL());
                json.number("emptyChance", s.emptyChance());
            });
            o.analytic().ifPresent(a -> needed(json, "analyticL", a));
            if (o.beforeL() > 0) json.number("beforeDepartureL", o.beforeL());
            o.high().ifPresent(h -> json.object("atFio2Error", () -> {
                json.number("fio2Error", h.fio2Error());
                json.numbers("drawLPerMin", h.drawLPerMin().stream().mapToDouble(Double::doubleValue).toArray());
                needed(json, "neededL", h.neededL());
                json.number("emptyChance", h.emptyChance());
            }));
            json.objects("wall", o.wall(), t -> {
                json.text("cylinder", t.of());
                json.number("residualBar", t.residualBar());
                json.numbers("drawLPerMin", t.drawLPerMin().stream().mapToDouble(Double::doubleValue).toArray());
                json.objects("rows", range(t.gaugeBar().size()), i -> {
                    json.number("gaugeBar", t.gaugeBar().get(i));
                    json.numbers("lastsMin", t.minutes().get(i).stream().mapToDouble(Integer::doubleValue).toArray());
                });
            });
            json.objects("series", o.series(), s -> series(json, s));
        });
    }

    private static List<Integer> range(int n) { return java.util.stream.IntStream.range(0, n).boxed().toList(); }

    private static void home(Json json, SupplyResult.Home h) {
        json.object("home", () -> {
            json.number("atMin", h.atMin());
            json.objects("stores", h.stores(), s -> {
                json.text("name", s.name());
                json.number("leftL", s.leftL());
                json.number("gaugeBar", s.gaugeBar());
            });
            json.objects("packs", h.packs(), p -> {
                json.text("name", p.name());
                json.number("leftWh", p.leftWh());
                json.number("charge", p.charge());
            });
            json.number("flatMin", h.flatMin());
        });
    }

    /** Quantiles of a demand in litres, rounded as litres are. */
    private static void needed(Json json, String key, Needed n) {
        json.object(key, () -> {
            json.number("p50", Digits.round("L", n.p50()));
            json.number("p95", Digits.round("L", n.p95()));
            json.number("p99", Digits.round("L", n.p99()));
        });
    }

    private static void minutes(Json json, String key, double min) { json.number(key, Digits.round("Min", min)); }

    private static void take(Json json, Take t) {
        json.objects("items", t.items(), i -> {
            json.text("name", i.name());
            json.count("count", i.count());
        });
        json.number("massKg", t.massKg());
        json.number("emptyChance", t.emptyChance());
    }

    private static void power(Json json, Power p) {
        json.object("power", () -> {
            json.number("neededWh", p.neededWh());
            json.number("usableWh", p.usableWh());
            json.number("emptyChance", p.emptyChance());
            json.number("emptyChanceError", p.emptyChanceError());
            json.number("marginMin", p.marginMin());
            json.number("marginP05Min", p.marginP05Min());
            json.number("withoutExternalMin", p.withoutExternalMin());
            json.objects("byLeg", p.byLeg(), leg -> {
                json.text("leg", leg.leg());
                json.number("loadW", leg.loadW());
                json.number("neededWh", leg.neededWh());
                json.text("from", leg.from());
            });
            json.objects("stores", p.stores(), s -> {
                json.text("name", s.name());
                json.number("capacityWh", s.capacityWh());
                json.number("usableWh", s.usableWh());
            });
            p.take().ifPresent(t -> json.object("take", () -> take(json, t)));
            json.objects("series", p.series(), s -> series(json, s));
        });
    }

    private static void series(Json json, Series s) {
        json.text("name", s.name());
        json.text("unit", s.unit());
        json.numbers("atMin", column(s.points(), 0));
        json.numbers("p05" + s.unit(), column(s.points(), 1));
        json.numbers("p50" + s.unit(), column(s.points(), 2));
        json.numbers("p95" + s.unit(), column(s.points(), 3));
    }

    private static double[] column(List<SupplyResult.Point> points, int which) {
        return points.stream().mapToDouble(p -> which == 0 ? p.atMin() : which == 1 ? p.p05() : which == 2 ? p.p50() : p.p95()).toArray();
    }
}
