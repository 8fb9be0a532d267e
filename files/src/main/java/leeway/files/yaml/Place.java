package leeway.files.yaml;

/** Where something stands in a file; lines and columns count from 1. */
public record Place(String file, int line, int column) implements Comparable<Place> {
    /** The beginning of a file, for what is wrong with all of it. */
    public static Place start(String file) { return new Place(file, 1, 1); }

    @Override public int compareTo(Place o) {
        int byFile = file.compareTo(o.file);
        if (byFile != 0) return byFile;
        return line != o.line ? Integer.compare(line, o.line) : Integer.compare(column, o.column);
    }

    @Override public String toString() { return file + ":" + line + ":" + column; }
}
