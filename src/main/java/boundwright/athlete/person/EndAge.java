package boundwright.athlete.person;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * The birthday at which what a guardian agreed to ends, so that the athlete is asked. 16 and 18 are common practice; local law decides.
 */
public enum EndAge {
  /** The 16th birthday. */
  SIXTEEN(16, "16th birthday"),
  /** The 18th birthday. */
  EIGHTEEN(18, "18th birthday"),
  /** No birthday: a yes holds until its own end, or until it is withdrawn. */
  NONE(0, "no birthday");

  /** Without a setting. */
  public static final EndAge DEFAULT = EIGHTEEN;

  private final int years;
  private final String label;

  EndAge(int years, String label) {
    this.years = years;
    this.label = label;
  }

  /** In words. */
  public String label() {
    return label;
  }

  /** Years of age; 0 for none. */
  public int years() {
    return years;
  }

  /** The birthday of somebody, or null where there is none. */
  @Nullable LocalDate birthday(@Nullable LocalDate born) {
    return born == null || this == NONE ? null : born.plusYears(years);
  }
}
