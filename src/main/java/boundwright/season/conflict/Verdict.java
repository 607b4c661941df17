package boundwright.season.conflict;

import java.util.List;

/**
 * What came of looking for clashes.
 *
 * @param clashes found, each proven
 * @param more whether an athlete, or the places, reached the most clashes that are told, so that there may be more
 * @param undecided athletes, and weeks of the places, for which neither a clash nor a choice that keeps everything was found
 * @param together whether a plan of all athletes at their places was found that keeps everything; where it is false and nothing clashes,
 *     every athlete alone and the places of every week can be kept, but not proven together
 * @param checks how many questions were asked of the search
 */
public record Verdict(List<Clash> clashes, boolean more, List<String> undecided, boolean together, int checks) {
  /** Takes copies. */
  public Verdict {
    clashes = List.copyOf(clashes);
    undecided = List.copyOf(undecided);
  }
}
