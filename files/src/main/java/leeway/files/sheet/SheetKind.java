package leeway.files.sheet;

import leeway.files.keys.Section;
import leeway.files.keys.Table;
import leeway.files.yaml.Complaints;

/**
 * A kind of sheet: its table of keys, and how what was read becomes a record.
 * Every sheet has the head of {@link SheetHead} besides: {@code KIND: NAME}, {@code like}, {@code source}, {@code plain}.
 */
public interface SheetKind<T> {
    /** "ventilator": the first key of the sheet, the folder it lies in, the argument of {@code leeway catalogue}. */
    String word();

    /** "ventilators". */
    String plural();

    /** Its keys, without the head. */
    Table table();

    /**
     * The record. Called only when every required key is there and every value passed; what does not fit together goes
     * into the complaints, and the record is then not used.
     */
    T record(String name, Section s, Complaints complaints);

    /**
     * What takes longer to find out than reading does. Asked of a user's own sheets and by {@code leeway check}; those that
     * come along are proved by the tests.
     */
    default void prove(T value, Section s, Complaints complaints) { }

    /** Where all values of the sheet come from that name no source of their own. */
    static String source(Section s) { return s.text("source").orElseThrow(); }
}
