package boundwright.athlete.growth;

import boundwright.athlete.Athlete;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.PersonRepository;
import boundwright.quantity.Decimals;
import boundwright.quantity.RefusedException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.LongConsumer;
import java.util.stream.Collectors;

/** Keeps measurements and says what follows from them. Safe to use from many threads. */
public final class GrowthDesk {
  /** A height this far from a neighbour is a slip: at once, and for each year between them [m] (judgement). */
  private static final double SLIP_M = 0.03;
  private static final double SLIP_A_YEAR_M = 0.15;

  private final GrowthRepository rows;
  private final PersonRepository people;
  private final Clock clock;
  private final LongConsumer changed;

  /** Asks these rows; {@code clock} tells which day it is. */
  public GrowthDesk(GrowthRepository rows, PersonRepository people, Clock clock) {
    this(rows, people, clock, id -> {});
  }

  /**
   * As {@link #GrowthDesk(GrowthRepository, PersonRepository, Clock)}.
   *
   * @param changed told the number of whoever now grows fast and did not, or the other way round
   */
  public GrowthDesk(GrowthRepository rows, PersonRepository people, Clock clock, LongConsumer changed) {
    this.changed = changed;
    this.rows = rows;
    this.people = people;
    this.clock = clock;
  }

  /** What is said of somebody today. */
  public GrowthAnswer answer(long athleteId) {
    return new Growth(people.person(athleteId), rows.measurements(athleteId), rows.settings(), LocalDate.now(clock)).answer();
  }

  /** Those who grow fast on a day, or did not long before it, by number. */
  public Map<Long, FastGrowth> fast(List<Long> athletes, LocalDate day) {
    Map<Long, List<Measurement>> measured = rows.measurements(athletes);
    if (measured.isEmpty()) {
      return Map.of();
    }
    GrowthSettings settings = rows.settings();
    Map<Long, Person> known = people.people(List.copyOf(measured.keySet()));
    Map<Long, FastGrowth> out = new HashMap<>();
    measured.forEach(
        (id, of) -> {
          FastGrowth fast = new Growth(known.getOrDefault(id, Person.UNKNOWN), of, settings, day).fast();
          if (fast != null) {
            out.put(id, fast);
          }
        });
    return out;
  }

  /** Those of these athletes, by number, of whom a height is due today after the one before; nobody is asked for a first one here. */
  public Set<Long> due(List<Long> athletes) {
    Map<Long, List<Measurement>> measured = rows.measurements(athletes);
    if (measured.isEmpty()) {
      return Set.of();
    }
    LocalDate today = LocalDate.now(clock);
    GrowthSettings settings = rows.settings();
    Map<Long, Person> known = people.people(List.copyOf(measured.keySet()));
    return measured.entrySet().stream()
        .filter(e -> new Growth(known.getOrDefault(e.getKey(), Person.UNKNOWN), e.getValue(), settings, today).due())
        .map(Map.Entry::getKey)
        .collect(Collectors.toSet());
  }

  /** Those of these athletes who grow faster than the setting by their heights, whatever the day and their age. */
  public static Set<Long> growingFast(GrowthRepository rows, List<Long> athletes) {
    Map<Long, List<Measurement>> measured = rows.measurements(athletes);
    return measured.isEmpty() ? Set.of() : fast(measured, rows.settings());
  }

  private static Set<Long> fast(Map<Long, List<Measurement>> measured, GrowthSettings settings) {
    return measured.entrySet().stream().filter(e -> Growth.isFast(e.getValue(), settings)).map(Map.Entry::getKey).collect(Collectors.toSet());
  }

  private void tell(Set<Long> before, Set<Long> after) {
    after.stream().filter(id -> !before.contains(id)).forEach(changed::accept);
    before.stream().filter(id -> !after.contains(id)).forEach(changed::accept);
  }

  /** How much taller somebody is than on each of these days, in their order; empty where nothing is said of their growth. */
  public List<Grown> since(long athleteId, List<LocalDate> days) {
    List<Measurement> measured = days.isEmpty() ? List.of() : rows.measurements(athleteId);
    return measured.isEmpty() ? List.of() : new Growth(people.person(athleteId), measured, rows.settings(), LocalDate.now(clock)).since(days);
  }

  /** As {@link #add(Athlete, Measurement, boolean)}, of one that is no second reading. */
  public Measurement add(Athlete athlete, Measurement measurement) {
    return add(athlete, measurement, false);
  }

  /**
   * Keeps a measurement.
   *
   * @param another whether it is a second reading, though the same height of the day by the same person is kept
   * @throws RefusedException if it is of a day that cannot be, so far from one beside it that one of the two is a slip, or kept already
   */
  public Measurement add(Athlete athlete, Measurement measurement, boolean another) {
    LocalDate day = measurement.date();
    LocalDate today = LocalDate.now(clock);
    if (day.isAfter(today)) {
      throw new RefusedException("The height is of " + day + ", after today, " + today + ". Enter the day on which it was measured.");
    }
    LocalDate born = people.person(athlete.id()).born();
    if (born != null && day.isBefore(born)) {
      throw new RefusedException("The height is of " + day + ", before " + athlete.name() + " was born, " + born + ". Check both.");
    }
    for (Measurement other : rows.measurements(athlete.id())) {
      if (!another && other.repeats(measurement)) {
        throw new RefusedException(
            metres(measurement) + " on " + day + (measurement.by().isEmpty() ? "" : " by " + measurement.by())
                + " is kept already, so it was not kept twice. If it was measured again and came out alike, tick \"another reading\" (on the command line: --another).");
      }
      double years = ChronoUnit.DAYS.between(other.date(), day) / GrowthTrend.YEAR_DAYS;
      double grown = Math.signum(years == 0 ? 1 : years) * (measurement.height_m() - other.height_m());
      boolean slip = grown < -SLIP_M || grown > SLIP_M + SLIP_A_YEAR_M * Math.abs(years) || (years == 0 && Math.abs(grown) > SLIP_M);
      if (slip) {
        throw new RefusedException(
            "A height of " + metres(measurement) + " on " + day + " does not go with " + metres(other) + " on " + other.date()
                + ": 15 cm a year and 3 cm more are believed, and nobody shrinks. Check the figure; if the other is wrong, remove it first.");
      }
    }
    Set<Long> before = growingFast(rows, List.of(athlete.id()));
    Measurement kept = rows.add(athlete.id(), measurement);
    tell(before, growingFast(rows, List.of(athlete.id())));
    return kept;
  }

  private static String metres(Measurement m) {
    return Decimals.fixed(m.height_m(), 3) + " m";
  }

  /**
   * Takes a measurement out.
   *
   * @throws RefusedException if the athlete has none with this number
   */
  public void remove(Athlete athlete, long measurementId) {
    Set<Long> before = growingFast(rows, List.of(athlete.id()));
    if (!rows.remove(athlete.id(), measurementId)) {
      throw new RefusedException(
          "Measurement number " + measurementId + " is not in the list of " + athlete.name() + ". Nothing was changed. Look at the list again.");
    }
    tell(before, growingFast(rows, List.of(athlete.id())));
  }

  /** The settings. */
  public GrowthSettings settings() {
    return rows.settings();
  }

  /** Keeps the settings. */
  public void keep(GrowthSettings settings) {
    Map<Long, List<Measurement>> all = rows.everybody();
    Set<Long> before = fast(all, rows.settings());
    rows.keep(settings);
    tell(before, fast(all, settings));
  }
}
