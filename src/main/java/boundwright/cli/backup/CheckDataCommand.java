package boundwright.cli.backup;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.DataOptions;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.clip.keep.KeptFilms;
import boundwright.quantity.Notes;
import boundwright.store.Workbench;
import boundwright.store.backup.Counts;
import boundwright.store.backup.DataCheck;
import boundwright.store.engine.DataPlace;
import boundwright.store.engine.FarFilms;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Looks through the data folder. */
@Command(
    name = "check-data",
    description = {
      "Looks through the data folder or the PostgreSQL, its films and its backups, and changes nothing. Exit code 1 if something is wrong.%n"
    })
public final class CheckDataCommand implements Callable<Integer> {
  private static final int WRONG = 1;

  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  /** @param top the command above */
  public CheckDataCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** What {@code check-data --json} prints; described in {@code docs/formats-json.md}. */
  record Answer(long athletes, long reps, int backups, List<String> troubles) {}

  private DataCheck.Report report(Surroundings s) {
    DataPlace place = data.place(s);
    if (place.database() == null) {
      try (KeptFilms films = KeptFilms.of(place.folder(), place.films(), s.clock())) {
        return new DataCheck(place.folder(), s.clock(), films.elsewhere() ? new FarFilms(films) : null).look();
      }
    }
    try (Workbench bench = data.open(s)) {
      return bench.checkData();
    }
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    DataCheck.Report report = report(s);
    long athletes = report.counts().map(c -> c.of("athlete")).orElse(0L);
    long reps = report.counts().map((Counts c) -> c.of("rep")).orElse(0L);
    if (top.json()) {
      Json.print(s.out(), new Answer(athletes, reps, report.backups(), report.troubles()));
    } else {
      s.out().println(
          Notes.counted(athletes, "athlete") + ", " + Notes.counted(reps, "rep") + ", " + Notes.counted(report.backups(), "whole backup")
              + " in the folder." + (report.troubles().isEmpty() ? " All is well." : ""));
      report.troubles().forEach(s.err()::println);
    }
    return report.troubles().isEmpty() ? 0 : WRONG;
  }
}
