package boundwright.flight;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.Decimals;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One run through a sequence as it was logged. All positions are measured from the take-off mark, forward [m].
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId whose
 * @param date day of the session
 * @param sequence contacts in order
 * @param approachSteps 0 to 26
 * @param surface what was bounded on
 * @param footprints_m positions of contacts 2, 3, ... [m]; NaN where one was not seen; may be empty or end early
 * @param landing_m the landing [m], or null
 * @param outcome the tap, or null
 * @param brokeOffAfter the last contact that was made of an abandoned rep, 1 to the sequence's size; null when nobody counted, and
 *     for a rep that was not abandoned
 * @param markToSand_m where the take-off mark lay, to the near edge of the sand [m], or null on the flat or unknown
 * @param judged whether the technique was looked at
 * @param faults what was seen wrong, as {@code key} or {@code key@contact}; empty means clean if it was judged
 */
public record Rep(
    long id,
    long athleteId,
    LocalDate date,
    Sequence sequence,
    int approachSteps,
    Surface surface,
    List<Double> footprints_m,
    @Nullable Double landing_m,
    @Nullable Outcome outcome,
    @Nullable Integer brokeOffAfter,
    @Nullable Double markToSand_m,
    boolean judged,
    List<String> faults) {

  /** Shortest and longest single flight that is taken [m] (sanity limits; judgement). */
  public static final double MIN_FLIGHT_M = 0.2;
  /** See {@link #MIN_FLIGHT_M}. */
  public static final double MAX_FLIGHT_M = 8.0;
  /** Farthest take-off mark that is taken [m] (sanity limit; judgement). */
  public static final double MAX_MARK_M = 300.0;

  /** Refuses what cannot have happened, in a sentence that names value, limit and way out. */
  public Rep {
    Athlete.checkSteps(approachSteps);
    footprints_m = List.copyOf(footprints_m);
    faults = List.copyOf(faults);
    judged |= !faults.isEmpty();
    checkFootprints(sequence, footprints_m, landing_m);
    if (markToSand_m != null && !(markToSand_m >= 0 && markToSand_m <= MAX_MARK_M)) {
      throw new RefusedException(
          "A take-off mark " + metres(markToSand_m) + " from the sand is out of range: 0 to " + metres(MAX_MARK_M) + ".");
    }
    if (footprints_m.stream().allMatch(f -> f.isNaN()) && landing_m == null && outcome == null) {
      throw new RefusedException(
          "The rep says nothing: no footprint, no landing and no outcome. Tap short, in, late, abandoned or done, or enter a length.");
    }
    checkAbandoned(sequence, footprints_m, landing_m, outcome, brokeOffAfter);
    if (outcome == Outcome.DONE && markToSand_m != null) {
      throw new RefusedException(
          "'done' is said of a rep on the flat, but this one has a take-off mark " + metres(markToSand_m)
              + " from the sand. Tap short, in or late, or leave the mark empty.");
    }
    if (landing_m != null && outcome != null && markToSand_m != null) {
      boolean reached = landing_m >= markToSand_m;
      if ((outcome == Outcome.SHORT && reached) || (outcome == Outcome.IN && !reached)) {
        throw new RefusedException(
            "The outcome '" + outcome.label() + "' does not fit: the landing is " + metres(landing_m)
                + " from the mark and the sand begins at " + metres(markToSand_m)
                + ". Correct one of the three, or leave the outcome empty.");
      }
    }
  }

  /** A rep of which no contact is named after which it broke off. */
  public Rep(
      long id,
      long athleteId,
      LocalDate date,
      Sequence sequence,
      int approachSteps,
      Surface surface,
      List<Double> footprints_m,
      @Nullable Double landing_m,
      @Nullable Outcome outcome,
      @Nullable Double markToSand_m,
      boolean judged,
      List<String> faults) {
    this(id, athleteId, date, sequence, approachSteps, surface, footprints_m, landing_m, outcome, null, markToSand_m, judged, faults);
  }

  /** A rep that was judged only if something was ticked. */
  public Rep(
      long id,
      long athleteId,
      LocalDate date,
      Sequence sequence,
      int approachSteps,
      Surface surface,
      List<Double> footprints_m,
      @Nullable Double landing_m,
      @Nullable Outcome outcome,
      @Nullable Double markToSand_m,
      List<String> faults) {
    this(id, athleteId, date, sequence, approachSteps, surface, footprints_m, landing_m, outcome, markToSand_m, false, faults);
  }

  private static void checkAbandoned(
      Sequence sequence, List<Double> prints, @Nullable Double landing, @Nullable Outcome outcome, @Nullable Integer after) {
    if (outcome != Outcome.ABANDONED) {
      if (after != null) {
        throw new RefusedException(
            "The rep is said to break off after contact " + after + ", but its outcome is "
                + (outcome == null ? "empty" : "'" + outcome.label() + "'") + ". Choose 'abandoned', or leave the contact out.");
      }
      return;
    }
    if (landing != null) {
      throw new RefusedException(
          "An abandoned rep has no landing, but one is given at " + metres(landing)
              + ". Leave the landing empty, or choose short, in or late.");
    }
    if (after != null && (after < 1 || after > sequence.size())) {
      throw new RefusedException(
          "A rep of " + sequence.text() + " cannot break off after contact " + after + ": it has contacts 1 to " + sequence.size()
              + ". A run-up that was broken off before the first contact need not be logged.");
    }
    if (after != null && prints.size() > after - 1) {
      throw new RefusedException(
          prints.size() + " footprints were given, but the rep broke off after contact " + after + ", which leaves at most " + (after - 1)
              + " (contact 1 is at the mark). Take the later ones out, or name a later contact.");
    }
  }

  /** Whether the athlete broke off before the last flight; then nothing of it is learned as length. */
  public boolean abandoned() {
    return outcome == Outcome.ABANDONED;
  }

  /**
   * The contacts that were made, for the account of the load: all of the sequence, or those up to where the rep broke off. Where nobody
   * counted, an abandoned rep counts whole: rather too much load than too little.
   */
  public Sequence contactsDone() {
    return brokeOffAfter == null ? sequence : sequence.first(brokeOffAfter);
  }

  /** How many of {@link #contactsDone()} were on this leg. */
  public int contactsDone(Foot foot) {
    return contactsDone().count(foot);
  }

  private static void checkFootprints(Sequence sequence, List<Double> prints, @Nullable Double landing) {
    if (prints.size() > sequence.size() - 1) {
      throw new RefusedException(
          prints.size() + " footprints were given, but " + sequence.text() + " has " + sequence.size()
              + " contacts and so at most " + (sequence.size() - 1)
              + " positions (contacts 2 to " + sequence.size() + "; contact 1 is at the mark). The landing goes in its own field.");
    }
    List<Double> positions = new ArrayList<>(prints);
    while (positions.size() < sequence.size() - 1) {
      positions.add(Double.NaN);
    }
    positions.add(landing == null ? Double.NaN : landing);
    double before = 0;
    int beforeContact = 1;
    for (int i = 0; i < positions.size(); i++) {
      double at = positions.get(i);
      boolean isLanding = i == positions.size() - 1;
      if (Double.isNaN(at) && (!isLanding || landing == null)) {
        continue;
      }
      int contact = i + 2;
      String name = isLanding ? "landing" : "footprint of contact " + contact;
      int flights = contact - beforeContact;
      double least = flights * MIN_FLIGHT_M;
      double most = flights * MAX_FLIGHT_M;
      if (at <= before && beforeContact > 1) {
        throw new RefusedException(
            "Footprints out of order: the " + name + " is at " + metres(at) + ", but contact " + beforeContact + " is at "
                + metres(before) + ". Positions are measured from the take-off mark and must grow.");
      }
      if (!(at - before >= least && at - before <= most)) {
        throw new RefusedException(
            "The " + name + " at " + metres(at) + " cannot be: from contact " + beforeContact + " at " + metres(before)
                + " that is " + (flights == 1 ? "a flight" : flights + " flights") + " of " + metres(at - before)
                + "; the limit is " + metres(least) + " to " + metres(most)
                + ". Measure from the take-off mark, in metres.");
      }
      before = at;
      beforeContact = contact;
    }
  }

  private static String metres(double m) {
    return Decimals.fixed(m, 2) + " m";
  }

  /** The same rep as another athlete's. */
  public Rep of(long athlete) {
    return new Rep(
        id, athlete, date, sequence, approachSteps, surface, footprints_m, landing_m, outcome, brokeOffAfter, markToSand_m, judged, faults);
  }

  /** The same rep with the number the store gave. */
  public Rep withId(long stored) {
    return new Rep(
        stored, athleteId, date, sequence, approachSteps, surface, footprints_m, landing_m, outcome, brokeOffAfter, markToSand_m, judged,
        faults);
  }

  /** The same rep on another day. */
  public Rep on(LocalDate day) {
    return new Rep(
        id, athleteId, day, sequence, approachSteps, surface, footprints_m, landing_m, outcome, brokeOffAfter, markToSand_m, judged, faults);
  }
}
