package boundwright.load;

import java.util.Comparator;
import java.util.List;

/**
 * The guard's answer with all that it rests on.
 *
 * @param answer the strictest of the findings
 * @param findings one per rule that had something to judge, strictest first
 * @param contacts contacts of the session that was judged
 */
public record Verdict(Answer answer, List<Finding> findings, int contacts) {
  /** Sorts the findings, strictest first. */
  static Verdict of(List<Finding> findings, int contacts) {
    Answer worst = findings.stream().map(Finding::answer).reduce(Answer.ALLOWED, Answer::or);
    return new Verdict(
        worst, findings.stream().sorted(Comparator.comparing(Finding::answer).reversed()).toList(), contacts);
  }

  /** The findings that are not simply allowed, strictest first. */
  public List<Finding> concerns() {
    return findings.stream().filter(f -> f.answer() != Answer.ALLOWED).toList();
  }

  /** Whether a refusal stands that no coach can override. */
  public boolean held() {
    return findings.stream().anyMatch(f -> f.answer() == Answer.REFUSED && !f.mayBeOverridden());
  }
}
