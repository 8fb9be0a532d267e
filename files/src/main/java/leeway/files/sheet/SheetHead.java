package leeway.files.sheet;

import java.util.ArrayList;
import java.util.List;
import leeway.files.keys.Form;
import leeway.files.keys.Key;
import leeway.files.keys.Table;

/** The keys that every sheet begins with. */
final class SheetHead {
    static final String LIKE = "like";
    static final String SOURCE = "source";
    static final String PLAIN = "plain";

    private SheetHead() { }

    /** The whole table of a kind: head and body; its values may name their source. */
    static Table table(SheetKind<?> kind) {
        List<Key> keys = new ArrayList<>();
        keys.add(Key.must(kind.word(), Form.name(kind.word(), "example"), "The name of this sheet."));
        keys.add(Key.may(LIKE, Form.name(kind.word(), "example"), "Another " + kind.word() + " that this one continues: what is not written here is as there."));
        keys.add(Key.must(SOURCE, Form.text(400, "invented"), "Where the values come from, or the word invented; a single value may name its own."));
        keys.add(Key.may(PLAIN, Form.text(400, "for teaching"), "What it is, in a sentence."));
        keys.addAll(kind.table().keys());
        return new Table("the sheet", true, keys, kind.table().wrong());
    }
}
