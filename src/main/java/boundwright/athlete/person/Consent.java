package boundwright.athlete.person;

import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * An answer that was given.
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId of whom
 * @param scope to what
 * @param may yes or no
 * @param on the day on which it was said
 * @param by who said it, as a relation and not a name ({@code mother}, {@code the athlete}), at most {@value #MOST_BY} characters; empty
 *     where it was not noted
 * @param until last day on which a yes holds, or null: until the birthday of the setting, or until it is withdrawn
 * @param withdrawn the day from which it no longer holds, or null
 */
public record Consent(
    long id, long athleteId, Scope scope, boolean may, LocalDate on, String by, @Nullable LocalDate until, @Nullable LocalDate withdrawn) {
  /** Most characters of {@code by}. */
  public static final int MOST_BY = 60;

  /** Refuses what cannot be. */
  public Consent {
    by = PlainText.checked(by.strip().replaceAll("\\s+", " "));
    if (by.length() > MOST_BY) {
      throw new RefusedException(
          "Who said it has at most " + MOST_BY + " characters; this has " + by.length() + ". A relation is enough: mother, guardian, the athlete.");
    }
    if (until != null && !may) {
      throw new RefusedException("A no has no last day. Leave it empty; a yes that comes later is entered then.");
    }
    if (until != null && until.isBefore(on)) {
      throw new RefusedException("The last day, " + until + ", lies before " + on + ", on which it was said. Check both.");
    }
    if (withdrawn != null && withdrawn.isBefore(on)) {
      throw new RefusedException("Said on " + on + ", it cannot be withdrawn on " + withdrawn + ". Enter the day from which it no longer holds.");
    }
  }

  /**
   * The last day on which it holds, withdrawn or not: its own, or the day before the birthday of the setting if it was said before that
   * birthday; null if there is neither.
   */
  public @Nullable LocalDate lastDay(Person person, EndAge age) {
    LocalDate birthday = age.birthday(person.born());
    return until != null ? until : birthday != null && on.isBefore(birthday) ? birthday.minusDays(1) : null;
  }
}
