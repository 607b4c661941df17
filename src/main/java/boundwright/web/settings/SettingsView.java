package boundwright.web.settings;

import boundwright.athlete.Surface;
import boundwright.quantity.LengthUnit;
import java.util.List;
import java.util.Map;

/**
 * The settings as a form.
 *
 * @param unit the unit in which the lengths of the form are written
 * @param fields what stands in each field
 * @param refused why they were not kept, by field; {@code form} for what no single field is to blame
 * @param said what was just done, or empty
 * @param season the part of the year, as the guard takes it
 * @param was what the form of the settings is made from
 */
public record SettingsView(LengthUnit unit, Map<String, String> fields, Map<String, String> refused, String said, String season, String was) {
  /** What stands in a field. */
  public String field(String name) {
    return fields.getOrDefault(name, "");
  }

  /** The sentence beside a field, or empty. */
  public String refusal(String name) {
    return refused.getOrDefault(name, "");
  }

  /** The surfaces to choose from. */
  public List<Surface> surfaces() {
    return List.of(Surface.values());
  }

  /** The units to choose from. */
  public List<LengthUnit> units() {
    return List.of(LengthUnit.values());
  }
}
