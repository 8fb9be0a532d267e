package leeway.files.keys;

import java.util.Optional;
import leeway.files.yaml.Node;
import leeway.files.yaml.Place;

/**
 * A value as read.
 *
 * @param source where it comes from, in sheets
 */
public record Value(Key key, Node.Scalar keyNode, Node node, Object value, Optional<String> source) {
    public Place at() { return node.at(); }
}
