package boundwright.web.athlete;

import boundwright.load.Answer;
import boundwright.load.Finding;
import boundwright.load.GuardOverride;
import boundwright.load.Verdict;
import boundwright.web.page.Figures;
import java.util.List;

/**
 * What the guard says of the day: what was done with what is still planned.
 *
 * @param verdict the answer with its findings, strictest first
 * @param open the concerns that the coach has not answered today
 * @param done contacts logged today
 * @param kept what the coach decided otherwise today, newest first
 * @param token makes a double tap one decision
 * @param refusedRule the rule of a decision that was not taken, or empty
 * @param refused why it was not taken, or empty
 * @param reason what was written with it
 */
public record GuardView(
    Verdict verdict,
    List<Finding> open,
    int done,
    List<GuardOverride> kept,
    String token,
    String refusedRule,
    String refused,
    String reason) {
  /** The same after a decision that was not taken. */
  GuardView refused(String rule, String why, String written) {
    return new GuardView(verdict, open, done, kept, token, rule, why, written);
  }

  /** The answer in one word, for the style too. */
  public String word() {
    return verdict.answer().label();
  }

  /** Whether it stands before the marks: a refusal that was not answered, or a decision that was not taken. */
  public boolean first() {
    return !refused.isEmpty() || open.stream().anyMatch(f -> f.answer() == Answer.REFUSED);
  }

  /** Whether every concern was answered with a reason. */
  public boolean answered() {
    return open.isEmpty() && !verdict.concerns().isEmpty();
  }

  /** The line behind the word: the strictest finding that is still open. */
  public String lead() {
    if (!open.isEmpty()) {
      int others = open.size() - 1;
      return open.get(0).said() + (others == 0 ? "" : others == 1 ? " And one more." : " And " + others + " more.");
    }
    return answered() ? "You go on all the same: " + kept.get(0).reason() : counted();
  }

  /** The contacts that were judged. */
  public String counted() {
    return done + " contacts so far today, " + verdict.contacts() + " with what is planned.";
  }

  /** Whether the coach may decide otherwise about this finding. */
  public boolean mayOverride(Finding f) {
    return !verdict.held() && f.mayBeOverridden() && open.contains(f);
  }

  /** Whether a decision about this finding was just not taken. */
  public boolean isRefused(Finding f) {
    return !refused.isEmpty() && mayOverride(f) && f.rule().name().equals(refusedRule);
  }

  /** The reason with which the coach went on against this rule today, or empty. */
  public String reasonFor(Finding f) {
    return open.contains(f) ? "" : kept.stream().filter(o -> o.rule() == f.rule()).map(GuardOverride::reason).findFirst().orElse("");
  }

  /** Value and limit with their unit; empty where the sentence says it all. */
  public String figures(Finding f) {
    return switch (f.unit()) {
      case "rank", "holds" -> "";
      default -> Figures.whole(f.value()) + " " + f.unit() + ", limit " + Figures.whole(f.limit());
    };
  }
}
