package boundwright.store.movein;

import java.util.Arrays;
import java.util.List;

/** What a file holds. */
public enum Kind {
  /** Athletes. */
  ROSTER("roster", "Athletes"),
  /** Reps. */
  REPS("reps", "Reps"),
  /** Attempts in past meets. */
  RESULTS("results", "Past results");

  private final String key;
  private final String label;

  Kind(String key, String label) {
    this.key = key;
    this.label = label;
  }

  /** The word on the command line. */
  public String key() {
    return key;
  }

  /** As it is called on the screen. */
  public String label() {
    return label;
  }

  /** Its fields, those that are needed first. */
  public List<Field> fields() {
    return Arrays.stream(Field.values()).filter(f -> f.kind() == this).toList();
  }
}
