package boundwright.season.ladder;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.Gate;
import boundwright.readiness.GateAnswer;
import boundwright.readiness.GateCase;
import boundwright.readiness.GateRep;
import boundwright.readiness.GateRules;
import boundwright.readiness.LoadAnswer;
import boundwright.readiness.TimeHere;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * An invented athlete who learns, to try the season's expectations on. A process of its own that knows nothing of the model: a true
 * clean share that rises with each attended session towards a ceiling, quicker or slower by athlete and by approach, a form of the day,
 * reps that come out clean or not, sessions missed; and the real gate, asked after each session. No load and no pain.
 *
 * @param id number
 * @param sessionsToLearn sessions in which two thirds of what there is to learn are learned, on average over approaches
 * @param approachSd how much that differs from approach to approach, SD of the logarithm
 * @param start clean share on the first day of a new approach
 * @param ceiling clean share in the end
 * @param formSd SD of a day's form, on the log-odds
 * @param reps looked at in a session
 * @param days training days
 * @param attendance share of them attended
 */
record Learner(
    long id, double sessionsToLearn, double approachSd, double start, double ceiling, double formSd, int reps, Set<DayOfWeek> days, double attendance) {
  private static final Source INVENTED = new Source("invented", "invented", "simulation", Standing.JUDGEMENT);
  private static final LoadAnswer CLEAR = new LoadAnswer(false, "allowed", INVENTED, false, "none", INVENTED);
  private static final Gate GATE = new Gate(GateRules.DEFAULT);

  /** A stay as it went: attended days, and the day on which the gate let them up, or null if it did not until the last day. */
  record Went(List<LocalDate> sessions, @Nullable LocalDate ready) {}

  /** Any athlete of a squad whose pace is {@code pace} times the usual. */
  static Learner any(long id, double pace, double attendance, Random r) {
    double learns = 6 * pace * Math.exp(0.35 * r.nextGaussian());
    return new Learner(
        id, learns, 0.25, 0.55 + 0.2 * r.nextDouble(), 0.90 + 0.08 * r.nextDouble(), 0.3, 5 + r.nextInt(3),
        Set.of(DayOfWeek.MONDAY, DayOfWeek.THURSDAY), attendance);
  }

  /** Works from an approach that is new to them, from a day on until the gate lets them up, at most until {@code last}. */
  Went stay(int steps, LocalDate from, LocalDate last, Random r) {
    double learns = sessionsToLearn * Math.exp(approachSd * r.nextGaussian());
    List<LocalDate> sessions = new ArrayList<>();
    List<GateRep> log = new ArrayList<>();
    for (LocalDate day = from; !day.isAfter(last); day = day.plusDays(1)) {
      if (!days.contains(day.getDayOfWeek()) || r.nextDouble() >= attendance) {
        continue;
      }
      double share = ceiling - (ceiling - start) * Math.exp(-sessions.size() / learns);
      double odds = share / (1 - share) * Math.exp(formSd * r.nextGaussian());
      for (int i = 0; i < reps; i++) {
        log.add(new GateRep(day, r.nextDouble() < odds / (1 + odds), Double.NaN));
      }
      sessions.add(day);
      // before the least stay is over the gate cannot answer anything but stay
      TimeHere time = TimeHere.of(sessions, steps, false, GateRules.DEFAULT.stay(), day);
      if (time.met()
          && GATE.answer(new GateCase(DrillFamily.ALTERNATE, steps, log, time, null, CLEAR, day)).decision() == GateAnswer.Decision.ADD_TWO_STEPS) {
        return new Went(List.copyOf(sessions), day);
      }
    }
    return new Went(List.copyOf(sessions), null);
  }
}
