package boundwright.meet;

import boundwright.approach.aim.AimAnswer;
import boundwright.approach.aim.AimPolicy;
import boundwright.quantity.LengthUnit;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What the next attempt of an athlete is for. While the first rounds decide who jumps on, attempts are counted, the
 * athlete's and the rivals', up to there.
 *
 * @param athlete as on the list
 * @param attemptsLeft 0 when out or done
 * @param best_m best so far [m], or null
 * @param purpose in words: the longest best, or a place among those who jump on
 * @param advice where to aim, or null when there is no attempt left or the data cannot tell
 * @param startShift_m where to set the start mark for it, from the planned one [m], + back; null with {@code advice}
 * @param move_m how far that is from where it stood at the last attempt [m], + back; null with {@code advice}
 * @param needed_m the mark that makes the place nine times in ten [m], when a place is the purpose and a mark can; or null
 * @param rivals what the marks of those nearest in the placings mean; empty when the data cannot tell
 * @param answer the aim from the log
 * @param why why there is no advice, a sentence; null when there is
 */
public record MeetAim(
    String athlete,
    int attemptsLeft,
    @Nullable Double best_m,
    String purpose,
    AimPolicy.@Nullable Advice advice,
    @Nullable Double startShift_m,
    @Nullable Double move_m,
    @Nullable Double needed_m,
    List<RivalMeaning> rivals,
    AimAnswer answer,
    @Nullable String why) {
  private static final double LEAST_MOVE_M = 0.01;

  /** Takes a copy. */
  public MeetAim {
    rivals = List.copyOf(rivals);
  }

  /** The sentence for the coach. */
  public String words(LengthUnit unit) {
    AimPolicy.Advice told = advice;
    Double by = move_m;
    if (told == null || by == null) {
      return why == null ? "" : why;
    }
    String what =
        Math.abs(by) < LEAST_MOVE_M
            ? "Leave the start where it is."
            : "Move the start " + (by > 0 ? "back " : "forward ") + length(unit, Math.abs(by)) + ".";
    return what
        + String.format(Locale.ROOT, " Aim %s behind the line: foul chance %.0f %%.", length(unit, told.aim_m()), 100 * told.foulChance())
        + (told.worthwhile() ? "" : " This attempt can hardly change anything.");
  }

  private static String length(LengthUnit unit, double metres) {
    return unit == LengthUnit.METRES ? String.format(Locale.ROOT, "%.0f cm", 100 * metres) : unit.write(metres);
  }
}
