package boundwright.approach;

import boundwright.approach.aim.AimDesk;
import boundwright.approach.board.BoardGaps;
import boundwright.approach.board.BoardSpread;
import boundwright.approach.board.StartAdvice;
import boundwright.approach.run.LearnedShifts;
import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.approach.run.RunThroughLog;
import boundwright.approach.run.RunUpPlan;
import boundwright.approach.run.RunUpSettings;
import boundwright.approach.run.RunwaySpread;
import boundwright.approach.run.SpeedBySteps;
import boundwright.approach.run.StepModel;
import boundwright.approach.weather.DayWeather;
import boundwright.approach.weather.Weather;
import boundwright.approach.weather.WeatherLog;
import boundwright.athlete.Athlete;
import boundwright.athlete.AthleteRepository;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Profile;
import boundwright.athlete.growth.Grown;
import boundwright.athlete.growth.GrowthDesk;
import boundwright.jump.Event;
import boundwright.jump.JumpEntry;
import boundwright.jump.JumpLimits;
import boundwright.jump.JumpLog;
import boundwright.jump.takeoff.LongJump;
import boundwright.jump.takeoff.LongJumpLog;
import boundwright.quantity.Decimals;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Says where the full run-up starts and is checked, from an athlete's run-throughs and timed run-ups. */
public final class ApproachDesk {
  /** Board gap aimed at until the athlete's own aim is told [m] (about 8 cm are given away in finals; read). */
  public static final double USUAL_AIM_M = 0.08;
  private static final int MEET_ATTEMPTS = 6;
  /** Steps grow as the body does, one to one, to this standard deviation of the exponent (judgement). */
  private static final double STEPS_FOLLOW_SD = 0.5;
  /** Growth below this is not spoken of [%]: a reading's error is as large. */
  private static final double TOLD_PERCENT = 0.5;

  private final RunThroughLog runThroughs;
  private final JumpLog jumps;
  private final LongJumpLog longJumps;
  private final AthleteRepository athletes;
  private final AimDesk aims;
  private final GrowthDesk growth;
  private final boolean told;
  private final WeatherLog weather;

  /**
   * Works on these.
   *
   * @param growth of everybody
   * @param told whether whoever reads it may be told of growth; if not the marks are the same, without this reason
   */
  public ApproachDesk(
      RunThroughLog runThroughs, JumpLog jumps, LongJumpLog longJumps, AthleteRepository athletes, AimDesk aims, WeatherLog weather, GrowthDesk growth,
      boolean told) {
    this.growth = growth;
    this.told = told;
    this.runThroughs = runThroughs;
    this.jumps = jumps;
    this.longJumps = longJumps;
    this.athletes = athletes;
    this.aims = aims;
    this.weather = weather;
  }

  /** The plan for the triple jump, see {@link #answer(Athlete, Event, Integer, Double, Double)}. */
  public ApproachAnswer answer(Athlete athlete, @Nullable Integer steps, @Nullable Double speed, @Nullable Double aim_m) {
    return answer(athlete, Event.TRIPLE_JUMP, steps, speed, aim_m);
  }

