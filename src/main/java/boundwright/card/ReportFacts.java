package boundwright.card;

import boundwright.flight.Rep;
import boundwright.load.DayLoad;
import boundwright.load.GuardOverride;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare;
import boundwright.load.SessionRating;
import boundwright.load.Verdict;
import boundwright.readiness.GateAnswer;
import boundwright.readiness.TestScore;
import boundwright.technique.Fault;
import boundwright.technique.FootContact;
import java.util.List;

/**
 * What a report is made from.
 *
 * @param guard the verdict for the day
 * @param care growing, pains, holds
 * @param overrides what the coach decided otherwise, newest first
 * @param settings of the guard
 * @param days with work, oldest first; see {@link boundwright.load.LegWeek#daysNeeded}
 * @param ratings of the last four weeks at least
 * @param answers of the gate
 * @param gateDays how many days of reps the gate looks at
 * @param reps of the weeks that are drawn, oldest first, judged or not
 * @param ownFaults that the coach added
 * @param squadScores test scores of the whole squad; the error of a test is learned from all
 * @param taught how the foot is taught to meet the ground
 */
public record ReportFacts(
    Verdict guard,
    LegCare care,
    List<GuardOverride> overrides,
    GuardSettings settings,
    List<DayLoad> days,
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
    days = List.copyOf(days);
    ratings = List.copyOf(ratings);
    answers = List.copyOf(answers);
    reps = List.copyOf(reps);
    ownFaults = List.copyOf(ownFaults);
    squadScores = List.copyOf(squadScores);
  }
}
