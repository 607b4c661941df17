package boundwright.store.season;

import boundwright.athlete.NearNames;
import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * An object of a file and where it stands. Whatever is wrong in it is refused with the place, the value, what is allowed and a way out. A
 * key that nobody asked for is refused too: a mistyped one would be passed over in silence. {@code null} counts as not there.
 */
final class Place {
  private static final Pattern DATE = Pattern.compile("(19|20|21)\\d{2}-\\d{2}-\\d{2}");
  private static final int LONGEST_SHOWN = 60;

  private final String path;
  private final String whose;
  private final JsonNode node;
  private final Set<String> asked = new LinkedHashSet<>();

  private Place(String path, String whose, JsonNode node) {
    this.path = path;
    this.whose = whose;
    this.node = node;
    if (!node.isObject()) {
      throw new MisreadException(path, whose, shown(node) + " stands where an object is needed. Write it between { and }.");
    }
  }

  /** The whole file. */
  static Place root(JsonNode node) {
    return new Place("", "", node);
  }

  /** The same place, named after somebody in what is said of it. */
  Place of(String name) {
    Place named = new Place(path, name, node);
    named.asked.addAll(asked);
    return named;
  }

  /** Whether the key is there, null or not. */
  boolean has(String key) {
    asked.add(key);
    return node.has(key);
  }

  /** A text that must be there, without blanks around it. */
  String text(String key, int most) {
    JsonNode value = needed(key, "a text");
    if (!value.isTextual()) {
      throw wrong(key, shown(value) + " is no text. Write it between quotation marks.");
    }
    String text = value.textValue().strip();
    if (text.isEmpty() || text.length() > most) {
      throw wrong(key, "a text of " + text.length() + " characters is out of range: 1 to " + most + ".");
    }
    if (!PlainText.isPlain(text) || text.chars().anyMatch(Character::isISOControl)) {
      throw wrong(key, "the text holds characters that cannot be printed. Write it on one line, without tabs.");
    }
    return text;
  }

  /** As {@link #text(String, int)}, or this if it is not there. */
  String text(String key, int most, String otherwise) {
    return absent(key) ? otherwise : text(key, most);
  }

  /** As {@link #text(String, int)}, or null if it is not there. */
  @Nullable String textOrNull(String key, int most) {
    return absent(key) ? null : text(key, most);
  }

  /** A whole number that must be there. */
  int whole(String key, int least, int most) {
    return (int) wholeLong(key, least, most);
  }

  /** As {@link #whole(String, int, int)}, or this if it is not there. */
  int whole(String key, int least, int most, int otherwise) {
    return absent(key) ? otherwise : whole(key, least, most);
  }

  /** A whole number that must be there. */
  long wholeLong(String key, long least, long most) {
    String range = "a whole number from " + least + " to " + most;
    JsonNode value = needed(key, range);
    if (!value.isIntegralNumber() || !value.canConvertToLong() || value.longValue() < least || value.longValue() > most) {
      throw wrong(key, shown(value) + " is out of range: " + range + ".");
    }
    return value.longValue();
  }

  /** A number, or this if it is not there. */
  double number(String key, double least, double most, double otherwise) {
    return absent(key) ? otherwise : number(key, least, most);
  }

  /** A number that must be there. */
  double number(String key, double least, double most) {
    String range = "a number from " + plain(least) + " to " + plain(most);
    JsonNode value = needed(key, range);
    double number = value.doubleValue();
    if (!value.isNumber() || !(number >= least && number <= most)) {
      throw wrong(key, shown(value) + " is out of range: " + range + ".");
    }
    return number;
  }

  /** The numbers of a list, all of them. */
  List<Double> numbers(String key, double least, double most) {
    List<Double> out = new ArrayList<>();
    for (JsonNode value : list(key)) {
      if (!value.isNumber() || !(value.doubleValue() >= least && value.doubleValue() <= most)) {
        throw wrong(
            key + "[" + (out.size() + 1) + "]", shown(value) + " is out of range: a number from " + plain(least) + " to " + plain(most) + ".");
      }
      out.add(value.doubleValue());
    }
    return out;
  }

  /** Yes or no, or this if it is not there. */
  boolean flag(String key, boolean otherwise) {
    if (absent(key)) {
      return otherwise;
    }
    JsonNode value = node.get(key);
    if (!value.isBoolean()) {
      throw wrong(key, shown(value) + " is neither true nor false. Write one of the two, without quotation marks.");
    }
    return value.booleanValue();
  }

  /** A day that must be there. */
  LocalDate date(String key) {
    JsonNode value = needed(key, "a date such as 2026-05-14");
    if (value.isTextual() && DATE.matcher(value.textValue()).matches()) {
      try {
        return LocalDate.parse(value.textValue());
      } catch (DateTimeParseException e) {
        throw wrong(key, shown(value) + " is no day of the calendar. Write year, month, day, as in 2026-05-14.", e);
      }
    }
    throw wrong(key, shown(value) + " is no date. Write year, month, day, as in \"2026-05-14\".");
  }

