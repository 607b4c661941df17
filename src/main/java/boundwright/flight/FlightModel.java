package boundwright.flight;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.footfall.Flight;
import boundwright.footfall.Sequence;
import boundwright.quantity.Rows;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.jspecify.annotations.Nullable;

/**
 * How long this athlete's flights are, learned from what a coach can log. Immutable.
 *
 * <p>A flight is {@code nominal x (1 + traits + drill + day + rep + own scatter)}: a normal linear model, so a measured
 * footprint or landing is one closed-form update; a tap (short, in, late) tells on which side of the sand's edge the
 * landing and the last contact fell, and moments are matched. The day's deviation is one unknown that starts afresh
 * each day, the rep's moves all flights of a rep together, a drill's stays with the drill. How widely this athlete
 * scatters, by day, rep and flight, is learned too ({@link Scatter}); a rep that looks abandoned is learned only as far as
 * it is believed ({@link RepEvidence}); between days the level moves with a learned speed, and days off make it less sure
 * ({@link Wander}). No history is refitted: {@link #learn} costs the same at rep 1 and rep 10 000. Nothing is random.
 *
 * <p>The prior stands on the level, and on known marks and timed run-ups where there are some (standing: judgement).
 */
public final class FlightModel {
  /** Error variance of a tape laid to a footprint or a landing [m2], 2.5 cm (judgement). */
  private static final double TAPE = 0.025 * 0.025;

  /**
   * A rep's own variance is taken to be wider by this when forecasting: fatigue within a session and pushes that pay for each
   * other are in no trait (judgement, settled on simulated seasons).
   */
  static final double UNMODELLED = 1.15;

  private final Level level;
  private final boolean growingFast;
  private final long squad;
  private final Belief belief;
  private final Scatter scatter;
  private final @Nullable LocalDate lastDate;
  private final double unsettled;
  private final Breaks breaks;
  private final int reps;
  private final int measuredReps;
  private final int[] repsAtRung;
  private final int[] repsOn;
  private final DrillSlots drills;

  FlightModel(
      Level level,
      boolean growingFast,
      long squad,
      Belief belief,
      Scatter scatter,
      @Nullable LocalDate lastDate,
      double unsettled,
      Breaks breaks,
      int reps,
      int measuredReps,
      int[] repsAtRung,
      int[] repsOn,
      DrillSlots drills) {
    this.level = level;
    this.growingFast = growingFast;
    this.squad = squad;
    this.belief = belief;
    this.scatter = scatter;
    this.lastDate = lastDate;
    this.unsettled = unsettled;
    this.breaks = breaks;
    this.reps = reps;
    this.measuredReps = measuredReps;
    this.repsAtRung = repsAtRung;
    this.repsOn = repsOn;
    this.drills = drills;
  }

  /** The model before any rep: level, known marks, timed run-ups. */
  public static FlightModel prior(Profile profile) {
    return prior(profile, SquadPrior.NONE);
  }

  /** As {@link #prior(Profile)}, and what the others of the squad say. */
  public static FlightModel prior(Profile profile, SquadPrior squad) {
    return FirstGuess.of(profile, squad);
  }

  /** The model after one more rep; this one is unchanged. Reps come by date and then in the order logged. An abandoned rep teaches nothing. */
  public FlightModel learn(Rep r) {
    if (r.abandoned()) {
      return this; // Somebody who breaks off has shortened or lengthened flights already: no length in it is a usual one.
    }
    Opened today = openDay(r.date());
    DrillSlots slots = drills.with(r.sequence(), r.approachSteps());
    int slot = slots.of(r.sequence(), r.approachSteps());
    if (!slots.same(drills, slot)) {
      int kin = slots.kin(r.sequence(), r.approachSteps());
      today.belief.reset(Traits.DRILL + slot, DrillSlots.variance(kin));
      if (kin >= 0) {
        today.belief.inherit(Traits.DRILL + slot, Traits.DRILL + kin, DrillSlots.KEPT, DrillSlots.variance(kin));
      }
    }
    RepShape shape = RepShape.of(level, r.sequence(), r.approachSteps(), r.surface(), slots);
    double[] positions = positions(r);
    boolean anyMeasured = false;
    for (double p : positions) {
      anyMeasured |= !Double.isNaN(p);
    }
    Scatter learned = today.scatter;
    double whole = 1;
    if (anyMeasured) {
      RepEvidence.Weighed weighed = new RepEvidence(shape, today.belief, positions, TAPE).weigh(learned);
      learned = learned.seen(weighed.likelihood());
      whole = weighed.whole();
    } else if (r.outcome() != null && r.markToSand_m() != null) {
      learned = learned.seen(Taps.likelihood(shape, today.belief, r.outcome(), r.markToSand_m()));
    }
    Belief wide = shape.opened(today.belief, learned.likely(Scatter.REP), learned.likely(Scatter.FLIGHT));
    for (int c = 1; c <= shape.n; c++) {
      if (!Double.isNaN(positions[c - 1])) {
        wide.measure(shape.wide(c), positions[c - 1] - shape.base[c], TAPE);
      }
    }
    tellTap(wide, shape, r, positions);
    Belief known = wide.narrowed(Traits.COUNT);
    int[] rungs = repsAtRung.clone();
    rungs[r.approachSteps()]++;
    int[] surfaces = repsOn.clone();
    surfaces[Traits.place(r.surface())]++;
    return new FlightModel(
        level,
        growingFast,
        squad,
        whole < 1 ? known.mixed(today.belief, whole) : known,
        learned,
        lastDate == null || r.date().isAfter(lastDate) ? r.date() : lastDate,
        today.unsettled,
        today.breaks,
        reps + 1,
        measuredReps + (anyMeasured ? 1 : 0),
        rungs,
        surfaces,
        slots);
  }

