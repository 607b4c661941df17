package boundwright.web.season.input;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The form of a piece of a season.
 *
 * @param season its number
 * @param name of the season
 * @param piece which, as in its address
 * @param title of the form
 * @param at which of its kind, empty for a new one
 * @param edition of the season that the form shows
 * @param fields what stands in it, by field
 * @param wrong field beside which the sentence stands; empty: above the form; null: nothing is wrong
 * @param sentence why it was not kept, or empty
 * @param picks meets for an athlete, athletes for a meet
 * @param notes what else is known, a sentence each
 */
public record PieceView(
    long season,
    String name,
    String piece,
    String title,
    String at,
    int edition,
    Map<String, String> fields,
    @Nullable String wrong,
    String sentence,
    List<Pick> picks,
    List<String> notes) {
  /** Days of the week, as in the file. */
  public static final List<String> WEEK = List.of("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday");

  /** How an athlete jumps a meet: words of the file, and what is read. */
  public static final List<Pick> JUMPS = List.of(new Pick("", "does not jump it"), new Pick("usual", "usual"), new Pick("main", "main: rested for"));

  private static final int FREE_ROWS = 2;

  /** Takes copies. */
  public PieceView {
    fields = Map.copyOf(fields);
    picks = List.copyOf(picks);
    notes = List.copyOf(notes);
  }

  /** A choice: what is sent, and what is read. */
  public record Pick(String value, String said) {}

  /** What stands in a field. */
  public String field(String field) {
    return fields.getOrDefault(field, "");
  }

  /** Whether a box is ticked. */
  public boolean ticked(String field) {
    return fields.containsKey(field);
  }

  /** The sentence beside a field, or empty. */
  public String refusal(String field) {
    return field.equals(wrong) ? sentence : "";
  }

  /** Whether the sentence stands beside one of the fields of this beginning, so that they are not folded away. */
  public boolean wrongIn(String beginning) {
    return wrong != null && !wrong.isEmpty() && wrong.startsWith(beginning);
  }

  /** How many rows a list shows: what is in it and some that are free. */
  public int rows(String list) {
    int last = 0;
    for (String f : fields.keySet()) {
      if (f.startsWith(list + "[")) {
        last = Math.max(last, Integer.parseInt(f.substring(list.length() + 1, f.indexOf(']'))));
      }
    }
    return last + FREE_ROWS;
  }

  /** What a field is called in the page. */
  public String id(String field) {
    return piece + "-" + field.replaceAll("[^A-Za-z0-9]+", "-");
  }
}
