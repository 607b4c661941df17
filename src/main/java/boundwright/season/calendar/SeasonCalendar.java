package boundwright.season.calendar;

import boundwright.season.SeasonRepository.Kept;
import boundwright.season.SeasonRepository.Version;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A calendar.
 *
 * @param name as it is listed
 * @param events by day
 */
public record SeasonCalendar(String name, List<CalendarEvent> events) {
  /** Takes a copy. */
  public SeasonCalendar {
    events = List.copyOf(events);
  }

  /**
   * One athlete's calendar.
   *
   * @param versions all that were published, oldest first
   * @param zone the coach's
   */
  public static SeasonCalendar of(Kept season, List<Version> versions, long athleteId, ZoneId zone) {
    String athlete =
        versions.stream().flatMap(v -> v.plan().of(athleteId).stream()).reduce((a, b) -> b).map(y -> y.athlete()).orElse("");
    return new SeasonCalendar(
        athlete.isEmpty() ? season.name() : athlete + ", " + season.name(),
        told(season.key() + "|" + athleteId, versions, zone, v -> Telling.athlete(v, athleteId)));
  }

  /** The squad's calendar: who does what where, meets and decision days. */
  public static SeasonCalendar of(Kept season, List<Version> versions, ZoneId zone) {
    return new SeasonCalendar(season.name(), told(season.key() + "|squad", versions, zone, Telling::squad));
  }

  /** What a version tells: each event by what it is known by. */
  @FunctionalInterface
  interface Teller {
    Map<String, CalendarEvent.Says> of(Version version);
  }

  private static final class Life {
    private CalendarEvent.@Nullable Says now;
    private CalendarEvent.Says last;
    private int changes;
    private Instant changed;

    Life(CalendarEvent.Says first, Instant at) {
      now = first;
      last = first;
      changed = at;
    }

    void become(CalendarEvent.@Nullable Says next, Instant at) {
      if (next == null ? now != null : !next.equals(now)) {
        changes++;
        changed = at;
        now = next;
        last = next == null ? last : next;
      }
    }
  }

  private static List<CalendarEvent> told(String whose, List<Version> versions, ZoneId zone, Teller teller) {
    Map<String, Life> lives = new TreeMap<>();
    for (Version v : versions) {
      Map<String, CalendarEvent.Says> told = teller.of(v);
      LocalDate published = LocalDate.ofInstant(v.published(), zone);
      // What was to happen before a version was published has happened or not; the version no longer changes it.
      lives.forEach(
          (key, life) -> {
            if (!life.last.date().isBefore(published)) {
              life.become(told.get(key), v.published());
            }
          });
      told.forEach((key, says) -> lives.computeIfAbsent(key, k -> new Life(says, v.published())));
    }
    List<CalendarEvent> events = new ArrayList<>();
    lives.forEach(
        (key, life) ->
            events.add(
                new CalendarEvent(
                    UUID.nameUUIDFromBytes((whose + "|" + key).getBytes(StandardCharsets.UTF_8)).toString(),
                    life.last, life.changes, life.changed, life.now == null)));
    events.sort(Comparator.comparing((CalendarEvent e) -> e.says().date()).thenComparing(CalendarEvent::uid));
    return events;
  }
}
