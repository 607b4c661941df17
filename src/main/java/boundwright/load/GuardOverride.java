package boundwright.load;

import boundwright.quantity.RefusedException;
import java.time.LocalDate;

/**
 * A coach went on against a caution or a refusal, with a reason, kept for good.
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId for whom
 * @param date the day it is for
 * @param rule the rule that was overridden
 * @param answer what the guard had said
 * @param said the guard's sentence, as the coach read it
 * @param reason why, in the coach's words, {@value #LEAST_REASON} to 300 characters
 */
public record GuardOverride(
    long id, long athleteId, LocalDate date, Finding.Rule rule, Answer answer, String said, String reason) {
  /** Shortest reason that is taken. */
  public static final int LEAST_REASON = 8;

  /** Refuses empty reasons and rules that no coach may override. */
  public GuardOverride {
    reason = reason.strip();
    if (rule == Finding.Rule.MEDICAL_HOLD || rule == Finding.Rule.REFER) {
      throw new RefusedException(
          "A " + rule.label() + " cannot be overridden by a coach. It ends with a named clinician and a date.");
    }
    if (answer == Answer.ALLOWED) {
      throw new RefusedException("It is allowed: there is nothing to decide otherwise.");
    }
    if (reason.length() < LEAST_REASON || reason.length() > 300) {
      throw new RefusedException(
          "A reason has " + LEAST_REASON + " to 300 characters; this one has " + reason.length()
              + ". Write why you go on: you will read it again.");
    }
  }
}
