package boundwright.web.settings;

import boundwright.athlete.Level;
import boundwright.load.Season;
import java.util.List;
import java.util.Map;

/**
 * What the guard and the gate ask, as two forms.
 *
 * @param fields what stands in each field
 * @param refused why they were not kept, by field
 * @param said what was just done, or empty
 */
public record LimitsView(Map<String, String> fields, Map<String, String> refused, String said) {
  /** What stands in a field. */
  public String field(String name) {
    return fields.getOrDefault(name, "");
  }

  /** The sentence beside a field, or empty. */
  public String refusal(String name) {
    return refused.getOrDefault(name, "");
  }

  /** The parts of the year. */
  public List<Season> seasons() {
    return List.of(Season.values());
  }

  /** The levels. */
  public List<Level> levels() {
    return List.of(Level.values());
  }

  /** The name of the field of a season and level. */
  public String session(Season season, Level level) {
    return "session-" + season.name() + "-" + level.name();
  }
}
