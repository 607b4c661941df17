package boundwright.flight;

import boundwright.athlete.Athlete;
import boundwright.athlete.KnownMark;
import boundwright.athlete.Level;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.footfall.Flight;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;

/** What is believed of an athlete's flights before any rep: from the level, the others of the squad, known marks and timed run-ups (judgement). */
final class FirstGuess {
  /** How far a first flight off both feet may be from one off the take-off foot, as a part of its length (judgement). */
  private static final double BOTH_FEET_SD = 0.15;

  private FirstGuess() {}

  static FlightModel of(Profile profile, SquadPrior squad) {
    Level level = profile.athlete().level().guessedAs();
    Scatter scatter = squad.scatter(profile.athlete().id());
    Belief b = squad.traits(profile.athlete().id());
    b.reset(Traits.DAY, square(Spread.day(level)) * scatter.mean(Scatter.DAY));
    for (KnownMark mark : profile.knownMarks()) {
      Sequence sequence = mark.kind().sequence();
      if (profile.athlete().takeOffFoot() == Foot.LEFT) {
        sequence = sequence.mirrored();
      }
      learnKnownMark(b, level, sequence, mark);
    }
    for (MeasuredRunUp r : profile.runUps()) {
      if (r.speed_mps() != null) {
        double[] h = new double[Traits.COUNT];
        h[Traits.LEVEL] = 1;
        h[Traits.RUNG + r.steps()] = 1;
        double quicker = r.speed_mps() / (NominalFlights.speedOf(level) * NominalFlights.entrySpeed(r.steps())) - 1;
        b.measure(h, 0.7 * quicker, 0.08 * 0.08);
      }
    }
    b.reset(Traits.DAY, square(Spread.day(level)) * scatter.mean(Scatter.DAY));
    return new FlightModel(
        level, profile.growingFast(), squad.number(), b, scatter, null, 0, squad.breaks(profile.athlete().id()), 0, 0, new int[Athlete.MAX_STEPS + 1],
        new int[Surface.values().length], DrillSlots.NONE);
  }

  /**
   * A known mark is the best of several tries and done at full effort, so it is longer than a usual rep: 1.5 % for a
   * standing test, 4 % for a best triple jump, each uncertain by as much again and more (judgement). The first flight of a test that
   * began off both feet is no flight off a leg: it tells of the level alone, within {@value #BOTH_FEET_SD} of its length (judgement).
   */
  private static void learnKnownMark(Belief b, Level level, Sequence sequence, KnownMark mark) {
    boolean best = mark.kind() == KnownMark.Kind.BEST_TRIPLE;
    double usual = mark.distance_m() * (best ? 0.96 : 0.985);
    double[] nominal = NominalFlights.lengths(level, sequence, mark.approachSteps());
    double[] h = new double[Traits.COUNT];
    double base = 0;
    double scatter = 0;
    for (Flight f : sequence.flights()) {
      double m = nominal[f.order() - 1];
      base += m;
      scatter += square(m * Spread.flight(level));
      if (mark.bothFeet() && f.order() == 1) {
        h[Traits.LEVEL] += m;
        scatter += square(m * BOTH_FEET_SD);
      } else {
        Traits.add(h, m, sequence, f, mark.approachSteps(), Surface.TRACK, -1);
      }
    }
    double own = square(usual * (best ? 0.05 : 0.03)) + scatter + square(base * Spread.rep(level));
    b.measure(h, usual - base, own);
  }

  private static double square(double x) {
    return x * x;
  }
}
