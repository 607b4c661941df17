package boundwright.technique;

import boundwright.athlete.Athlete;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What this coach teaches where schools differ: the foot's contact, by approach. What is looked for, ticked and told of a film follows
 * it.
 *
 * @param wholeFootFrom approach steps from which the whole foot with a set ankle is taught, 0 to 26; null: never, the heel always leads
 */
public record Teaching(@Nullable Integer wholeFootFrom) {
  /** Heel leads, foot rolls to the toe, from any approach (common practice). */
  public static final Teaching DEFAULT = new Teaching(null);

  /** Refuses steps out of range. */
  public Teaching {
    if (wholeFootFrom != null) {
      Athlete.checkSteps(wholeFootFrom);
    }
  }

  /** How the foot is taught to meet the ground from so many approach steps. */
  public FootContact at(int approachSteps) {
    return wholeFootFrom != null && approachSteps >= wholeFootFrom ? FootContact.WHOLE_FOOT : FootContact.HEEL_ROLLS;
  }

  /** The same where no approach is meant. */
  public FootContact anywhere() {
    return wholeFootFrom == null ? FootContact.HEEL_ROLLS : wholeFootFrom == 0 ? FootContact.WHOLE_FOOT : FootContact.AS_TAUGHT;
  }

  /** What to look for, in the order of {@link TeachingPoint}, for a card on which all approaches stand together. */
  public List<String> lookFor() {
    return Arrays.stream(TeachingPoint.values())
        .map(
            p ->
                p == TeachingPoint.HEEL_ROLLS && anywhere() == FootContact.AS_TAUGHT
                    ? "Heel, roll to the toe; whole foot from " + wholeFootFrom + " steps"
                    : p.lookFor(anywhere()))
        .toList();
  }
}
