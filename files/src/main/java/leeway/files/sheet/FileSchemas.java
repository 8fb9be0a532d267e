package leeway.files.sheet;

import java.util.Map;
import leeway.files.keys.Schemas;
import leeway.files.keys.Table;

/** JSON Schemas of files, from their tables of keys. */
public final class FileSchemas {
    private FileSchemas() { }

    public static Map<String, Object> document(Table table, String title, String name) { return Schemas.document(table, title, "urn:leeway:schema:" + name); }

    /** Of a kind of sheet. What a sheet continues with {@code like} need not be written, which a schema cannot know: nothing is required but the head. */
    public static Map<String, Object> sheet(SheetKind<?> kind) {
        Table loose = SheetHead.table(kind).loosened();
        Table head = new Table(loose.what(), true, loose.keys().stream()
                .map(k -> k.name().equals(kind.word()) || k.name().equals(SheetHead.SOURCE) ? new leeway.files.keys.Key(k.name(), k.form(), true, k.otherwise(), k.meaning(), k.also(), k.later()) : k).toList(), loose.wrong());
        return document(head, "A sheet: " + kind.word(), kind.word());
    }
}
