package boundwright.season;

import boundwright.load.LegCare.MedicalHold;
import boundwright.load.back.LegBack;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a season is planned from.
 *
 * @param name as the coach calls it, 1 to 60 characters
 * @param first first day
 * @param last last day, 7 to 400 days after the first
 * @param periods parts of the year, by their beginning
 * @param meets in the season
 * @param venues where one can train
 * @param squad athletes, 1 to {@value #MOST_ATHLETES}
 * @param rules the coach's own
 */
public record SeasonInput(
    String name, LocalDate first, LocalDate last, List<Period> periods, List<Meet> meets, List<Venue> venues, List<Member> squad, SeasonRules rules) {
  /** Most athletes of a season. */
  public static final int MOST_ATHLETES = 120;
  /** Most days of a season. */
  public static final int MOST_DAYS = 400;

  /** Takes copies; refuses what contradicts itself. */
  public SeasonInput {
    name = name.strip();
    periods = periods.stream().sorted(Comparator.comparing(Period::from)).toList();
    meets = meets.stream().sorted(Comparator.comparing(Meet::date)).toList();
    venues = List.copyOf(venues);
    squad = List.copyOf(squad);
    if (name.isEmpty() || name.length() > 60) {
      throw new RefusedException("A season's name has 1 to 60 characters; this one has " + name.length() + ".");
    }
    long days = ChronoUnit.DAYS.between(first, last) + 1;
    if (days < 7 || days > MOST_DAYS) {
      throw new RefusedException(
          "A season from " + first + " to " + last + " has " + days + " days; it may have 7 to " + MOST_DAYS + ". Check the two dates.");
    }
    if (squad.isEmpty() || squad.size() > MOST_ATHLETES) {
      throw new RefusedException(
          "A season with " + squad.size() + " athletes is out of range: 1 to " + MOST_ATHLETES + ". Plan a larger squad as two seasons.");
    }
    for (Meet m : meets) {
      if (m.date().isBefore(first) || m.date().isAfter(last)) {
        throw new RefusedException(
            "The meet " + m.name() + " on " + m.date() + " lies outside the season, " + first + " to " + last + ". Correct its date, or that of the season.");
      }
    }
    once("meet", meets.stream().map(Meet::key).toList());
    once("place", venues.stream().map(Venue::key).toList());
    once("athlete", squad.stream().map(Member::id).toList());
    Set<String> keys = new HashSet<>(meets.stream().map(Meet::key).toList());
    for (Member m : squad) {
      for (Entry e : m.entries()) {
        if (!keys.contains(e.meet())) {
          throw new RefusedException(m.name() + " enters for the meet " + e.meet() + ", which the season does not have. Meets: " + String.join(", ", keys) + ".");
        }
      }
    }
    if (venues.isEmpty()) {
      throw new RefusedException("The season has no place to train. Name at least one, with its hours.");
    }
  }

  private static void once(String what, List<?> keys) {
    Set<Object> seen = new HashSet<>();
    for (Object k : keys) {
      if (!seen.add(k)) {
        throw new RefusedException("The " + what + " " + k + " stands twice in the season. Give each its own.");
      }
    }
  }

  /** The same with this squad. */
  public SeasonInput withSquad(List<Member> other) {
    return new SeasonInput(name, first, last, periods, meets, venues, other, rules);
  }

  /**
   * The same with everybody's medical holds, each to the day before a clinician allows bounding again; one that nobody has ended, to the
   * season's last day.
   *
   * @param holds that stand in the program, by the athlete's number
   */
  public SeasonInput withHolds(Map<Long, List<MedicalHold>> holds) {
    List<Member> all = new ArrayList<>();
    for (Member m : squad) {
      Member held = m;
      for (MedicalHold h : holds.getOrDefault(m.id(), List.of())) {
        LocalDate cleared = h.clearedOn();
        LocalDate from = h.from().isBefore(first) ? first : h.from();
        LocalDate to = cleared == null || cleared.isAfter(last) ? last : cleared.minusDays(1);
        held = to.isBefore(from) ? held : held.withAway(new Away(new Span(from, to), Away.Why.HELD));
      }
      all.add(held);
    }
    return withSquad(all);
  }

  /** The same with everybody's legs on their way back, by the athlete's number. */
  public SeasonInput withBacks(Map<Long, List<LegBack>> backs) {
    return withSquad(squad.stream().map(m -> m.withBacks(backs.getOrDefault(m.id(), List.of()))).toList());
  }

  /** Days of the season. */
  public int days() {
    return number(last) + 1;
  }

  /** The day with a number, 0 the first. */
  public LocalDate day(int number) {
    return first.plusDays(number);
  }

  /** The number of a day, 0 the first; below 0 before the season. */
  public int number(LocalDate day) {
    return (int) ChronoUnit.DAYS.between(first, day);
  }

  /** The place with a key; refuses one that the season does not have. */
  public Venue venue(String key) {
    return venues.stream()
        .filter(v -> v.key().equals(key))
        .findFirst()
        .orElseThrow(
            () -> new RefusedException("The season has no place '" + key + "'. Its places: " + String.join(", ", venues.stream().map(Venue::key).toList()) + "."));
  }

  /** The meet with a key; refuses one that the season does not have. */
  public Meet meet(String key) {
    return meets.stream()
        .filter(m -> m.key().equals(key))
        .findFirst()
        .orElseThrow(
            () -> new RefusedException("The season has no meet '" + key + "'. Its meets: " + String.join(", ", meets.stream().map(Meet::key).toList()) + "."));
  }

  /** The meet that an athlete jumps on a day. */
  public Optional<Meet> meet(Member m, LocalDate day) {
    return meets.stream().filter(x -> x.date().equals(day) && m.entry(x).isPresent()).findFirst();
  }

  /** The part of the year on a day; general preparation before the first begins. */
  public Period.Kind period(LocalDate day) {
    return periods.stream()
        .filter(p -> !p.from().isAfter(day))
        .reduce((a, b) -> b)
        .map(Period::kind)
        .orElse(Period.Kind.GENERAL);
  }
}
