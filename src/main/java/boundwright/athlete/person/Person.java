package boundwright.athlete.person;

import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.time.Period;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a person.
 *
 * @param born birth date, 1900-01-01 or later, or null where it is not known
 * @param sex or null where it was left out
 */
public record Person(@Nullable LocalDate born, @Nullable Sex sex) {
  /** Of whom nothing is known. */
  public static final Person UNKNOWN = new Person(null, null);

  private static final LocalDate OLDEST = LocalDate.of(1900, 1, 1);

  /** Refuses a slip of the pen. */
  public Person {
    if (born != null && born.isBefore(OLDEST)) {
      throw new RefusedException("The birth date " + born + " is too old; the oldest that is taken is " + OLDEST + ". Check the year.");
    }
  }

  /** Whole years on a day; empty without a birth date, or before it. */
  public OptionalInt age(LocalDate day) {
    LocalDate from = born;
    return from == null || day.isBefore(from) ? OptionalInt.empty() : OptionalInt.of(Period.between(from, day).getYears());
  }
}
