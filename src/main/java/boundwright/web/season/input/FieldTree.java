package boundwright.web.season.input;

import boundwright.web.page.Turned;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Fields of a form as a piece of a season's file, and back. A field is called as its place in the piece: {@code hours.monday},
 * {@code closed[2].from}; lists count from 1. What is empty is left out, and rows of a list close up; what is no number where one is asked
 * stays as it was written, so that the file's reader says so.
 */
final class FieldTree {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final Pattern NUMBER = Pattern.compile("-?\\d{1,9}([.,]\\d{1,9})?");
  private static final Pattern ROW = Pattern.compile("([^\\[]+)\\[(\\d{1,4})]");
  private static final Set<String> FLAGS = Set.of("sand", "growing");
  /** Fields in which a number is asked, by the last part of their name. */
  private static final Set<String> NUMBERS =
      Set.of(
          "athletesAtOnce", "fullRunUpSteps", "largestWeek_standingBounds", "alternate", "single-leg", "combination", "share", "bounds", "combinations", "shortJumps",
          "lighterEvery_weeks", "lighterShare", "days", "leastCut", "cut", "mostCut", "testEvery_weeks", "softDay_contacts", "notice_days", "spareShare",
          "awayOrHeld_perYear", "awayOrHeld_days", "january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november",
          "december");

  private FieldTree() {}

  /**
   * The piece that these fields stand for.
   *
   * @throws Turned if two of them do not fit together, as no form of ours sends them
   */
  static ObjectNode tree(Map<String, String> typed) {
    ObjectNode out = NODES.objectNode();
    // by rows in their order, so that row 10 comes after row 2
    Map<String, String> ordered = new TreeMap<>(FieldTree::compare);
    ordered.putAll(typed);
    Map<String, ObjectNode> rows = new LinkedHashMap<>();
    ordered.forEach(
        (name, value) -> {
          if (!value.isBlank()) {
            try {
              put(out, rows, name, value.strip());
            } catch (UnsupportedOperationException e) {
              // a value already stands where this name asks for parts
              throw unfit(name);
            }
          }
        });
    return out;
  }

  private static Turned unfit(String name) {
    return new Turned(422, "The field '" + name + "' does not fit the others of this form. Load the page again.");
  }

  private static int compare(String a, String b) {
    Matcher ra = ROW.matcher(a.split("\\.", 2)[0]);
    Matcher rb = ROW.matcher(b.split("\\.", 2)[0]);
    if (ra.matches() && rb.matches() && ra.group(1).equals(rb.group(1))) {
      int c = Integer.compare(Integer.parseInt(ra.group(2)), Integer.parseInt(rb.group(2)));
      return c != 0 ? c : a.compareTo(b);
    }
    return a.compareTo(b);
  }

  private static void put(ObjectNode out, Map<String, ObjectNode> rows, String name, String value) {
    String[] parts = name.split("\\.");
    if (parts.length == 0) {
      throw unfit(name);
    }
    ObjectNode at = out;
    for (int i = 0; i + 1 < parts.length; i++) {
      Matcher row = ROW.matcher(parts[i]);
      ObjectNode in = at;
      at = row.matches() ? rows.computeIfAbsent(parts[i], k -> in.withArray(row.group(1)).addObject()) : at.withObjectProperty(parts[i]);
    }
    String last = parts[parts.length - 1];
    at.set(last, FLAGS.contains(last) ? NODES.booleanNode(true) : NUMBERS.contains(last) ? number(value) : NODES.textNode(value));
  }

  private static JsonNode number(String value) {
    if (!NUMBER.matcher(value).matches()) {
      return NODES.textNode(value);
    }
    BigDecimal number = new BigDecimal(value.replace(',', '.'));
    return number.stripTrailingZeros().scale() <= 0 ? NODES.numberNode(number.intValueExact()) : NODES.numberNode(number.doubleValue());
  }

  /** The fields that a piece stands for; what is false is left out. */
  static Map<String, String> fields(JsonNode piece) {
    Map<String, String> out = new LinkedHashMap<>();
    flatten("", piece, out);
    return out;
  }

  private static void flatten(String path, JsonNode node, Map<String, String> out) {
    if (node instanceof ObjectNode object) {
      object.properties().forEach(e -> flatten(path.isEmpty() ? e.getKey() : path + "." + e.getKey(), e.getValue(), out));
    } else if (node instanceof ArrayNode list) {
      for (int i = 0; i < list.size(); i++) {
        flatten(path + "[" + (i + 1) + "]", list.get(i), out);
      }
    } else if (!node.isNull() && !(node.isBoolean() && !node.booleanValue())) {
      out.put(path, node.isBoolean() ? "on" : node.isNumber() ? node.decimalValue().stripTrailingZeros().toPlainString() : node.asText());
    }
  }
}
