package boundwright.web.season.input;

import boundwright.store.season.SeasonDraft;
import boundwright.web.page.Form;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** A piece of a season that has a form of its own. */
interface Piece {
  /** The last part of its address, and the name of its template. */
  String name();

  /** What the form is called. */
  String title(SeasonDraft draft, String at);

  /** What stands in the form; empty for a new one. */
  Map<String, String> fields(SeasonDraft draft, String at);

  /**
   * Puts what was written in its place.
   *
   * @param typed what was written
   * @return the place in the file, as {@code places[2].}
   */
  String put(SeasonDraft draft, String at, ObjectNode typed);

  /** Takes it out of the season. */
  default void remove(SeasonDraft draft, String at) {}

  /** Fields beside which a sentence can stand; another place stands above the form. */
  Pattern shown();

  /** Beside which field it is said that the season as a whole would not hold together; empty: above the form. */
  default String beside() {
    return "";
  }

  /** Where an entry of a list stands, from 0; -1 for none. */
  static int index(ArrayNode list, String key, String value) {
    for (int i = 0; i < list.size(); i++) {
      if (list.get(i).path(key).asText().equals(value)) {
        return i;
      }
    }
    return -1;
  }

  /** An entry of a list. */
  static Optional<ObjectNode> find(ArrayNode list, String key, String value) {
    int i = index(list, key, value);
    return i >= 0 && list.get(i) instanceof ObjectNode node ? Optional.of(node) : Optional.empty();
  }

  /** Puts it in the place of the entry with the same key, or last. */
  static int put(ArrayNode list, String key, ObjectNode entry) {
    int i = index(list, key, entry.path(key).asText());
    if (i >= 0) {
      list.set(i, entry);
      return i;
    }
    list.add(entry);
    return list.size() - 1;
  }

  /** A key that no entry of a list has, of a name. */
  static String newKey(ArrayNode list, String name) {
    String plain = Form.plain(name);
    String begin = plain.isEmpty() ? "new" : plain.substring(0, Math.min(30, plain.length()));
    String key = begin;
    for (int n = 2; index(list, "key", key) >= 0; n++) {
      key = begin + "-" + n;
    }
    return key;
  }

  /** Sets how important a meet is to an athlete; an empty word takes the entry out. */
  static void enter(JsonNode athlete, String meet, String importance) {
    if (athlete instanceof ObjectNode node) {
      ArrayNode entries = node.withArray("meets");
      int i = index(entries, "meet", meet);
      if (importance.isEmpty()) {
        if (i >= 0) {
          entries.remove(i);
        }
      } else {
        ObjectNode entry = i >= 0 && entries.get(i) instanceof ObjectNode known ? known : entries.addObject();
        entry.put("meet", meet).put("importance", importance);
      }
    }
  }
}
