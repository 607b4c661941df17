package boundwright.cli;

import boundwright.meet.Entrant;
import boundwright.meet.MeetSheet;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Which meet, in which unit: what the commands inside a meet share. */
final class MeetOptions {
  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--meet", paramLabel = "MEET", description = "Number or name of the meet. Default: today's.")
  private @Nullable String meet;

  @Mixin private UnitOption unit = new UnitOption();

  Workbench open(Surroundings s) {
    return data.open(s);
  }

  LengthUnit unit(Workbench bench) {
    return unit.in(bench);
  }

  /** The meet to look at: the one that was asked for, else the one that is on today, else the newest. */
  MeetSheet look(Workbench bench, LocalDate today) {
    List<MeetSheet> all = all(bench);
    List<MeetSheet> on = on(all, today);
    return meet != null ? asked(all, meet) : on.size() == 1 ? on.get(0) : all.get(0);
  }

  /**
   * The meet to write to: the one that was asked for, else the only one that is on today.
   *
   * @throws RefusedException with the meets there are, if that is none or more than one
   */
  MeetSheet sheet(Workbench bench, LocalDate today) {
    List<MeetSheet> all = all(bench);
    if (meet != null) {
      return asked(all, meet);
    }
    List<MeetSheet> on = on(all, today);
    if (on.size() != 1) {
      throw new RefusedException(
          (on.isEmpty() ? "No meet is on today, " : on.size() + " meets are on today, ") + today + ". Name one with --meet: "
              + listed(on.isEmpty() ? all : on) + ".");
    }
    return on.get(0);
  }

  private static List<MeetSheet> all(Workbench bench) {
    List<MeetSheet> all = bench.meets().all();
    if (all.isEmpty()) {
      throw new RefusedException("There is no meet here yet. Begin one: boundwright meet new --name NAME.");
    }
    return all;
  }

  private static List<MeetSheet> on(List<MeetSheet> all, LocalDate day) {
    return all.stream().filter(m -> m.date().equals(day)).toList();
  }

  private static String listed(List<MeetSheet> meets) {
    return String.join(", ", meets.stream().limit(8).map(m -> m.id() + " (" + m.name() + ", " + m.date() + ")").toList());
  }

  private static MeetSheet asked(List<MeetSheet> all, String meet) {
    String asked = meet.strip();
    List<MeetSheet> called =
        all.stream().filter(m -> String.valueOf(m.id()).equals(asked) || m.name().equalsIgnoreCase(asked)).toList();
    if (called.size() != 1) {
      throw new RefusedException(
          (called.isEmpty() ? "No meet is called '" + asked + "' or has this number." : called.size() + " meets are called '" + asked + "'. Use the number.")
              + " There are: " + listed(all) + ".");
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
