package boundwright.load.back;

import boundwright.quantity.RefusedException;
import java.time.LocalDate;

/**
 * A stage that a coach stepped to. Pain steps back by itself and is no entry here.
 *
 * @param id number in the store, 0 before it is stored
 * @param date from which the stage holds
 * @param kind onwards, or back
 * @param stage that it led to, 0 the first
 * @param by who stepped, 1 to 80 characters
 * @param note why, at most 200 characters, may be empty
 */
public record BackStep(long id, LocalDate date, Kind kind, int stage, String by, String note) {
  /** Which way. */
  public enum Kind {
    /** To the next stage, earned. */
    ON("on"),
    /** To the stage before, by the coach's own judgement. */
    BACK("back");

    private final String label;

    Kind(String label) {
      this.label = label;
    }

    /** In a word. */
    public String label() {
      return label;
    }
  }

  /** Refuses a step without a name. */
  public BackStep {
    by = named("who steps", by);
    note = note.strip();
    if (note.length() > 200) {
      throw new RefusedException("The note of a step has " + note.length() + " characters; at most 200 are kept. No diagnosis belongs in it.");
    }
    if (stage < 0) {
      throw new RefusedException("There is no stage before the first: the way back stands at its beginning.");
    }
  }

  static String named(String who, String name) {
    String tidy = name.strip().replaceAll("\\s+", " ");
    if (tidy.isEmpty() || tidy.length() > 80) {
      throw new RefusedException("The name of " + who + " has 1 to 80 characters; this one has " + tidy.length() + ". Nothing was changed.");
    }
    return tidy;
  }
}
