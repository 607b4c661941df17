package boundwright.jump;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** A jump of an athlete as some log keeps it. One that was measured in two ways stands in two logs. */
public interface KeptJump {
  /** The day. */
  LocalDate date();

  /** How far [m]. */
  double distance_m();

  /** Of the run-up, or null where none are noted. */
  @Nullable Integer steps();

  /** Whether what another log keeps of the same athlete is this jump: day and centimetre agree, and the steps where both have them. */
  default boolean isJump(KeptJump other) {
    Integer own = steps();
    Integer theirs = other.steps();
    return date().equals(other.date()) && Math.abs(distance_m() - other.distance_m()) < 0.005 && (own == null || theirs == null || own.equals(theirs));
  }
}
