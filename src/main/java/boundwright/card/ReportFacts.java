package boundwright.card;

import boundwright.flight.Rep;
import boundwright.load.Band;
import boundwright.load.DayVerdict;
import boundwright.load.GuardOverride;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.History;
import boundwright.load.rating.SessionRating;
import boundwright.readiness.GateAnswer;
import boundwright.readiness.TestScore;
import boundwright.technique.Fault;
import boundwright.technique.FootContact;
import java.util.List;

/**
 * What a report is made from.
 *
 * @param day the verdict of the day, so far and with the plan
 * @param care growing, pains, holds
 * @param overrides what the coach decided otherwise, newest first
 * @param settings the limits and how contacts are weighed
 * @param session limits of a session for this athlete [jump contacts]
 * @param weights how this athlete's contacts are weighed
 * @param history days with work; see {@link boundwright.load.account.LegWeek#daysNeeded}
 * @param ratings of the last four weeks at least
 * @param answers of the gate
 * @param gateDays how many days of reps the gate looks at
 * @param reps of the weeks that are drawn, oldest first, judged or not
 * @param ownFaults that the coach added
 * @param squadScores test scores of the whole squad; the error of a test is learned from all
 * @param taught how the foot is taught to meet the ground
 */
public record ReportFacts(
    DayVerdict day,
    LegCare care,
    List<GuardOverride> overrides,
    GuardSettings settings,
    Band session,
    ContactWeights weights,
    History history,
    List<SessionRating> ratings,
    List<GateAnswer> answers,
    int gateDays,
    List<Rep> reps,
    List<Fault> ownFaults,
    List<TestScore> squadScores,
    FootContact taught) {
  /** Takes copies. */
  public ReportFacts {
    overrides = List.copyOf(overrides);
    ratings = List.copyOf(ratings);
    answers = List.copyOf(answers);
    reps = List.copyOf(reps);
    ownFaults = List.copyOf(ownFaults);
    squadScores = List.copyOf(squadScores);
  }
}
