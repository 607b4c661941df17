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
import boundwright.quantity.Rows;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.jspecify.annotations.Nullable;

/**
 * How long this athlete's flights are, learned from what a coach can log. Immutable.
 *
 * <p>A flight is {@code nominal x (1 + traits + day + rep + own scatter)}: a normal linear model, so a measured
 * footprint or landing is one closed-form update; a tap (short, in, late) tells on which side of the sand's edge the
 * landing and the last contact fell, and moments are matched. The day's deviation is one unknown that starts afresh
 * each day, the rep's moves all flights of a rep together. How widely this athlete scatters, by day, rep and flight, is
 * learned too ({@link Scatter}). No history is refitted: {@link #learn} costs the same at rep 1 and rep 10 000. Nothing
 * is random.
 *
 * <p>The prior stands on the level, and on known marks and timed run-ups where there are some (standing: judgement).
 * Between days the level may drift ({@value #DRIFT_30_DAYS} relative standard deviation in thirty days; judgement).
 */
public final class FlightModel {
  /** Relative standard deviation by which an athlete may change in 30 days (judgement). */
  static final double DRIFT_30_DAYS = 0.02;

  private static final int MOST_DRIFT_DAYS = 365;
  /** Error of a tape laid to a footprint or a landing [m] (judgement). */
  private static final double TAPE_SD = 0.025;
  /** How far a first flight off both feet may be from one off the take-off foot, as a part of its length (judgement). */
  private static final double BOTH_FEET_SD = 0.15;
  /** How often a tap is wrong (judgement). */
  private static final double SLIP = 0.01;

  private final Level level;
  private final Belief belief;
  private final Scatter scatter;
  private final @Nullable LocalDate lastDate;
  private final boolean dayMeasured;
  private final int reps;
  private final int measuredReps;
  private final int[] repsAtRung;
  private final int[] repsOn;

  FlightModel(
      Level level,
      Belief belief,
      Scatter scatter,
      @Nullable LocalDate lastDate,
      boolean dayMeasured,
      int reps,
      int measuredReps,
      int[] repsAtRung,
      int[] repsOn) {
    this.level = level;
    this.belief = belief;
    this.scatter = scatter;
    this.lastDate = lastDate;
    this.dayMeasured = dayMeasured;
    this.reps = reps;
    this.measuredReps = measuredReps;
    this.repsAtRung = repsAtRung;
    this.repsOn = repsOn;
  }

