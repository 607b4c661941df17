package boundwright.web.season;

import java.util.List;

/**
 * Reasons.
 *
 * @param title of what
 * @param back where the reader came from
 * @param reasons what decided first stands first
 */
public record WhyView(String title, String back, List<Reason> reasons) {
  /** Takes a copy. */
  public WhyView {
    reasons = List.copyOf(reasons);
  }

  /**
   * A reason.
   *
   * @param of whose and when, or empty
   * @param said a sentence
   */
  public record Reason(String of, String said) {}
}
