package boundwright.readiness;

import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;

/**
 * A season of an invented athlete, to try the gate on: two sessions a week (Monday and Thursday), some reps of one drill
 * from one approach, some of them also from two steps less. It is a process of its own and knows nothing of the gate: a
 * true clean share by session, a form of the day for cleanness (normal on the log-odds) and for length, lengths that
 * tire within the session, drift over the season and scatter from rep to rep.
 *
 * @param share true clean share in session 0, 1, ...
 * @param shareForm SD of a day's form on the log-odds of a clean rep; 0 for none
 * @param loading share of the faulty reps whose fault loads a leg, 0 to 1
 * @param flight mean flight from two steps less at the start [m]
 * @param gain true gain of two steps [m a flight]
 * @param dayForm SD of a day's form on length, relative
 * @param repSd SD of a rep's mean flight [m]
 * @param fatigue change of length over ten reps of a session, relative; negative shrinks
 * @param drift change of length over 24 sessions, relative
 * @param reps looked at in a session, from the approach in question
 * @param measured whether those are measured
 * @param below reps measured from two steps less on the same day, done in turn with the first ones
 */
record SeasonAthlete(
    IntToDoubleFunction share,
    double shareForm,
    double loading,
    double flight,
    double gain,
    double dayForm,
    double repSd,
    double fatigue,
    double drift,
    int reps,
    boolean measured,
    int below) {
  static final LocalDate MONDAY = LocalDate.of(2026, 3, 2);
  static final Sequence DRILL = Sequence.parse("RLRLR");

  /** An athlete of constant share who is not measured, six reps a session. */
  static SeasonAthlete of(double share) {
    return of(s -> share);
  }

  static SeasonAthlete of(IntToDoubleFunction share) {
    return new SeasonAthlete(share, 0, 0.5, 2.2, 0.09, 0.025, 0.09, 0, 0, 6, false, 0);
  }

  /** From .60 to .95 in even steps over {@code sessions}, then steady. */
  static IntToDoubleFunction learner(int sessions) {
    return s -> Math.min(0.95, 0.60 + 0.35 * s / (sessions - 1.0));
  }

  /** .90, and .50 from session {@code from} on. */
  static IntToDoubleFunction fall(int from) {
    return s -> s < from ? 0.9 : 0.5;
  }

  SeasonAthlete withForm(double sd) {
    return new SeasonAthlete(share, sd, loading, flight, gain, dayForm, repSd, fatigue, drift, reps, measured, below);
  }

  SeasonAthlete withLoading(double most) {
    return new SeasonAthlete(share, shareForm, most, flight, gain, dayForm, repSd, fatigue, drift, reps, measured, below);
  }

  SeasonAthlete withReps(int many) {
    return new SeasonAthlete(share, shareForm, loading, flight, gain, dayForm, repSd, fatigue, drift, many, measured, below);
  }

  /** Measured, with a scatter [m] and a change over ten reps. */
  SeasonAthlete measured(double sd, double overTenReps) {
    return new SeasonAthlete(share, shareForm, loading, flight, gain, dayForm, sd, overTenReps, drift, reps, true, below);
  }

  /** With reps from two steps less, a true gain [m a flight] and a drift. */
  SeasonAthlete compared(int fromBelow, double trueGain, double driftOfSeason) {
    return new SeasonAthlete(share, shareForm, loading, flight, trueGain, dayForm, repSd, fatigue, driftOfSeason, reps, true, fromBelow);
  }

  static LocalDate day(int session) {
    return MONDAY.plusDays(7L * (session / 2) + (session % 2 == 0 ? 0 : 3));
  }

  /** The reps of one session, in the order done. */
  List<Rep> session(int session, int steps, Random r) {
    LocalDate date = day(session);
    double p = share.applyAsDouble(session);
    double form = shareForm * r.nextGaussian();
    double clean = p >= 1 ? 1 : 1 / (1 + (1 - p) / p * Math.exp(-form));
    double level = flight * (1 + dayForm * r.nextGaussian()) * (1 + drift * session / 24);
    List<Rep> out = new ArrayList<>();
    int place = 0;
    for (int i = 0; i < reps; i++) {
      // in turn, and now one first, now the other
      boolean lowFirst = (session + i) % 2 == 0;
      if (i < below && lowFirst) {
        out.add(rep(date, steps - 2, level, place++, true, false, r));
      }
      boolean good = r.nextDouble() < clean;
      out.add(rep(date, steps, level + gain, place++, measured, !good, r));
      if (i < below && !lowFirst) {
        out.add(rep(date, steps - 2, level, place++, true, false, r));
      }
    }
    return out;
  }

  private Rep rep(LocalDate date, int steps, double level, int place, boolean tape, boolean faulty, Random r) {
    double mean = level * (1 + fatigue * place / 10) + repSd * r.nextGaussian();
    // a fault that loads a leg, or one that does not
    List<String> faults = !faulty ? List.of() : List.of(r.nextDouble() < loading ? "foot-under" : "arms-balance");
    Double landing = tape ? Double.valueOf(Math.max(DRILL.size() * 0.5, DRILL.size() * mean)) : null;
    return new Rep(
        0, 1, date, DRILL, steps, Surface.TRACK, List.of(), landing, landing == null ? Outcome.IN : null,
        null, true, faults);
  }
}
