package boundwright.web.athlete;

import boundwright.load.Answer;
import boundwright.load.DayVerdict;
import boundwright.load.Finding;
import boundwright.load.GuardOverride;
import boundwright.load.Verdict;
import boundwright.web.page.Figures;
import java.util.List;
import java.util.stream.Stream;

/**
 * The one verdict of the day, and what was decided otherwise.
 *
 * @param day so far and with the plan
 * @param open the concerns that the coach has not answered today
 * @param beside what a rep that is shown but not planned would add
 * @param kept what the coach decided otherwise today, newest first
 * @param wayBack what the stage of a leg on its way back allows today, a sentence each
 * @param token makes a double tap one decision
 * @param refusedRule the rule of a decision that was not taken, or empty
 * @param refused why it was not taken, or empty
 * @param reason what was written with it
 */
public record GuardView(
    DayVerdict day,
    List<Finding> open,
    List<Finding> beside,
    List<GuardOverride> kept,
    List<String> wayBack,
    String token,
    String refusedRule,
    String refused,
    String reason) {
  /** The same after a decision that was not taken. */
  GuardView refused(String rule, String why, String written) {
    return new GuardView(day, open, beside, kept, wayBack, token, rule, why, written);
  }

  /** The verdict of the day with the plan. */
  public Verdict verdict() {
    return day.withPlan();
  }

  /** The answer in one word, for the style: the strictest of the day and of the rep that is shown. */
  public String word() {
    return beside.stream().map(Finding::answer).reduce(day.answer(), Answer::or).label();
  }

  /** Whether it stands before the marks: a refusal that was not answered, or a decision that was not taken. */
  public boolean first() {
    return !refused.isEmpty() || Stream.concat(open.stream(), beside.stream()).anyMatch(f -> f.answer() == Answer.REFUSED);
  }

  /** Whether every concern was answered with a reason. */
  public boolean answered() {
    return open.isEmpty() && !verdict().concerns().isEmpty();
  }

  /** The line behind both halves: the strictest finding that is still open. */
  public String lead() {
    if (!beside.isEmpty()) {
      return "This drill is not in the plan. " + beside.get(0).brief();
    }
    if (!open.isEmpty()) {
      int others = open.size() - 1;
      return open.get(0).brief() + (others == 0 ? "" : others == 1 ? " And one more." : " And " + others + " more.");
    }
    return answered() ? "You go on all the same: " + kept.get(0).reason() : "";
  }

  /** Whether the coach may decide otherwise about this finding. */
  public boolean mayOverride(Finding f) {
    return !day.held() && f.mayBeOverridden() && open.contains(f);
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