  /** Measured positions of contacts 2 to n and the landing [m], NaN where not seen. */
  private static double[] positions(Rep r) {
    int n = r.sequence().size();
    double[] out = new double[n];
    for (int c = 1; c < n; c++) {
      out[c - 1] = c <= r.footprints_m().size() ? r.footprints_m().get(c - 1) : Double.NaN;
    }
    out[n - 1] = r.landing_m() == null ? Double.NaN : r.landing_m();
    return out;
  }

  /** What the tap adds to the lengths: nothing of a place that was measured. */
  private static void tellTap(Belief wide, RepShape shape, Rep r, double[] positions) {
    int n = shape.n;
    if (r.outcome() != null && r.markToSand_m() != null) {
      Taps.tell(
          wide,
          r.outcome(),
          r.markToSand_m(),
          n > 1 && Double.isNaN(positions[n - 2]) ? shape.wide(n - 1) : null,
          shape.base[n - 1],
          Double.isNaN(positions[n - 1]) ? shape.wide(n) : null,
          shape.base[n]);
    }
  }

  /**
   * What measuring or tapping the next rep of this drill on {@code date} would tell; approach steps 0 to 26. Costs a few
   * hundred microseconds.
   */
  public Inquiry inquiry(Sequence sequence, int approachSteps, Surface surface, LocalDate date) {
    Athlete.checkSteps(approachSteps);
    Opened today = openDay(date);
    return Inquiry.of(RepShape.of(level, sequence, approachSteps, surface, drills), today.belief, today.scatter, TAPE);
  }

  private record Opened(Belief belief, Scatter scatter, double unsettled, Breaks breaks) {}

  /** What is believed on {@code date}: on a new day the last day's form is learned from and forgotten, and a fresh one begins. */
  private Opened openDay(LocalDate date) {
    if (lastDate == null || date.equals(lastDate)) {
      return new Opened(belief.copy(), scatter, unsettled, breaks);
    }
    Belief fresh = belief.copy();
    Scatter learned = scatter;
    double usual = square(Spread.day(level));
    double before = usual * scatter.mean(Scatter.DAY);
    double after = fresh.variance(Traits.DAY);
    if (after < 0.98 * before) {
      double form = fresh.mean(Traits.DAY) * before / (before - after);
      learned = scatter.dayOver(form, after * before / (before - after), usual);
    }
    fresh.reset(Traits.DAY, usual * learned.mean(Scatter.DAY));
    double now = unsettled;
    Breaks seen = breaks;
    if (date.isAfter(lastDate)) {
      seen = breaks.dayOver(fresh);
      Wander.Passed passed = Wander.pass(fresh, ChronoUnit.DAYS.between(lastDate, date), unsettled, growingFast, seen);
      now = passed.unsettled();
      seen = passed.open() == null ? seen : seen.opened(passed.open());
    }
    return new Opened(fresh, learned, now, seen);
  }

