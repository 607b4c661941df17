package boundwright.web.settings;

import boundwright.athlete.Level;
import boundwright.load.Season;
import boundwright.load.SeasonStart;
import boundwright.web.page.Figures;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/**
 * The limits of the load and what is asked before speed is added, as forms.
 *
 * @param fields what stands in each field
 * @param refused why they were not kept, by field
 * @param said what was just done, or empty
 * @param squad from when a part of the year holds for the squad, oldest first
 * @param today the day
 * @param wasGuard what the form of the limits is made from
 * @param wasGate what the form of what is asked is made from
 */
public record LimitsView(Map<String, String> fields, Map<String, String> refused, String said, List<SeasonStart> squad, LocalDate today, String wasGuard, String wasGate) {
  /** The part of the year of the squad today, in words. */
  public String season() {
    return SeasonStart.ofSquad(squad, today).map(Season::label).orElse("not set: the lowest limits are asked");
  }

  /** Since when, as it is read. */
  public String since(SeasonStart start) {
    return Figures.day(start.from(), today);
  }

  /** What stands in a field. */
  public String field(String name) {
    return fields.getOrDefault(name, "");
  }

  /** The sentence beside a field, or empty. */
  public String refusal(String name) {
    return refused.getOrDefault(name, "");
  }

  /** Whether anything is marked, so that nothing of it may be folded away. */
  public boolean marked() {
    return !refused.isEmpty();
  }

  /** The parts of the year. */
  public List<Season> seasons() {
    return List.of(Season.values());
  }

  /** The levels. */
  public List<Level> levels() {
    return Level.KNOWN;
  }

  /** The name of the field of a season and level. */
  public String session(Season season, Level level) {
    return "session-" + season.name() + "-" + level.name();
  }
}
