package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.athlete.NearNames;
import boundwright.cli.installed.UserPlace;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.store.Workbench;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where the data are and how lengths are written: what every command that opens the data folder shares. */
public final class DataOptions {
  /** The environment variable that names the data folder. */
  static final String VARIABLE = "BOUNDWRIGHT_DATA";

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Data folder. Default: $" + VARIABLE + ", or else data in the current folder; of the program with its own Java, your usual folder for data.")
  private @Nullable String data;

  /** Whether the coach named the folder, by option or by variable. */
  public boolean named(Surroundings s) {
    return data != null || !s.environment().getOrDefault(VARIABLE, "").isBlank();
  }

  /** The folder that was named, or the usual one. */
  public Path folder(Surroundings s) {
    String variable = s.environment().getOrDefault(VARIABLE, "");
    if (data == null && variable.isBlank()) {
      return usual(s, "data", "boundwright");
    }
    return s.path(data != null ? data : variable);
  }

  /** The folder that was named, or that of the invented squad, apart from real athletes. */
  Path demoFolder(Surroundings s) {
    return named(s) ? folder(s) : usual(s, "data-demo", "boundwright-demo");
  }

  private static Path usual(Surroundings s, String here, String atHome) {
    return UserPlace.installed(s.environment())
        ? UserPlace.of(atHome, s.environment(), System.getProperty("os.name", ""), Path.of(System.getProperty("user.home", "")))
        : s.path(here);
  }

  /** Opens the folder; it is made if it is missing. */
  Workbench openOrMake(Surroundings s) {
    return Workbench.open(folder(s), s.clock());
  }

  /** Opens a folder that is there: a mistyped name must not make an empty one. */
  public Workbench open(Surroundings s) {
    Path folder = folder(s);
    if (!Files.isDirectory(folder)) {
      throw new RefusedException(
          "There is no data folder " + folder + ". Name yours with --data DIR or $" + VARIABLE
              + ", or begin one: boundwright serve, or boundwright import FILE.csv.");
    }
    return Workbench.open(folder, s.clock());
  }

  /** The athlete called so; refuses an unknown name and lists those that are near. */
  public static Athlete athlete(Workbench bench, String name) {
    return bench.athletes().byName(name).orElseThrow(() -> unknown(bench, name));
  }

  private static RefusedException unknown(Workbench bench, String name) {
    List<String> names = bench.athletes().all().stream().map(Athlete::name).toList();
    List<String> near = NearNames.of(name, names);
    String wayOut =
        names.isEmpty()
            ? "There are no athletes here yet: add them on the screen (boundwright serve), or import a file of reps."
            : near.isEmpty()
                ? "The squad has " + names.size() + " athletes, none with a name near that: "
                    + String.join(", ", names.subList(0, Math.min(names.size(), 8))) + (names.size() > 8 ? ", ..." : "") + "."
                : "Did you mean " + String.join(", or ", near) + "?";
    return new RefusedException("No athlete is called '" + name.strip() + "'. " + wayOut);
  }

  /** The unit asked on the command line, or else the coach's setting. */
  static LengthUnit unit(@Nullable String asked, CoachSettings settings) {
    if (asked == null) {
      return settings.unit();
    }
    return switch (asked.strip().toLowerCase(Locale.ROOT)) {
      case "m", "metres", "meters", "metric" -> LengthUnit.METRES;
      case "ft", "feet", "feet-inches", "feet and inches" -> LengthUnit.FEET_INCHES;
      default -> throw new RefusedException("The unit '" + asked + "' is not known. Use m (metres) or ft (feet and inches).");
    };
  }
}
