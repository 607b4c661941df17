package boundwright.athlete.person;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * How it stands with one thing that is asked for.
 *
 * @param kind how
 * @param said the newest answer, or null if nobody asked
 * @param lastDay last day of a yes, or null if it has none
 */
public record Standing(Kind kind, @Nullable Consent said, @Nullable LocalDate lastDay) {
  /** How it stands. */
  public enum Kind {
    /** Nobody asked. */
    NOT_ASKED("nobody asked"),
    /** It may be done. */
    YES("yes"),
    /** It may not. */
    NO("no"),
    /** There was a yes, and its last day is over. */
    ENDED("has ended"),
    /** There was a yes, and it was taken back. */
    WITHDRAWN("withdrawn");

    private final String label;

    Kind(String label) {
      this.label = label;
    }

    /** In few words. */
    public String label() {
      return label;
    }
  }

  /** Nobody asked. */
  public static final Standing NOT_ASKED = new Standing(Kind.NOT_ASKED, null, null);

  /** How it stands on a day after this answer, the newest. */
  static Standing of(Consent said, Person person, EndAge age, LocalDate day) {
    LocalDate last = said.lastDay(person, age);
    LocalDate withdrawn = said.withdrawn();
    if (!said.may()) {
      return new Standing(Kind.NO, said, null);
    }
    if (withdrawn != null && !day.isBefore(withdrawn)) {
      return new Standing(Kind.WITHDRAWN, said, last);
    }
    return new Standing(last != null && day.isAfter(last) ? Kind.ENDED : Kind.YES, said, last);
  }

  /** Whether it may be done. */
  public boolean may() {
    return kind == Kind.YES;
  }

  /** The day that counts: on which it was said, the last one, or from which it is withdrawn; null if nobody asked. */
  public @Nullable LocalDate day() {
    Consent answer = said;
    if (answer == null) {
      return null;
    }
    return switch (kind) {
      case ENDED -> lastDay;
      case WITHDRAWN -> answer.withdrawn();
      default -> answer.on();
    };
  }
}
