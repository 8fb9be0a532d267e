package leeway.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leeway.app.report.Figures;
import leeway.app.web.entry.Field;
import leeway.app.web.entry.Posted;
import leeway.core.calc.Calc;
import leeway.core.calc.CalcComplaint;
import leeway.core.calc.Calcs;
import leeway.core.calc.Key;
import leeway.core.calc.Outcome;
import leeway.core.calc.Sheets;
import leeway.core.quantity.Kind;
import leeway.core.quantity.Quantity;
import leeway.core.quantity.Unit;
import leeway.files.sheet.Catalogue;
import leeway.files.sheet.Kinds;
import leeway.files.sheet.SheetKind;
import leeway.files.yaml.Complaints;
import leeway.files.yaml.Place;

/** What one can look up: the sheets of the catalogue, single calculations with their working, the published checks. */
public final class LibraryPages {
    /** Digits of a result on a page; a program gets all that the calc gives. */
    private static final int DIGITS = 4;
    private static final List<String> UNITS = List.of("MmolL", "mmol/L", "MlPerMin", "mL/min", "MlPerDl", "mL/dL", "MlPerKg", "mL/kg", "LPerMin", "L/min", "JPerMin", "J/min", "CmH2O", "cmH2O", "MmHg", "mmHg",
            "HPa", "hPa", "Bar", "bar", "PerMin", "/min", "Kg", "kg", "Ml", "mL", "minutes", "min", "L", "L");
    private final Site site;
    private final Catalogue catalogue;
    private final List<ChecksTable> checks;

    /** A result with as many digits as a reader can use. */
    public static String figure(double value) {
        java.math.BigDecimal all = new java.math.BigDecimal(Double.toString(value));
        java.math.BigDecimal rounded = all.round(new java.math.MathContext(DIGITS, java.math.RoundingMode.HALF_EVEN));
        return Figures.plain((Math.abs(value) >= 1000 ? all.setScale(0, java.math.RoundingMode.HALF_EVEN) : rounded).doubleValue());
    }

    /** The unit in which the name of a result ends; empty where it has none. */
    public static String unit(String key) {
        String end = Character.toUpperCase(key.charAt(0)) + key.substring(1);
        for (int i = 0; i < UNITS.size(); i += 2) if (key.endsWith(UNITS.get(i)) || end.equals(UNITS.get(i))) return UNITS.get(i + 1);
        return "";
    }

    LibraryPages(Site site, Catalogue catalogue) {
        this.site = site;
        this.catalogue = catalogue;
        this.checks = ChecksTable.read(JourneyPage.resource("/leeway/docs/checks.md"));
    }

    void routes(RoutesConfig routes) {
        routes.get("/sheets", this::sheets);
        routes.get("/sheets/{kind}/{name}", this::sheet);
        routes.get("/figures", this::figures);
        routes.get("/figures/{calc}", this::figure);
        routes.get("/checks", this::checks);
    }

    /** The sheets of one kind. */
    public record KindView(String word, String plural, List<String> names) { }

    private void sheets(Context ctx) {
        Page page = page(ctx, "sheets", "sheets.title", "/sheets");
        List<KindView> kinds = Kinds.ALL.stream().map(k -> new KindView(k.word(), k.plural(), catalogue.names(k.word()))).toList();
        site.render(ctx, 200, "sheets.jte", Map.of("page", page, "kinds", kinds));
    }

    private void sheet(Context ctx) {
        String name = ctx.pathParam("name");
        SheetKind<?> kind = Kinds.find(ctx.pathParam("kind")).orElseThrow(() -> new Refused(404, "error.404", ""));
        if (!catalogue.has(kind.word(), name)) throw new Refused(404, "error.noSheet", name.length() > 60 ? name.substring(0, 60) : name);
        Complaints complaints = new Complaints();
        Optional<? extends Catalogue.Sheet<?>> sheet = catalogue.sheet(kind, name, Place.start("catalogue"), complaints);
        List<String> wrong = complaints.all().stream().map(c -> c.line()).toList();
        List<Catalogue.Row> rows = sheet.isPresent() ? Catalogue.rows(sheet.get()) : List.of();
        Page page = new Page(site.words(ctx), "sheets", name, page(ctx, "sheets", "", "").token(), state(ctx), sheetAt(kind.word(), name), site.assets());
        site.render(ctx, 200, "sheet.jte", Map.of("page", page, "kind", kind.word(), "name", name, "rows", rows, "wrong", wrong, "own", catalogue.isOwn(kind.word(), name), "source", mostly(rows)));
    }

    /** The source that most values of a sheet have; only the others name theirs. */
    private static String mostly(List<Catalogue.Row> rows) {
        Map<String, Integer> count = new LinkedHashMap<>();
        rows.forEach(r -> count.merge(r.source(), 1, Integer::sum));
        return count.entrySet().stream().max(Map.Entry.comparingByValue()).map(Map.Entry::getKey).orElse("");
    }

    /** The address of a sheet. */
    public static String sheetAt(String kind, String name) { return "/sheets/" + encoded(kind) + "/" + encoded(name); }