  /** A day, or null if it is not there. */
  @Nullable LocalDate dateOrNull(String key) {
    return absent(key) ? null : date(key);
  }

  /** One of these by its label, in any case. */
  <T> T choice(String key, List<T> all, Function<T, String> label) {
    return choice(key, needed(key, "one of: " + labels(all, label)), all, label);
  }

  /** As {@link #choice(String, List, Function)}, or this if it is not there. */
  <T> T choice(String key, List<T> all, Function<T, String> label, T otherwise) {
    return absent(key) ? otherwise : choice(key, all, label);
  }

  /** Several of these by their labels; none if the key is not there. */
  <T> List<T> choices(String key, List<T> all, Function<T, String> label) {
    List<T> out = new ArrayList<>();
    for (JsonNode value : list(key)) {
      out.add(choice(key + "[" + (out.size() + 1) + "]", value, all, label));
    }
    return out;
  }

  private <T> T choice(String key, JsonNode value, List<T> all, Function<T, String> label) {
    String written = value.isTextual() ? value.textValue().strip() : "";
    return all.stream()
        .filter(one -> label.apply(one).equalsIgnoreCase(written))
        .findFirst()
        .orElseThrow(() -> wrong(key, shown(value) + " is not known. Use one of: " + labels(all, label) + "."));
  }

  private static <T> String labels(List<T> all, Function<T, String> label) {
    return String.join(", ", all.stream().map(label).toList());
  }

  /** The objects of a list; none if the key is not there. */
  List<Place> objects(String key) {
    List<Place> out = new ArrayList<>();
    for (JsonNode value : list(key)) {
      out.add(new Place(joined(key) + "[" + (out.size() + 1) + "]", whose, value));
    }
    return out;
  }

  /** The object under a key, or null if it is not there. */
  @Nullable Place object(String key) {
    return absent(key) ? null : new Place(joined(key), whose, node.get(key));
  }

  /** Makes something of what was read here; if it refuses, it says where. */
  <T> T make(Supplier<T> maker) {
    try {
      return maker.get();
    } catch (RefusedException e) {
      throw new MisreadException(path, whose, String.valueOf(e.getMessage()), e);
    }
  }

  /** As {@link #make}, for what was read under one key. */
  <T> T make(String key, Supplier<T> maker) {
    try {
      return maker.get();
    } catch (RefusedException e) {
      throw wrong(key, String.valueOf(e.getMessage()), e);
    }
  }

  /** Refuses keys that nobody asked for; called when everything was. */
  void done() {
    node.fieldNames()
        .forEachRemaining(
            key -> {
              if (!asked.contains(key)) {
                List<String> near = key.length() > LONGEST_SHOWN ? List.of() : NearNames.of(key, List.copyOf(asked));
                String meant = near.isEmpty() ? "" : " Did you mean " + near.get(0) + "?";
                throw new MisreadException(
                    path, whose, "the key '" + cut(key) + "' is not known here." + meant + " Allowed: " + String.join(", ", asked) + ".");
              }
            });
  }

  /** What is wrong under a key. */
  RefusedException wrong(String key, String sentence) {
    return new MisreadException(joined(key), whose, sentence);
  }

  private RefusedException wrong(String key, String sentence, Exception cause) {
    return new MisreadException(joined(key), whose, sentence, cause);
  }

  private boolean absent(String key) {
    return !has(key) || node.get(key).isNull();
  }

  private JsonNode needed(String key, String what) {
    if (absent(key)) {
      throw wrong(key, "is missing. Write " + what + ".");
    }
    return node.get(key);
  }

  private Iterable<JsonNode> list(String key) {
    if (absent(key)) {
      return List.of();
    }
    JsonNode value = node.get(key);
    if (!value.isArray()) {
      throw wrong(key, shown(value) + " stands where a list is needed. Write it between [ and ].");
    }
    return value;
  }

  private String joined(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  /** A value as it stands in the file, shortened. */
  private static String shown(JsonNode value) {
    return value.isObject() ? "an object" : value.isArray() ? "a list" : value.isTextual() ? "'" + cut(value.textValue()) + "'" : cut(value.asText());
  }

  private static String cut(String text) {
    String line = text.replaceAll("\\p{Cntrl}", " ");
    return line.length() > LONGEST_SHOWN ? line.substring(0, LONGEST_SHOWN) + "..." : line;
  }

  private static String plain(double x) {
    return x == Math.rint(x) ? String.valueOf((long) x) : String.format(Locale.ROOT, "%s", x);
  }
}
