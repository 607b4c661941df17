package boundwright.meet;

import boundwright.evidence.JumpSources;
import boundwright.evidence.Source;
import boundwright.jump.Event;
import boundwright.jump.MeasureRule;
import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;
import org.jspecify.annotations.Nullable;

/**
 * The rules of one meet; editions and levels differ, so all are settings.
 *
 * @param event which jump
 * @param combined the combined event that a long jump is part of: nobody is left out after the first rounds; or null
 * @param firstRounds trials of everybody when there are more than {@code finalists}, 1 to 6
 * @param rounds trials in all, {@code firstRounds} to 6
 * @param finalists who go on, 1 to 24
 * @param order of the later rounds
 * @param measure how distances are rounded
 * @param trialSeconds time per trial [s], 10 to 300; editions differ
 */
public record MeetRules(
    Event event, @Nullable Combined combined, int firstRounds, int rounds, int finalists, FinalOrder order, MeasureRule measure, int trialSeconds) {
  /** Three and three, best eight, one minute (read; the order of the later rounds from memory). */
  public static final MeetRules DEFAULT = new MeetRules(3, 6, 8, FinalOrder.WORST_FIRST_TWICE, MeasureRule.CENTIMETRE, 60);

  /** Attempts in a combined event (read). */
  public static final int COMBINED_ROUNDS = 3;

  /** Rules of a triple jump. */
  public MeetRules(int firstRounds, int rounds, int finalists, FinalOrder order, MeasureRule measure, int trialSeconds) {
    this(Event.TRIPLE_JUMP, null, firstRounds, rounds, finalists, order, measure, trialSeconds);
  }

  /** The same rules for an event on its own. */
  public MeetRules of(Event other) {
    return new MeetRules(other, null, firstRounds, rounds, finalists, order, measure, trialSeconds);
  }

  /** The same rules for the long jump of a combined event: so many attempts for everybody, as drawn. */
  public MeetRules of(Combined part, int attempts) {
    return new MeetRules(Event.LONG_JUMP, part, attempts, attempts, finalists, FinalOrder.AS_DRAWN, measure, trialSeconds);
  }

  /** In what order the later rounds are jumped. */
  public enum FinalOrder {
    /** As drawn, throughout. */
    AS_DRAWN("as drawn"),
    /** Worst first after the first rounds, then kept. */
    WORST_FIRST_ONCE("worst first after the first rounds"),
    /** Worst first after the first rounds, and anew before the last round. */
    WORST_FIRST_TWICE("worst first after the first rounds, and anew before the last"),
    /** Worst first anew before each later round. */
    WORST_FIRST_ALWAYS("worst first, anew before each later round");

    private final String label;

    FinalOrder(String label) {
      this.label = label;
    }

    /** In words for the coach. */
    public String label() {
      return label;
    }

    /** Where the orders stood. */
    public Source source() {
      return JumpSources.FINAL_ORDER;
    }
  }

  /** Refuses rules that are none. */
  public MeetRules {
    Limits.count("First rounds", firstRounds, 1, 6, "3 is usual.");
    Limits.count("Rounds", rounds, firstRounds, 6, "6 is usual.");
    Limits.count("Finalists", finalists, 1, 24, "8 is usual.");
    if (combined != null && (event != Event.LONG_JUMP || rounds != firstRounds)) {
      throw new RefusedException(
          "In the long jump of a combined event everybody has the same attempts, usually " + COMBINED_ROUNDS + "; here are " + firstRounds
              + " first rounds of " + rounds + " in a " + event.label() + ". Make both the same.");
    }
    Limits.count("Seconds per trial", trialSeconds, 10, 300, "60 is usual.");
  }
}
