package boundwright.season;

import boundwright.athlete.Athlete;
import boundwright.load.account.History;
import boundwright.load.back.LegBack;
import boundwright.quantity.RefusedException;
import boundwright.readiness.DrillFamily;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * An athlete of the season.
 *
 * @param athlete name, level, take-off foot; the number is unique in the season
 * @param growing whether still growing (under 16, or as the coach judges)
 * @param firstSession first day of bounding, or null: the first day in {@code past}
 * @param steps approach steps now, by family of drills; a family that is not in it stands on the athlete's own
 * @param fullSteps of the full run-up, from which meets are jumped, 4 to 26
 * @param days of the week on which they can train
 * @param peakWeek the largest week that is wanted for them [standing-bound contacts], 20 to 5000
 * @param joins first day with the squad, or null: the season's first
 * @param away days on which they cannot train, or only little
 * @param entries for which meets, and how important
 * @param wishes of their own
 * @param past what was done before the season
 * @param backs legs on their way back, as they stand in the program; no part of the season's file
 */
public record Member(
    Athlete athlete,
    boolean growing,
    @Nullable LocalDate firstSession,
    Map<DrillFamily, Integer> steps,
    int fullSteps,
    Set<DayOfWeek> days,
    int peakWeek,
    @Nullable LocalDate joins,
    List<Away> away,
    List<Entry> entries,
    List<Wish> wishes,
    History past,
    List<LegBack> backs) {
  /** Takes copies; refuses what no athlete is. */
  public Member {
    Map<DrillFamily, Integer> all = new EnumMap<>(DrillFamily.class);
    for (DrillFamily f : DrillFamily.values()) {
      all.put(f, Athlete.checkSteps(steps.getOrDefault(f, athlete.rung())));
    }
    steps = Map.copyOf(all);
    days = Set.copyOf(days);
    away = List.copyOf(away);
    entries = List.copyOf(entries);
    wishes = List.copyOf(wishes);
    backs = List.copyOf(backs);
    if (Athlete.checkSteps(fullSteps) < 4) {
      throw new RefusedException("A full run-up of " + fullSteps + " steps for " + athlete.name() + " is out of range: 4 to 26.");
    }
    if (peakWeek < 20 || peakWeek > 5000) {
      throw new RefusedException(
          "A largest week of " + peakWeek + " standing-bound contacts for " + athlete.name() + " is out of range: 20 to 5000. From standing a contact is one of them; from 6 steps about three.");
    }
    if (days.isEmpty()) {
      throw new RefusedException(athlete.name() + " has no day of the week on which to train. Name at least one.");
    }
  }

  /** With no leg on its way back. */
  public Member(
      Athlete athlete, boolean growing, @Nullable LocalDate firstSession, Map<DrillFamily, Integer> steps, int fullSteps, Set<DayOfWeek> days, int peakWeek,
      @Nullable LocalDate joins, List<Away> away, List<Entry> entries, List<Wish> wishes, History past) {
    this(athlete, growing, firstSession, steps, fullSteps, days, peakWeek, joins, away, entries, wishes, past, List.of());
  }

  /** The same, with these legs on their way back. */
  public Member withBacks(List<LegBack> other) {
    return new Member(athlete, growing, firstSession, steps, fullSteps, days, peakWeek, joins, away, entries, wishes, past, other);
  }

  /** The same, kept from training on some days more. */
  public Member withAway(Away more) {
    List<Away> all = new ArrayList<>(away);
    all.add(more);
    return away(all);
  }

  /** The same, but for one entry of what keeps them. */
  public Member withoutAway(Away less) {
    List<Away> all = new ArrayList<>(away);
    all.remove(less);
    return away(all);
  }

  private Member away(List<Away> all) {
    return new Member(athlete, growing, firstSession, steps, fullSteps, days, peakWeek, joins, all, entries, wishes, past, backs);
  }

  /** The same after this was done. */
  public Member withPast(History other) {
    return new Member(athlete, growing, firstSession, steps, fullSteps, days, peakWeek, joins, away, entries, wishes, other, backs);
  }

  /** Number of the athlete. */
  public long id() {
    return athlete.id();
  }

  /** Name of the athlete. */
  public String name() {
    return athlete.name();
  }

  /** Approach steps at the season's beginning. */
  public int steps(DrillFamily family) {
    return steps.getOrDefault(family, athlete.rung());
  }

  /** What keeps them from training on a day: the strictest. */
  public Optional<Away.Why> away(LocalDate day) {
    return away.stream().filter(a -> a.span().holds(day)).map(Away::why).min(Enum::compareTo);
  }

  /** How important a meet is to them. */
  public Optional<Entry.Importance> entry(Meet meet) {
    return entries.stream().filter(e -> e.meet().equals(meet.key())).map(Entry::importance).findFirst();
  }
}
