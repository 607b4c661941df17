package boundwright.jump;

import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * How an athlete shares the jump out, what each contact costs, and where the metres are.
 *
 * @param jumps as kept, oldest first; may be empty
 * @param threshold class threshold that was used [percentage points]
 * @param line the contact line; with no contacts of this athlete it is the squad's, or the makers' first guess
 * @param squadAthletes how many others of the squad the line is drawn towards; 0 for the makers' first guess
 * @param best the best shares, or null when there are too few jumps with speeds
 * @param worth what small changes are worth, or empty
 * @param cannotTell why there are no best shares, a sentence; null when there are
 */
public record PhaseAnswer(
    List<JumpEntry> jumps,
    double threshold,
    ContactLine line,
    int squadAthletes,
    @Nullable BestShares best,
    List<WhereMetres.Worth> worth,
    @Nullable String cannotTell) {
  /** Takes copies. */
  public PhaseAnswer {
    jumps = List.copyOf(jumps);
    worth = List.copyOf(worth);
  }

  /** The newest jump, or null without any. */
  public @Nullable JumpEntry newest() {
    return jumps.isEmpty() ? null : jumps.get(jumps.size() - 1);
  }

  /** Jumps with speeds. */
  public int withSpeeds() {
    return (int) jumps.stream().filter(j -> j.speeds() != null).count();
  }

  /** The sentence for the coach: the best shares, or that the data cannot tell and what they need. */
  public String words(LengthUnit unit) {
    BestShares shares = best;
    String why = cannotTell;
    return shares == null ? "The data cannot tell. " + (why == null ? "" : why) : shares.words(unit);
  }

  /** What the contact line rests on. */
  public String from() {
    String own = line.contacts() == 0 ? "No contact of this athlete is measured" : "From " + Notes.counted(line.contacts(), "measured contact");
    String others =
        squadAthletes == 0
            ? "drawn towards the makers' first guess"
            : "drawn towards " + Notes.counted(squadAthletes, "other athlete") + " of the squad";
    String form =
        line.choice().told()
            ? "The loss goes " + line.form().label() + ", told by leaving contacts out."
            : "The data cannot tell which form of the line is better; used is the loss " + line.form().label() + ".";
    return own + ", " + others + ". " + form
        + String.format(Locale.ROOT, " A1 %.2f (%.2f to %.2f).", line.slope().p50(), line.slope().p05(), line.slope().p95());
  }
}
