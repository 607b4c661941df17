package boundwright.season.desk;

import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.mend.Difference;
import boundwright.season.year.Level;
import java.util.List;
import java.util.Map;

/**
 * A plan that may be published; it is kept nowhere but in the program's memory.
 *
 * @param number which proposal, so that a page that shows an older one cannot publish a newer one unseen
 * @param season of which season
 * @param mend whether it mends what is published; else it was planned anew
 * @param base version that it was made from, 0 for none
 * @param before what the season was planned from until now
 * @param input what it is planned from once this is published
 * @param plan not published yet
 * @param differences days from today on that are not as they were published; empty where nothing is
 * @param judged by level, what the plan is judged by; empty for a mend
 * @param against why it cannot be published, each a sentence; empty if it can
 */
public record Proposal(
    long number,
    long season,
    boolean mend,
    int base,
    SeasonInput before,
    SeasonInput input,
    SeasonPlan plan,
    List<Difference> differences,
    Map<Level, Long> judged,
    List<String> against) {
  /** Takes copies. */
  public Proposal {
    differences = List.copyOf(differences);
    judged = Map.copyOf(judged);
    against = List.copyOf(against);
  }
}
