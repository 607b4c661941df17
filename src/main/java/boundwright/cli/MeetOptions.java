package boundwright.cli;

import boundwright.meet.Entrant;
import boundwright.meet.MeetSheet;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Which meet, in which unit: what the commands inside a meet share. */
final class MeetOptions {
  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--meet", paramLabel = "MEET", description = "Number or name of the meet. Default: the newest.")
  private @Nullable String meet;

  @Option(names = "--unit", paramLabel = "UNIT", description = "m, or ft for feet and inches. Default: the settings.")
  private @Nullable String unit;

  Workbench open(Surroundings s) {
    return data.open(s);
  }

  LengthUnit unit(Workbench bench) {
    return DataOptions.unit(unit, bench.settings().settings());
  }

  /** The meet that was asked for. */
  MeetSheet sheet(Workbench bench) {
    List<MeetSheet> all = bench.meets().all();
    if (all.isEmpty()) {
      throw new RefusedException("There is no meet here yet. Begin one: boundwright meet new --name NAME.");
    }
    if (meet == null) {
      return all.get(0);
    }
    String asked = meet.strip();
    List<MeetSheet> called =
        all.stream().filter(m -> String.valueOf(m.id()).equals(asked) || m.name().equalsIgnoreCase(asked)).toList();
    if (called.size() != 1) {
      throw new RefusedException(
          (called.isEmpty() ? "No meet is called '" + asked + "' or has this number." : called.size() + " meets are called '" + asked + "'. Use the number.")
              + " There are: " + String.join(", ", all.stream().limit(8).map(m -> m.id() + " (" + m.name() + ", " + m.date() + ")").toList()) + ".");
    }
    return called.get(0);
  }

  /** Who is called so in a meet. */
  static Entrant entrant(MeetSheet sheet, String name) {
    return sheet
        .entrant(name)
        .orElseThrow(
            () ->
                new RefusedException(
                    "Nobody on the list of " + sheet.name() + " is called '" + name.strip() + "'. "
                        + (sheet.entrants().isEmpty()
                            ? "The list is empty: boundwright meet enter --athlete NAME or --rival LABEL."
                            : "There are: " + String.join(", ", sheet.entrants().stream().map(Entrant::name).toList()) + ".")));
  }
}
