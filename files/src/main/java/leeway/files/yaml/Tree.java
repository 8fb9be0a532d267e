package leeway.files.yaml;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;

/**
 * Builds the tree of one YAML document from its events, without recursion.
 * Limits: depth {@value #DEPTH}, no alias, no tag, no key twice, one document.
 */
public final class Tree {
    /** A transport file is five deep. */
    public static final int DEPTH = 64;

    private static final LoadSettings SETTINGS = LoadSettings.builder().setUseMarks(true).setCodePointLimit(Text.LIMIT + 1).build();

    private final String file;
    private final String text;
    private final Complaints complaints;
    private final Offsets offsets;
    private final Deque<Open> open = new ArrayDeque<>();
    private Node root;

    /** A mapping or a list whose end has not come yet. */
    private static final class Open {
        final boolean mapping;
        final boolean flow;
        final Mark start;
        final List<Node> items = new ArrayList<>();
        final List<Node.Entry> entries = new ArrayList<>();
        final Map<String, Node.Scalar> seen = new HashMap<>();
        Node.Scalar key;
        boolean drop;

        Open(boolean mapping, boolean flow, Mark start) {
            this.mapping = mapping;
            this.flow = flow;
            this.start = start;
        }
    }

    private Tree(String file, String text, Complaints complaints) {
        this.file = file;
        this.text = text;
        this.complaints = complaints;
        this.offsets = new Offsets(text);
    }

    /** The document in the text. */
    public static Read<Node> of(String file, String text) {
        Complaints complaints = new Complaints();
        Optional<Node> root = of(file, text, complaints);
        return complaints.orElse(root::orElseThrow);
    }

    /** The document in the text, also where a key stands twice, so that one run finds what else is wrong; empty when reading had to stop. */
    public static Optional<Node> of(String file, String text, Complaints complaints) {
        Optional<String> checked = complaints.take(Text.of(text, file));
        if (checked.isEmpty()) return Optional.empty();
        Tree tree = new Tree(file, checked.get(), complaints);
        if (!tree.grow()) return Optional.empty();
        if (tree.root == null) complaints.add(Place.start(file), "this file is empty", "\"leeway new FILE\" writes one to start from.");
        return Optional.ofNullable(tree.root);
    }

    /** False when reading had to stop. */
    private boolean grow() {
        Iterator<Event> events = new Parse(SETTINGS).parseString(text).iterator();
        int documents = 0;
        Mark last = null;
        while (true) {
            Event event;
            try {
                if (!events.hasNext()) return true;
                event = events.next();
            } catch (MarkedYamlEngineException e) {
                return NotYaml.complain(e, text, file, openBracket(), complaints);
            } catch (RuntimeException e) { // the scanner's own limits and slips: the place of the last good token is the best known
                complaints.add(last == null ? Place.start(file) : place(last), "this is not YAML from here on", "");
                return false;
            }
            last = event.getStartMark().orElse(last);
            switch (event.getEventId()) {
                case DocumentStart -> {
                    if (++documents > 1) return stop(place(last), "a second document begins here", "One file holds one document: take out the \"---\".");
                }
                case Alias -> {
                    return stop(place(last), "an alias, " + Complaints.echo("*" + ((AliasEvent) event).getAlias()), "Write the value out: aliases are not taken.");
                }
                case Scalar -> {
                    if (!scalar((ScalarEvent) event)) return false;
                }
                case MappingStart, SequenceStart -> {
                    if (!start((CollectionStartEvent) event)) return false;
                }
                case MappingEnd, SequenceEnd -> end(event.getEndMark().orElseThrow());
                default -> { }
            }
        }
    }

    /** The innermost bracket that is open, "[" or "{", with its place. */
    private Optional<NotYaml.Bracket> openBracket() {
        Open o = open.peek();
        return o != null && o.flow ? Optional.of(new NotYaml.Bracket(place(o.start), o.mapping ? "}" : "]")) : Optional.empty();
    }

    private boolean stop(Place at, String what, String right) {
        complaints.add(at, what, right);
        return false;
    }

    private boolean scalar(ScalarEvent e) {
        Mark from = e.getStartMark().orElseThrow();
        if (e.getTag().isPresent() && !e.getTag().get().equals("tag:yaml.org,2002:str")) return tag(e.getTag(), from);
        boolean block = e.isLiteral() || e.isFolded();
        add(new Node.Scalar(e.getValue(), !e.isPlain(), block, span(from, e.getEndMark().orElseThrow())));
        return true;
    }

    private boolean tag(Optional<String> tag, Mark at) {
        return stop(place(at), "a tag, " + Complaints.echo(tag.orElse("").replace("tag:yaml.org,2002:", "!!")), "Take it out: tags are not taken.");
    }

    private boolean start(CollectionStartEvent e) {
        Mark from = e.getStartMark().orElseThrow();
        if (e.getTag().isPresent()) return tag(e.getTag(), from);
        Open parent = open.peek();
        if (parent != null && parent.mapping && parent.key == null) {
            return stop(place(from), "a key that is a list or a mapping", "A key is a word or two, as in \"height: 170 cm\".");
        }
        if (open.size() >= DEPTH) return stop(place(from), "nested more than " + DEPTH + " deep", "A transport file is at most five deep.");
        open.push(new Open(e instanceof MappingStartEvent, e.isFlow(), from));
        return true;
    }

    private void end(Mark to) {
        Open o = open.pop();
        Node.Span span = span(o.start, to);
        add(o.mapping ? new Node.Mapping(o.entries, o.flow, span) : new Node.Items(o.items, o.flow, span));
    }

    private void add(Node node) {
        Open parent = open.peek();
        if (parent == null) {
            root = node instanceof Node.Scalar s && s.blank() ? null : node;
        } else if (!parent.mapping) {
            parent.items.add(node);
        } else if (parent.key == null) {
            key(parent, (Node.Scalar) node);
        } else {
            if (!parent.drop) parent.entries.add(new Node.Entry(parent.key, node));
            parent.key = null;
        }
    }

    private void key(Open parent, Node.Scalar key) {
        parent.key = key;
        Node.Scalar first = parent.seen.putIfAbsent(key.text(), key);
        parent.drop = first != null;
        if (first == null) return;
        complaints.add(key.at(), "%s stands twice, on line %d and on line %d".formatted(Complaints.echo(key.text()), first.at().line(), key.at().line()), "Keep one of them.");
    }

    private Place place(Mark m) { return new Place(file, m.getLine() + 1, m.getColumn() + 1); }

    private Node.Span span(Mark from, Mark to) { return new Node.Span(place(from), offsets.of(from.getIndex()), offsets.of(to.getIndex())); }

    /** From the library's index, which counts code points, to offsets in the text. */
    private static final class Offsets {
        private final String text;
        private final boolean same;
        private int points;
        private int chars;

        Offsets(String text) {
            this.text = text;
            this.same = text.codePointCount(0, text.length()) == text.length();
        }

        int of(int index) {
            if (same) return Math.min(index, text.length());
            if (index < points) points = chars = 0;
            while (points < index && chars < text.length()) {
                chars += Character.charCount(text.codePointAt(chars));
                points++;
            }
            return chars;
        }
    }
}
