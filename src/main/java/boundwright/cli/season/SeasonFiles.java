package boundwright.cli.season;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.Choices;
import boundwright.cli.DataOptions;
import boundwright.cli.Surroundings;
import boundwright.load.GuardSettings;
import boundwright.quantity.RefusedException;
import boundwright.season.Done;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRepository;
import boundwright.season.SeasonRepository.Kept;
import boundwright.season.solve.SeasonWork;
import boundwright.store.Workbench;
import boundwright.store.season.PlanFile;
import boundwright.store.season.SeasonFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;

/** What the season's commands are asked about: a file, and the log beside it where a data folder is named. */
final class SeasonFiles {
  private static final long MOST_BYTES = 20L << 20;

  @Mixin private DataOptions data = new DataOptions();

  /** What is known when a command runs; the season with the holds that stand in the data folder. */
  record Asked(SeasonInput season, SeasonWork work, Done done) {
    /** What was done before a day: as the log says, or as planned where there is none. */
    Done before(LocalDate day, SeasonPlan plan) {
      return done.work().isEmpty() ? Done.asPlanned(plan, day) : new Done(day, done.work());
    }

    /** A day of the season; refuses others. */
    LocalDate day(String written, Surroundings s) {
      LocalDate day = Choices.anyDay(written, s);
      if (day.isBefore(season.first()) || day.isAfter(season.last())) {
        throw new RefusedException(day + " lies outside the season, " + season.first() + " to " + season.last() + ".");
      }
      return day;
    }
  }

  /** Reads the season; athletes are found by their names in the data folder, if one is named. */
  <T> T with(BoundwrightCommand top, String file, Function<Asked, T> answer) {
    Surroundings s = top.surroundings();
    byte[] bytes = bytes(s.path(file));
    if (!data.named(s)) {
      SeasonInput season = SeasonFile.read(bytes, GuardSettings.DEFAULT);
      return answer.apply(new Asked(season, SeasonWork.ofFile(), Done.nothing(season)));
    }
    try (Workbench bench = data.open(s)) {
      SeasonInput season = season(bench, bytes);
      SeasonWork work = work(bench);
      return answer.apply(new Asked(work.held(season, s.today()), work, work.done(season, s.today())));
    }
  }

  /** What planning takes from a data folder. */
  static SeasonWork work(Workbench bench) {
    return new SeasonWork(bench.stays(), bench.workLog(), bench.care(), bench.ladder().rules().stay());
  }

  /** The season of a file, its athletes found by their names. */
  static SeasonInput season(Surroundings s, Workbench bench, String file) {
    return season(bench, bytes(s.path(file)));
  }

  private static SeasonInput season(Workbench bench, byte[] bytes) {
    return SeasonFile.read(bytes, bench.care().guard(), (name, written) -> DataOptions.athlete(bench, name).id());
  }

  /** The season with a number, or else the latest. */
  static Kept kept(SeasonRepository seasons, @Nullable Long number) {
    return (number == null ? seasons.all().stream().findFirst() : seasons.byId(number))
        .orElseThrow(
            () -> new RefusedException((number == null ? "There is no season here yet." : "No season has the number " + number + ".") + " boundwright season lists them."));
  }

  static SeasonPlan plan(Surroundings s, String file) {
    return PlanFile.read(bytes(s.path(file)));
  }

  private static byte[] bytes(Path file) {
    try {
      if (!Files.isRegularFile(file)) {
        throw new RefusedException("There is no file " + file + ". Begin with boundwright season example > season.json.");
      }
      if (Files.size(file) > MOST_BYTES) {
        throw new RefusedException(file + " has " + (Files.size(file) >> 20) + " MB; a season or a plan has at most " + (MOST_BYTES >> 20) + ". Name its own file.");
      }
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new RefusedException(file + " could not be read: " + e.getMessage() + ". Check that it is there and that you may read it.", e);
    }
  }
}