  /**
   * The plan. Run-throughs of the other event tell nothing; taped run-ups, which are of neither, tell both.
   *
   * @param event which jump
   * @param steps 1 to 26; null for the steps of most run-throughs, else of the newest jump, else the
   *     athlete's rung
   * @param speed wanted at the board [m/s], instead of steps: the fewest steps that reach it; or null
   * @param aim_m board gap aimed at [m]; null for the athlete's own best aim, or else {@link #USUAL_AIM_M}
   * @throws RefusedException if both steps and speed are given, they are out of range, or there is nothing to go by
   */
  public ApproachAnswer answer(
      Athlete athlete, Event event, @Nullable Integer steps, @Nullable Double speed, @Nullable Double aim_m) {
    if (steps != null && speed != null) {
      throw new RefusedException("Give the steps or the speed at the board, not both: the one follows from the other.");
    }
    RunUpSettings settings = runThroughs.settings();
    List<RunThroughEntry> kept = runThroughs.runThroughs(athlete.id()).stream().filter(r -> r.event() == event).toList();
    List<RunThrough> runs = kept.stream().map(RunThroughEntry::run).toList();
    Profile profile = athletes.profile(athlete);
    List<Dated> measured = withTaped(kept, profile.runUps());
    List<Grown> grown = growth.since(athlete.id(), measured.stream().map(Dated::date).toList());
    Grown newest = grown.stream().max(Comparator.comparing(Grown::since)).orElse(null);
    StepModel model =
        StepModel.of(
            measured.stream().map(Dated::run).toList(),
            grown.isEmpty() ? Collections.nCopies(measured.size(), 1.0) : grown.stream().map(Grown::ratio).toList(),
            newest == null ? 0 : Math.hypot(STEPS_FOLLOW_SD * (newest.ratio() - 1), newest.sd() * (newest.ratio() > 1 ? 1 : 0)));
    SpeedBySteps bySteps = SpeedBySteps.of(profile.runUps());
    OptionalDouble own = aim_m == null ? aims.fixed_m(athlete, event, MEET_ATTEMPTS) : OptionalDouble.empty();
    double aim = aim_m != null ? aim_m : own.orElse(USUAL_AIM_M);
    int count = speed != null ? bySteps.stepsFor(speed) : steps != null ? steps : usualSteps(athlete, runs, jumped(athlete, event));
    RunUpPlan plan = RunUpPlan.of(model, bySteps, count, aim, settings.checkSteps(), settings.earlyStep());
    List<RunThrough> same = runs.stream().filter(r -> r.steps() == count).toList();
    RunwaySpread spread = null;
    String missing = null;
    try {
      spread = RunwaySpread.of(same);
    } catch (RefusedException tooFew) {
      missing = tooFew.getMessage();
    }
    BoardGaps gaps = atNewestMark(same);
    StartAdvice start = StartAdvice.of(BoardSpread.of(gaps), aim, settings.rhythm_m());
    if (start.verdict() != StartAdvice.Verdict.CANNOT_TELL && (newest == null || newest.percent() < TOLD_PERCENT)) {
      plan = plan.from(newestMark_m(same) + start.moveStart_m());
    }
    return new ApproachAnswer(
        kept,
        plan,
        model,
        spread,
        missing,
        start,
        startFrom(gaps, same),
        shifts(kept),
        from(plan, runs, profile, bySteps, aim_m != null, own.isPresent()) + longer(newest));
  }

  private String longer(@Nullable Grown newest) {
    return newest == null || !told || newest.percent() < TOLD_PERCENT
        ? ""
        : " Grown about " + Decimals.fixed(newest.percent(), 1) + " % since the last measured run-up, of " + newest.since()
            + ": steps are taken to be that much longer, and less surely. Measure a run-up.";
  }

  /** A run and its day. */
  private record Dated(LocalDate date, RunThrough run) {}

  /** A run-through that has no wind of its own ran in its day's. */
  private LearnedShifts shifts(List<RunThroughEntry> kept) {
    Map<LocalDate, Weather> days = new HashMap<>();
    for (DayWeather d : weather.days()) {
      days.put(d.date(), d.weather());
    }
    return LearnedShifts.inWinds(
        kept.stream()
            .map(e -> new LearnedShifts.InWind(e.run(), Weather.gauge(e.run().wind()).or(days.getOrDefault(e.date(), Weather.UNKNOWN))))
            .toList());
  }

  /** A taped run-up tells where its last step fell, seen from its start. */
  private static List<Dated> withTaped(List<RunThroughEntry> runs, List<MeasuredRunUp> taped) {
    List<Dated> out = new ArrayList<>(runs.stream().map(e -> new Dated(e.date(), e.run())).toList());
    for (MeasuredRunUp r : taped) {
      double each = r.length_m() / r.steps();
      if (each >= RunThrough.MIN_STEP_M && each <= RunThrough.MAX_STEP_M) {
        out.add(new Dated(r.date(), RunThrough.toGap(r.steps(), r.length_m(), 0.0, null, null)));
      }
    }
    return out;
  }

