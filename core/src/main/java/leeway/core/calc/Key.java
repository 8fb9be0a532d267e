package leeway.core.calc;

import java.util.List;
import java.util.Optional;
import leeway.core.quantity.Kind;

/**
 * One thing that a calc can be given.
 *
 * @param name      as on the command line, with hyphens
 * @param kind      family of units; empty for a word or a sheet's name
 * @param least     smallest value, in the kind's own unit
 * @param most      largest value
 * @param words     the words it may be; empty for a number or a sheet
 * @param sheet     kind of sheet that it names; empty for a number or a word
 * @param required  must be given
 * @param otherwise what is taken where it is not given; empty where it then stays absent
 * @param meaning   what it is
 */
public record Key(String name, Optional<Kind> kind, double least, double most, List<String> words, Optional<String> sheet, boolean required,
        Optional<String> otherwise, String meaning) {
    public Key { words = List.copyOf(words); }

    /** A number that must be given. */
    public static Key must(String name, Kind kind, double least, double most, String meaning) {
        return new Key(name, Optional.of(kind), least, most, List.of(), Optional.empty(), true, Optional.empty(), meaning);
    }

    /** A number that may be given and else is this, written as a user would. */
    public static Key may(String name, Kind kind, double least, double most, String otherwise, String meaning) {
        return new Key(name, Optional.of(kind), least, most, List.of(), Optional.empty(), false, Optional.of(otherwise), meaning);
    }

    /** A number that may be given and else stays absent. */
    public static Key may(String name, Kind kind, double least, double most, String meaning) {
        return new Key(name, Optional.of(kind), least, most, List.of(), Optional.empty(), false, Optional.empty(), meaning);
    }

    /** One of some words; absent where not given. */
    public static Key mayWord(String name, List<String> words, String meaning) {
        return new Key(name, Optional.empty(), 0, 0, words, Optional.empty(), false, Optional.empty(), meaning);
    }

    /** One of some words. */
    public static Key mayWord(String name, List<String> words, String otherwise, String meaning) {
        return new Key(name, Optional.empty(), 0, 0, words, Optional.empty(), false, Optional.of(otherwise), meaning);
    }

    /** One of some words; must be given. */
    public static Key mustWord(String name, List<String> words, String meaning) {
        return new Key(name, Optional.empty(), 0, 0, words, Optional.empty(), true, Optional.empty(), meaning);
    }

    /** The name of a sheet; must be given. */
    public static Key mustSheet(String name, String sheet, String meaning) {
        return new Key(name, Optional.empty(), 0, 0, List.of(), Optional.of(sheet), true, Optional.empty(), meaning);
    }

    /** The name of a sheet, or a number instead; must be given. */
    public static Key mustSheetOr(String name, String sheet, Kind kind, double least, double most, String meaning) {
        return new Key(name, Optional.of(kind), least, most, List.of(), Optional.of(sheet), true, Optional.empty(), meaning);
    }

    /** "a pressure in bar, psi, kPa or MPa, for example 185 bar". */
    public String right() {
        if (kind.isPresent() && sheet.isPresent()) {
            return "It is the name of a sheet (" + sheet.get() + "), or " + kind.get().words() + " in " + kind.get().unitsInWords() + ", for example \"" + kind.get().example() + "\".";
        }
        if (kind.isPresent()) {
            String units = kind.get() == Kind.NUMBER ? "" : " in " + kind.get().unitsInWords();
            return "It is " + kind.get().words() + units + ", for example \"" + kind.get().example() + "\".";
        }
        if (sheet.isPresent()) return "It is the name of a sheet: " + sheet.get() + ".";
        return "It is one of: " + String.join(", ", words) + ".";
    }
}