    private static String encoded(String text) { return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20"); }

    private void figures(Context ctx) {
        site.render(ctx, 200, "figures.jte", Map.of("page", page(ctx, "figures", "figures.title", "/figures"), "calcs", Calcs.all()));
    }

    /** What a calc answers. */
    public record AnswerRow(String name, String value) { }

    private void figure(Context ctx) {
        Calc calc = Calcs.find(ctx.pathParam("calc")).orElseThrow(() -> new Refused(404, "error.404", ""));
        Map<String, String> given = new LinkedHashMap<>();
        boolean asked = false;
        for (Key key : calc.keys()) {
            String value = ctx.queryParam(Posted.VALUE + key.name());
            if (value == null) continue;
            asked = true;
            String unit = ctx.queryParam(Posted.UNIT + key.name());
            String whole = Posted.joined(value.strip(), unit == null ? "" : unit.strip());
            if (!whole.isEmpty()) given.put(key.name(), whole);
        }
        Map<String, String> entered = asked ? given : example(calc);
        Outcome outcome = Calcs.run(calc.name(), entered, sheetsForCalcs());
        List<CalcComplaint> wrong = outcome instanceof Outcome.Wrong w ? w.complaints() : List.of();
        List<Field> fields = calc.keys().stream().map(k -> field(k, entered.getOrDefault(k.name(), ""), wrong)).toList();
        List<CalcComplaint> loose = wrong.stream().filter(c -> calc.keys().stream().noneMatch(k -> k.name().equals(c.key()))).toList();
        Page page = page(ctx, "figures", "", "/figures/" + calc.name() + (ctx.queryString() == null ? "" : "?" + withoutLanguage(ctx)));
        Map<String, Object> with = new LinkedHashMap<>();
        with.put("page", new Page(page.words(), page.here(), calc.name(), page.token(), page.state(), page.self(), site.assets()));
        with.put("calc", calc);
        with.put("fields", fields);
        with.put("loose", loose.stream().map(CalcComplaint::line).toList());
        with.put("result", outcome instanceof Outcome.Done d ? d.result() : null);
        site.render(ctx, 200, "figure.jte", with);
    }

    private static String withoutLanguage(Context ctx) { return ctx.queryString().replaceAll("(^|&)lang=[a-z]*", "").replaceAll("^&", ""); }

    /** The example of a calc as its page opens with it: {@code --sex female --height "170 cm"}. */
    static Map<String, String> example(Calc calc) {
        Map<String, String> out = new LinkedHashMap<>();
        java.util.regex.Matcher m = java.util.regex.Pattern.compile("--([a-z0-9-]+)[ =](\"([^\"]*)\"|\\S+)").matcher(calc.example());
        while (m.find()) out.put(m.group(1), m.group(3) != null ? m.group(3) : m.group(2));
        return out;
    }

    private Field field(Key key, String value, List<CalcComplaint> complaints) {
        List<String> wrong = complaints.stream().filter(c -> c.key().equals(key.name())).map(CalcComplaint::line).toList();
        String hint = key.otherwise().orElse("");
        if (key.kind().isPresent() && key.sheet().isEmpty() && key.kind().get() != Kind.NUMBER) {
            List<String> units = key.kind().get().accepted().stream().map(Unit::symbol).toList();
            Optional<Quantity.Parts> parts = Quantity.split(value);
            String unit = value.isEmpty() ? units.get(0) : parts.map(Quantity.Parts::unit).orElse("");
            String number = unit.isEmpty() || value.isEmpty() ? value : value.substring(0, value.length() - unit.length()).strip();
            List<String> offered = new ArrayList<>(units);
            if (!unit.isEmpty() && !units.contains(unit)) offered.add(0, unit);
            return new Field(key.name(), key.name(), Field.Look.QUANTITY, number, unit, offered, List.of(), hint, key.meaning(), wrong, key.required());
        }
        List<String> choices = key.sheet().map(catalogue::names).orElse(key.words());
        return new Field(key.name(), key.name(), choices.isEmpty() ? Field.Look.TEXT : Field.Look.CHOICE, value, "", List.of(), choices, hint, key.meaning(), wrong, key.required());
    }

    private Sheets sheetsForCalcs() {
        return new Sheets() {
            @Override public Optional<Object> find(String kind, String name) {
                return Kinds.find(kind).filter(k -> catalogue.has(k.word(), name)).flatMap(k -> catalogue.read(k, name).good().map(Object.class::cast));
            }

            @Override public List<String> names(String kind) { return catalogue.names(kind); }
        };
    }

    private void checks(Context ctx) {
        site.render(ctx, 200, "checks.jte", Map.of("page", page(ctx, "figures", "checks.title", "/checks"), "tables", checks));
    }

    private String state(Context ctx) {
        String packed = ctx.queryParam("s");
        return packed != null && packed.length() <= Packed.MAX_ADDRESS && site.addresses().open(packed).isPresent() ? packed : "";
    }

    private Page page(Context ctx, String here, String titleKey, String self) {
        String state = state(ctx);
        return site.page(ctx, here, titleKey.isEmpty() ? "" : site.words(ctx).say(titleKey), state, state.isEmpty() ? self : self + (self.contains("?") ? "&s=" : "?s=") + state);
    }
}
