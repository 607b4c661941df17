package boundwright.cli;

import boundwright.flight.Rep;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A rep as {@code log --json} and {@code export --json} print it: the names of the import file's columns, positions from
 * the take-off mark [m]. A footprint that was not seen is null; faults are empty
 * when the rep was clean and when nobody judged it, which {@code judged} tells apart.
 */
record RepAnswer(
    long id,
    String athlete,
    String date,
    String sequence,
    int approach_steps,
    String surface,
    List<@Nullable Double> footprints_m,
    @Nullable Double landing_m,
    @Nullable String outcome,
    @Nullable Integer broke_off_after,
    @Nullable Double mark_to_sand_m,
    boolean judged,
    List<String> faults) {

  static RepAnswer of(String athlete, Rep rep) {
    return new RepAnswer(
        rep.id(),
        athlete,
        rep.date().toString(),
        rep.sequence().text(),
        rep.approachSteps(),
        rep.surface().label(),
        rep.footprints_m().stream().<@Nullable Double>map(Json::lengthOrNull).toList(),
        Json.lengthOrNull(rep.landing_m()),
        rep.outcome() == null ? null : rep.outcome().label(),
        rep.brokeOffAfter(),
        Json.lengthOrNull(rep.markToSand_m()),
        rep.judged(),
        rep.faults());
  }
}