  /** Steps of the kept jumps that were noted, oldest first. */
  private List<Integer> jumped(Athlete athlete, Event event) {
    List<Integer> out = new ArrayList<>();
    if (event == Event.LONG_JUMP) {
      for (LongJump j : longJumps.longJumps(athlete.id())) {
        noted(out, j.steps());
      }
    } else {
      for (JumpEntry j : jumps.jumps(athlete.id())) {
        noted(out, j.steps());
      }
    }
    return out;
  }

  private static void noted(List<Integer> out, @Nullable Integer steps) {
    if (steps != null) {
      out.add(steps);
    }
  }

  private static int usualSteps(Athlete athlete, List<RunThrough> runs, List<Integer> jumped) {
    int most = 0;
    int count = 0;
    for (RunThrough r : runs) {
      int same = (int) runs.stream().filter(o -> o.steps() == r.steps()).count();
      if (same > count || (same == count && r.steps() > most)) {
        most = r.steps();
        count = same;
      }
    }
    for (int j = jumped.size() - 1; most == 0 && j >= 0; j--) {
      most = jumped.get(j);
    }
    if (most == 0 && athlete.rung() == 0) {
      throw new RefusedException(
          athlete.name() + " has no run-through and works from standing, so there is no run-up to lay out. Say how many steps, or log a run-through.");
    }
    return most == 0 ? athlete.rung() : most;
  }

  private static double newestMark_m(List<RunThrough> same) {
    return same.get(same.size() - 1).startMark_m();
  }

  /** Gaps as they would be from the newest start mark; runs from so far off that the foot was out of range are left out. */
  private static BoardGaps atNewestMark(List<RunThrough> same) {
    List<Double> measured = new ArrayList<>();
    for (RunThrough r : same) {
      if (!Double.isNaN(r.gap_m())) {
        double at = r.gap_m() + newestMark_m(same) - r.startMark_m();
        if (at >= JumpLimits.MIN_GAP_M && at <= JumpLimits.MAX_GAP_M) {
          measured.add(at);
        }
      }
    }
    return new BoardGaps(measured, List.of());
  }

  private static String startFrom(BoardGaps gaps, List<RunThrough> same) {
    return gaps.attempts() == 0
        ? "No run-through with its board gap yet; the advice needs at least " + StartAdvice.FEWEST + "."
        : "From " + Notes.counted(gaps.attempts(), "run-through") + " with a board gap, seen from the newest start mark"
            + (gaps.attempts() < same.size() ? " (" + (same.size() - gaps.attempts()) + " others could not be used)." : ".")
            + (gaps.attempts() < StartAdvice.FEWEST ? " The advice needs at least " + StartAdvice.FEWEST + "." : "");
  }

  private static String from(
      RunUpPlan plan, List<RunThrough> runs, Profile profile, SpeedBySteps speed, boolean aimGiven, boolean aimOwn) {
    String lengths =
        runs.isEmpty() && profile.runUps().isEmpty()
            ? "The lengths are the makers' first guess: no run-through of this athlete is kept yet."
            : "From " + Notes.counted(runs.size(), "run-through") + " (" + runs.stream().filter(r -> r.steps() == plan.steps()).count() + " of "
                + Notes.counted(plan.steps(), "step") + ") and " + Notes.counted(profile.runUps().size(), "taped run-up") + ".";
    return lengths
        + (speed.measured() == 0 ? " The speed is a first guess: no run-up was timed." : " The speed is from " + Notes.counted(speed.measured(), "timed run-up") + ".")
        + (aimGiven ? " The aim was given." : aimOwn ? " The aim is the athlete's own." : " The aim is the usual one, until the athlete's own is told.");
  }
}
