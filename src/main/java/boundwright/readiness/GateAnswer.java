package boundwright.readiness;

import java.util.List;

/**
 * What the gate answers for one athlete in one family of drills.
 *
 * @param family of drills
 * @param rung approach steps the athlete works from
 * @param decision add two steps, stay, or go back two
 * @param why a sentence: what decided, and for {@code STAY} what is still missing in reps and days
 * @param missingReps clean reps still missing, if nothing else is; 0 when none or when reps alone would not do
 * @param missingDays days on which they have to be done
 * @param evidence all that was asked
 */
public record GateAnswer(
    DrillFamily family, int rung, Decision decision, String why, int missingReps, int missingDays, List<Evidence> evidence) {
  /** The three answers. */
  public enum Decision {
    /** Add two steps. */
    ADD_TWO_STEPS("add two steps", "add-two-steps"),
    /** Stay on this rung. */
    STAY("stay", "stay"),
    /** Go back two steps. */
    GO_BACK("go back two", "go-back");

    private final String label;
    private final String key;

    Decision(String label, String key) {
      this.label = label;
      this.key = key;
    }

    /** The answer in words. */
    public String label() {
      return label;
    }

    /** The answer as written in JSON. */
    public String key() {
      return key;
    }
  }

  /** Takes a copy. */
  public GateAnswer {
    evidence = List.copyOf(evidence);
  }
}