  /** The model before any rep: level, known marks, timed run-ups. */
  public static FlightModel prior(Profile profile) {
    Level level = profile.athlete().level().guessedAs();
    Belief b = Traits.prior(0.13, daySd(level));
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
    b.reset(Traits.DAY, square(daySd(level)));
    return new FlightModel(
        level, b, Scatter.prior(), null, false, 0, 0, new int[Athlete.MAX_STEPS + 1], new int[Surface.values().length]);
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
      scatter += square(m * flightSd(level));
      if (mark.bothFeet() && f.order() == 1) {
        h[Traits.LEVEL] += m;
        scatter += square(m * BOTH_FEET_SD);
      } else {
        Traits.add(h, m, sequence, f, mark.approachSteps(), Surface.TRACK);
      }
    }
    double own = square(usual * (best ? 0.05 : 0.03)) + scatter + square(base * repSd(level));
    b.measure(h, usual - base, own);
  }

  /** The model after one more rep; this one is unchanged. Reps come by date and then in the order logged. An abandoned rep teaches nothing. */
  public FlightModel learn(Rep r) {
    if (r.abandoned()) {
      return this; // Somebody who breaks off has shortened or lengthened flights already: no length in it is a usual one.
    }
    Opened today = openDay(r.date());
    Sequence sequence = r.sequence();
    int n = sequence.size();
    double[] nominal = NominalFlights.lengths(level, sequence, r.approachSteps());
    double[][] where = positions(sequence, nominal, r.approachSteps(), r.surface(), n + 2);
    double[] base = cumulated(nominal);
    boolean anyMeasured = r.landing_m() != null || r.footprints_m().stream().anyMatch(f -> !f.isNaN());
    Scatter learned = anyMeasured ? learnScatter(r, today, nominal, where, base) : scatter;
    int shared = Traits.COUNT;
    int place = shared + 1;
    Belief wide = today.belief.widened(n + 2);
    wide.reset(shared, square(repSd(level)) * learned.likely(Scatter.REP));
    wide.reset(place, square(placementSd(r.approachSteps())));
    for (int i = 0; i < n; i++) {
      wide.reset(place + 1 + i, square(flightSd(level)) * learned.likely(Scatter.FLIGHT));
    }
    tell(wide, r, where, base);
    int[] rungs = repsAtRung.clone();
    rungs[r.approachSteps()]++;
    int[] surfaces = repsOn.clone();
    surfaces[Traits.place(r.surface())]++;
    return new FlightModel(
        level,
        wide.narrowed(Traits.COUNT),
        learned,
        lastDate == null || r.date().isAfter(lastDate) ? r.date() : lastDate,
        today.measured || anyMeasured,
        reps + 1,
        measuredReps + (anyMeasured ? 1 : 0),
        rungs,
        surfaces);
  }

  /** What the rep's own innovations say of the scatter; the day's part is in them only at the day's first measured rep. */
  private Scatter learnScatter(Rep r, Opened today, double[] nominal, double[][] where, double[] base) {
    int n = nominal.length;
    int[] at = new int[n];
    double[] innovation = new double[n];
    int seen = 0;
    for (int c = 1; c <= n; c++) {
      double y = c == n ? (r.landing_m() == null ? Double.NaN : r.landing_m()) : c <= r.footprints_m().size() ? r.footprints_m().get(c - 1) : Double.NaN;
      if (!Double.isNaN(y)) {
        at[seen] = c;
        innovation[seen++] = y - base[c] - today.belief.meanOf(traits(where[c]));
      }
    }
    double[] flights = cumulated(squares(nominal));
    double ownRep = square(repSd(level)) * scatter.likely(Scatter.REP);
    double ownFlight = square(flightSd(level)) * scatter.likely(Scatter.FLIGHT);
    double fixed = square(placementSd(r.approachSteps()));
    double dayVariance = today.belief.variance(Traits.DAY);
    double[][] covariance = new double[seen][seen];
    @Nullable RealMatrix[] parts = new RealMatrix[3];
    RealMatrix repPart = MatrixUtils.createRealMatrix(seen, seen);
    RealMatrix flightPart = MatrixUtils.createRealMatrix(seen, seen);
    RealMatrix dayPart = MatrixUtils.createRealMatrix(seen, seen);
    for (int i = 0; i < seen; i++) {
      double[] spread = today.belief.times(traits(where[at[i]]));
      for (int j = 0; j <= i; j++) {
        double both = base[at[i]] * base[at[j]];
        double rep = ownRep * both;
        double flight = ownFlight * flights[Math.min(at[i], at[j])];
        double known = Rows.dot(traits(where[at[j]]), spread);
        covariance[i][j] = known + rep + flight + fixed + (i == j ? TAPE_SD * TAPE_SD : 0);
        covariance[j][i] = covariance[i][j];
        setBoth(repPart, i, j, rep);
        setBoth(flightPart, i, j, flight);
        setBoth(dayPart, i, j, dayVariance * both);
      }
    }
    parts[Scatter.DAY] = today.measured ? null : dayPart;
    parts[Scatter.REP] = repPart;
    parts[Scatter.FLIGHT] = flightPart;
    return scatter.after(Arrays.copyOf(innovation, seen), covariance, parts);
  }

  private static void setBoth(RealMatrix m, int i, int j, double value) {
    m.setEntry(i, j, value);
    m.setEntry(j, i, value);
  }

  private static double[] traits(double[] where) {
    return Arrays.copyOf(where, Traits.COUNT);
  }

  private static double[] squares(double[] x) {
    double[] out = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      out[i] = x[i] * x[i];
    }
    return out;
  }

  /** Tells the belief what was logged: lengths first, then what the tap adds to them. */
  private static void tell(Belief wide, Rep r, double[][] where, double[] base) {
    int n = r.sequence().size();
    double tape = TAPE_SD * TAPE_SD;
    boolean lastSeen = false;
    for (int i = 0; i < r.footprints_m().size(); i++) {
      double at = r.footprints_m().get(i);
      if (!Double.isNaN(at)) {
        wide.measure(where[i + 1], at - base[i + 1], tape);
        lastSeen |= i + 2 == n;
      }
    }
    if (r.landing_m() != null) {
      wide.measure(where[n], r.landing_m() - base[n], tape);
    }
    Double mark = r.markToSand_m();
    if (r.outcome() == null || mark == null) {
      return;
    }
    boolean late = r.outcome() == Outcome.LATE;
    if (r.landing_m() == null && !late) {
      wide.side(where[n], mark - base[n], r.outcome() == Outcome.IN, SLIP);
    }
    if (!lastSeen && r.outcome() != Outcome.SHORT) {
      wide.side(where[n - 1], mark - base[n - 1], late, SLIP);
    }
  }

  /** What a tap says of a rep whose last contact and landing are these combinations of what is believed [m]. */
  static void tellTap(Belief b, Outcome outcome, double mark, double[] contact, double[] landing, double slip) {
    boolean late = outcome == Outcome.LATE;
    if (!late) {
      b.side(landing, mark, outcome == Outcome.IN, slip);
    }
    if (outcome != Outcome.SHORT) {
      b.side(contact, mark, late, slip);
    }
  }

  /**
   * What measuring or tapping the next rep of this drill on {@code date} would tell; approach steps 0 to 26. Costs a few
   * hundred microseconds.
   */
  public Inquiry inquiry(Sequence sequence, int approachSteps, Surface surface, LocalDate date) {
    Athlete.checkSteps(approachSteps);
    Belief today = openDay(date).belief;
    int n = sequence.size();
    double[] nominal = NominalFlights.lengths(level, sequence, approachSteps);
    double[] base = cumulated(nominal);
    double[][] where = positions(sequence, nominal, approachSteps, surface, n + 2);
    double together = square(repSd(level)) * scatter.mean(Scatter.REP);
    double single = square(flightSd(level)) * scatter.mean(Scatter.FLIGHT);
    double place = square(placementSd(approachSteps));
    double[] flights = cumulated(squares(nominal));
    double[] own = {
      together * square(base[n - 1]) + single * flights[n - 1] + place,
      together * base[n - 1] * base[n] + single * flights[n - 1] + place,
      together * square(base[n]) + single * flights[n] + place
    };
    double[] last = traits(where[n - 1]);
    double[] landing = traits(where[n]);
    double[] shared = {today.varianceOf(last), Rows.dot(landing, today.times(last)), today.varianceOf(landing)};
    Belief rep = today.widened(n + 2);
    rep.reset(Traits.COUNT, together);
    rep.reset(Traits.COUNT + 1, place);
    for (int i = 0; i < n; i++) {
      rep.reset(Traits.COUNT + 2 + i, single);
    }
    Belief full = rep.copy();
    for (int c = 1; c <= n; c++) {
      full.measure(where[c], full.meanOf(where[c]), TAPE_SD * TAPE_SD);
    }
    return new Inquiry(
        base[n - 1] + today.meanOf(last),
        base[n] + today.meanOf(landing),
        shared,
        own,
        SLIP,
        sharpness(full, last, landing, own),
        sharpness(measuredAt(rep, where[n - 1]), last, landing, own),
        sharpness(measuredAt(rep, where[n]), last, landing, own));
  }

  private static Belief measuredAt(Belief rep, double[] where) {
    Belief out = rep.copy();
    out.measure(where, out.meanOf(where), TAPE_SD * TAPE_SD);
    return out;
  }

  private static Sharpness sharpness(Belief after, double[] last, double[] landing, double[] own) {
    Belief b = after.narrowed(Traits.COUNT);
    return new Sharpness(
        Math.sqrt(b.varianceOf(last) + own[0]),
        Math.sqrt(b.varianceOf(landing) + own[2]),
        Rows.dot(landing, b.times(last)) + own[1]);
  }

  /** Where contacts 1 to n and the landing fall, as sums of unknowns: traits, rep, placement, each flight's scatter. */
  private static double[][] positions(Sequence sequence, double[] nominal, int steps, Surface surface, int extra) {
    int n = sequence.size();
    double[][] out = new double[n + 1][];
    double[] h = new double[Traits.COUNT + extra];
    h[Traits.COUNT + 1] = 1;
    out[0] = h.clone();
    for (Flight f : sequence.flights()) {
      double m = nominal[f.order() - 1];
      Traits.add(h, m, sequence, f, steps, surface);
      h[Traits.COUNT] += m;
      h[Traits.COUNT + 1 + f.order()] = m;
      out[f.order()] = h.clone();
    }
    return out;
  }

  private static double[] cumulated(double[] nominal) {
    double[] out = new double[nominal.length + 1];
    for (int i = 0; i < nominal.length; i++) {
      out[i + 1] = out[i] + nominal[i];
    }
    return out;
  }

  private record Opened(Belief belief, boolean measured) {}

  /** The belief on {@code date}: on a new day the last day's deviation is forgotten and a fresh one begins. */
  private Opened openDay(LocalDate date) {
    if (date.equals(lastDate)) {
      return new Opened(belief, dayMeasured);
    }
    Belief fresh = belief.copy();
    fresh.reset(Traits.DAY, square(daySd(level)) * scatter.mean(Scatter.DAY));
    if (lastDate != null && date.isAfter(lastDate)) {
      long days = Math.min(ChronoUnit.DAYS.between(lastDate, date), MOST_DRIFT_DAYS);
      fresh.diffuse(Traits.LEVEL, square(DRIFT_30_DAYS) * days / 30);
    }
    return new Opened(fresh, false);
  }

  /** Where the contacts will fall in a rep on {@code date}; approach steps 0 to 26. */
  public Forecast forecast(Sequence sequence, int approachSteps, Surface surface, LocalDate date) {
    Athlete.checkSteps(approachSteps);
    Belief today = openDay(date).belief;
    double[] nominal = NominalFlights.lengths(level, sequence, approachSteps);
    double[] base = cumulated(nominal);
    double[] mean = new double[sequence.size()];
    double[] sd = new double[sequence.size()];
    double own = square(flightSd(level)) * scatter.mean(Scatter.FLIGHT);
    double together = square(repSd(level)) * scatter.mean(Scatter.REP);
    double place = square(placementSd(approachSteps));
    double[] h = new double[Traits.COUNT];
    double scatter = 0;
    double both = 0;
    for (Flight f : sequence.flights()) {
      int i = f.order() - 1;
      boolean last = f.order() == sequence.size();
      double[] withLastContact = last ? today.times(h) : h;
      double scatterBefore = scatter;
      Traits.add(h, nominal[i], sequence, f, approachSteps, surface);
      scatter += square(nominal[i]) * own;
      if (last) {
        both = Rows.dot(withLastContact, h) + scatterBefore + base[i] * base[i + 1] * together + place;
      }
      mean[i] = base[i + 1] + today.meanOf(h);
      sd[i] = Math.sqrt(today.varianceOf(h) + scatter + square(base[i + 1]) * together + place);
    }
    return new Forecast(sequence, approachSteps, mean, sd, both, Math.sqrt(place), repsAtRung[approachSteps]);
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
      Traits.add(h, high[i], sequence, f, to, surface);
      Traits.add(h, -low[i], sequence, f, from, surface);
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

  /** How far the first contact falls from its mark [m]; from standing it is put there (judgement). */
  static double placementSd(int steps) {
    return steps == 0 ? 0.01 : 0.05 + 0.008 * steps;
  }

  private static double daySd(Level level) {
    return level == Level.BEGINNER ? 0.028 : level == Level.INTERMEDIATE ? 0.024 : 0.021;
  }

  private static double repSd(Level level) {
    return level == Level.BEGINNER ? 0.034 : level == Level.INTERMEDIATE ? 0.029 : 0.024;
  }

  private static double flightSd(Level level) {
    return level == Level.BEGINNER ? 0.055 : level == Level.INTERMEDIATE ? 0.045 : 0.038;
  }

  private static double square(double x) {
    return x * x;
  }

  /** Level whose nominal flights it deviates from. */
  public Level level() {
    return level;
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
        && belief.equals(m.belief)
        && scatter.equals(m.scatter)
        && Objects.equals(lastDate, m.lastDate)
        && dayMeasured == m.dayMeasured
        && reps == m.reps
        && measuredReps == m.measuredReps
        && Arrays.equals(repsAtRung, m.repsAtRung)
        && Arrays.equals(repsOn, m.repsOn);
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

  boolean dayMeasured() {
    return dayMeasured;
  }

  int[] rungs() {
    return repsAtRung.clone();
  }

  int[] surfaces() {
    return repsOn.clone();
  }
}