  /** Where the contacts will fall in a rep on {@code date}; approach steps 0 to 26. */
  public Forecast forecast(Sequence sequence, int approachSteps, Surface surface, LocalDate date) {
    Athlete.checkSteps(approachSteps);
    Opened today = openDay(date);
    RepShape shape = RepShape.of(level, sequence, approachSteps, surface, drills);
    double[] mean = new double[shape.n];
    double[] sd = new double[shape.n];
    double rep = today.scatter.mean(Scatter.REP);
    double flight = today.scatter.mean(Scatter.FLIGHT);
    for (int c = 1; c <= shape.n; c++) {
      mean[c - 1] = shape.base[c] + today.belief.meanOf(shape.where[c]);
      sd[c - 1] = Math.sqrt(today.belief.varianceOf(shape.where[c]) + UNMODELLED * shape.own(c, c, rep, flight));
    }
    double together =
        Rows.dot(shape.where[shape.n - 1], today.belief.times(shape.where[shape.n]))
            + UNMODELLED * shape.own(shape.n - 1, shape.n, rep, flight);
    return new Forecast(sequence, approachSteps, mean, sd, together, Math.sqrt(shape.placement), repsAtRung[approachSteps]);
  }

  /**
   * How much longer the athlete's flights of this sequence are from one rung than from another, on average over many
   * reps: the scatter of single reps is left out, what is not known of the athlete is left in.
   *
   * @param sequence whose flights are compared
   * @param from approach steps of the lower rung
   * @param to approach steps of the higher rung
   */
  public Gain gain(Sequence sequence, int from, int to, Surface surface) {
    double[] low = NominalFlights.lengths(level, sequence, Athlete.checkSteps(from));
    double[] high = NominalFlights.lengths(level, sequence, Athlete.checkSteps(to));
    double[] h = new double[Traits.COUNT];
    double base = 0;
    for (Flight f : sequence.flights()) {
      int i = f.order() - 1;
      Traits.add(h, high[i], sequence, f, to, surface, -1);
      Traits.add(h, -low[i], sequence, f, from, surface, -1);
      base += high[i] - low[i];
    }
    h[Traits.DAY] = 0;
    double mean = base + belief.meanOf(h);
    double sd = Math.sqrt(belief.varianceOf(h));
    double chance = sd > 0 ? new NormalDistribution(mean, sd).probability(0, Double.POSITIVE_INFINITY) : (mean > 0 ? 1 : 0);
    return new Gain(mean / sequence.size(), sd / sequence.size(), chance);
  }

  /**
   * What a rung adds to a flight.
   *
   * @param perFlight metres a flight on average [m]
   * @param sd how well that is known [m]
   * @param chanceLonger chance that it is above 0
   */
  public record Gain(double perFlight, double sd, double chanceLonger) {}

  private static double square(double x) {
    return x * x;
  }

  /** Level whose nominal flights it deviates from. */
  public Level level() {
    return level;
  }

  /** Whether they grow fast, so that more may change between days. */
  boolean growingFast() {
    return growingFast;
  }

  /** Number of the squad's snapshot that it began with; 0 is none. */
  public long squad() {
    return squad;
  }

  /** Reps learned. */
  public int reps() {
    return reps;
  }

  /** Reps learned that had at least one measured length. */
  public int measuredReps() {
    return measuredReps;
  }

  /** Reps learned from this rung. */
  public int repsAtRung(int steps) {
    return repsAtRung[Athlete.checkSteps(steps)];
  }

  /** Reps learned that were made on this surface. */
  public int repsOn(Surface surface) {
    return repsOn[Traits.place(surface)];
  }

  /** Date of the newest rep, or null before the first. */
  public @Nullable LocalDate lastDate() {
    return lastDate;
  }

  /** The model as bytes for the store. */
  public byte[] toBytes() {
    return ModelBytes.write(this);
  }

  /** The model from the store; empty if another version wrote it, so that it is learned again from the reps. */
  public static Optional<FlightModel> fromBytes(byte[] bytes) {
    return ModelBytes.read(bytes);
  }

  /** Two models are equal if they know exactly the same and so answer everything alike. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof FlightModel m
        && level == m.level
        && growingFast == m.growingFast
        && squad == m.squad
        && belief.equals(m.belief)
        && scatter.equals(m.scatter)
        && Objects.equals(lastDate, m.lastDate)
        && Double.compare(unsettled, m.unsettled) == 0
        && breaks.equals(m.breaks)
        && reps == m.reps
        && measuredReps == m.measuredReps
        && Arrays.equals(repsAtRung, m.repsAtRung)
        && Arrays.equals(repsOn, m.repsOn)
        && drills.equals(m.drills);
  }

  @Override
  public int hashCode() {
    return 31 * belief.hashCode() + Objects.hash(level, lastDate, reps);
  }

  Belief belief() {
    return belief;
  }

  Scatter scatter() {
    return scatter;
  }

  double unsettled() {
    return unsettled;
  }

  Breaks breaks() {
    return breaks;
  }

  int[] rungs() {
    return repsAtRung.clone();
  }

  DrillSlots drills() {
    return drills;
  }

  int[] surfaces() {
    return repsOn.clone();
  }
}
