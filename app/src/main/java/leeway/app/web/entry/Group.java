package leeway.app.web.entry;

import java.util.List;
import java.util.stream.Stream;

/**
 * Fields that belong together: a section of the file, or one item of a list.
 *
 * @param path   where the section stands; of a group of top keys empty
 * @param name   the key of the section, or our name of a group of top keys
 * @param fields what is always shown
 * @param more   what is shown on demand
 * @param items  the items, where it is a list
 * @param inner  sections inside, shown on demand
 * @param list   whether items can be added
 * @param wrong  what is wrong with it as a whole
 */
public record Group(String path, String name, List<Field> fields, List<Field> more, List<Group> items, List<Group> inner, boolean list, List<String> wrong) {
    public Group {
        fields = List.copyOf(fields);
        more = List.copyOf(more);
        items = List.copyOf(items);
        inner = List.copyOf(inner);
        wrong = List.copyOf(wrong);
    }

    public String id() { return Field.id("g-", path.isEmpty() ? name : path); }

    /** Every field of it and inside it. */
    public Stream<Field> all() {
        return Stream.of(fields.stream(), more.stream(), items.stream().flatMap(Group::all), inner.stream().flatMap(Group::all)).flatMap(s -> s);
    }

    /** Whether what is shown on demand has to be shown now. */
    public boolean open() { return more.stream().anyMatch(Field::bad) || inner.stream().anyMatch(g -> !g.wrong.isEmpty() || g.all().anyMatch(Field::bad)); }

    /** Whether there is anything to show on demand. */
    public boolean deeper() { return !more.isEmpty() || !inner.isEmpty(); }

    /** How many of the values shown on demand are set. */
    public long set() { return more.stream().filter(Field::filled).count() + inner.stream().flatMap(Group::all).filter(Field::filled).count(); }

    /** What an item is called in its heading: its first value, with its unit where it has one. */
    public String title() { return fields.isEmpty() ? "" : fields.get(0).written(); }

    /** Of an item that is called by its time: what happens then; empty where it names nothing. */
    public String happens() {
        return fields.isEmpty() || fields.get(0).look() != Field.Look.QUANTITY ? "" : fields.stream().filter(f -> f.look() == Field.Look.CHOICE && f.filled()).map(Field::value).findFirst().orElse("");
    }
}
