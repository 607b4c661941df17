package boundwright.cli.season;

import boundwright.athlete.Athlete;
import boundwright.cli.BoundwrightCommand;
import boundwright.cli.DataOptions;
import boundwright.cli.Json;
import boundwright.cli.OutFile;
import boundwright.cli.Surroundings;
import boundwright.quantity.RefusedException;
import boundwright.season.SeasonRepository.Kept;
import boundwright.season.SeasonRepository.Version;
import boundwright.season.calendar.CalendarEvent;
import boundwright.season.calendar.SeasonCalendar;
import boundwright.store.Workbench;
import boundwright.store.calendar.CalendarFile;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The calendar of a published plan as a file. */
@Command(
    name = "calendar",
    description = {
      "Writes the calendar of what was published, of an athlete or the squad, as a file that calendar programs take (RFC 5545).",
      "Example: boundwright season calendar --athlete NAME --out name.ics%n"
    })
final class SeasonCalendarCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--season", paramLabel = "N", description = "Number of the season. Default: the latest.")
  private @Nullable Long season;

  @Option(names = "--athlete", paramLabel = "NAME", description = "One athlete; any case. Default: the squad.")
  private @Nullable String athlete;

  @Option(names = "--out", required = true, paramLabel = "FILE.ics", description = "The file to write.")
  private String out = "";

  @Option(names = "--force", description = "Replace the file if it is there.")
  private boolean force;

  SeasonCalendarCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /**
   * The answer in JSON.
   *
   * @param file that was written
   * @param name of the calendar
   * @param version newest that is in it
   * @param events in it, those that were called off too
   * @param cancelled of them, called off
   */
  record CalendarAnswer(String file, String name, int version, int events, int cancelled) {}

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    Path file = s.path(out);
    OutFile.check(file, force);
    try (Workbench bench = data.open(s)) {
      Kept kept = SeasonFiles.kept(bench.seasons(), season);
      List<Version> versions = bench.seasons().versions(kept.id());
      if (versions.isEmpty()) {
        throw new RefusedException("No plan of " + kept.name() + " is published yet, so there is nothing for a calendar.");
      }
      ZoneId zone = s.clock().getZone();
      Athlete whose = athlete == null ? null : DataOptions.athlete(bench, athlete);
      SeasonCalendar calendar = whose == null ? SeasonCalendar.of(kept, versions, zone) : SeasonCalendar.of(kept, versions, whose.id(), zone);
      OutFile.write(file, CalendarFile.write(calendar, zone, s.clock().instant()), force);
      int cancelled = (int) calendar.events().stream().filter(CalendarEvent::cancelled).count();
      if (top.json()) {
        Json.print(s.out(), new CalendarAnswer(file.toString(), calendar.name(), kept.published(), calendar.events().size(), cancelled));
      } else {
        s.out().println(calendar.events().size() + " events" + (cancelled == 0 ? "" : ", " + cancelled + " of them called off,") + " written to " + file + ".");
      }
      return 0;
    }
  }
}
