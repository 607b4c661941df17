package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.athlete.NearNames;
import boundwright.cli.installed.UserPlace;
import boundwright.clip.keep.BucketAddress;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.store.Workbench;
import boundwright.store.engine.DataPlace;
import boundwright.store.engine.Database;
import boundwright.store.engine.PostgresAddress;
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

  /** The environment variable with the address of a PostgreSQL. */
  static final String DATABASE_VARIABLE = "BOUNDWRIGHT_DATABASE";

  /** The environment variable with the place of the films. */
  static final String FILMS_VARIABLE = "BOUNDWRIGHT_FILMS";

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Data folder. Default: $" + VARIABLE + ", or else data in the current folder; of the program with its own Java, your usual folder for data.")
  private @Nullable String data;

  @Option(
      names = "--database",
      paramLabel = "ADDRESS",
      description = {
        "A PostgreSQL for the rows, jdbc:postgresql://host/database?user=NAME&currentSchema=NAME; films stay in the data folder.",
        "Default: $" + DATABASE_VARIABLE + ", or else a file in the data folder. The password: $" + PostgresAddress.PASSWORD_VARIABLE + "."
      })
  private @Nullable String database;

  @Option(
      names = "--films-in",
      paramLabel = "PLACE",
      description = {
        "An S3-compatible store for the films, s3://BUCKET/FOLDER. Default: $" + FILMS_VARIABLE + ", or else the data folder.",
        "The server: $" + BucketAddress.ENDPOINT_VARIABLE + ". The keys: $" + BucketAddress.KEY_VARIABLE + " and $" + BucketAddress.SECRET_VARIABLE + ", or a file, $"
            + BucketAddress.FILE_VARIABLE + "."
      })
  private @Nullable String films;

  /** Whether the coach named a store, by option or by variable. */
  public boolean named(Surroundings s) {
    return folderNamed(s) || !address(s).isBlank();
  }

  /** Whether the coach named the folder. */
  public boolean folderNamed(Surroundings s) {
    return data != null || !s.environment().getOrDefault(VARIABLE, "").isBlank();
  }

  private String address(Surroundings s) {
    return database != null ? database : s.environment().getOrDefault(DATABASE_VARIABLE, "");
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
    return folderNamed(s) ? folder(s) : usual(s, "data-demo", "boundwright-demo");
  }

  private static Path usual(Surroundings s, String here, String atHome) {
    return UserPlace.installed(s.environment())
        ? UserPlace.of(atHome, s.environment(), System.getProperty("os.name", ""), Path.of(System.getProperty("user.home", "")))
        : s.path(here);
  }

  /** The folder, and the PostgreSQL that was named. */
  public DataPlace place(Surroundings s) {
    return place(s, folder(s));
  }

  /** A folder, and the PostgreSQL that was named. */
  DataPlace place(Surroundings s, Path folder) {
    String address = address(s);
    return new DataPlace(folder, address.isBlank() ? null : PostgresAddress.of(address, s.environment()), bucket(s));
  }

  /** The bucket of the films, or null if they are in the folder. */
  public @Nullable BucketAddress bucket(Surroundings s) {
    String place = films != null ? films : s.environment().getOrDefault(FILMS_VARIABLE, "");
    return place.isBlank() ? null : BucketAddress.of(place, s.environment(), s.folder());
  }

  /** The folder, for what exchanges its files; refuses a PostgreSQL. */
  public Path folderAlone(Surroundings s) {
    DataPlace place = place(s);
    if (place.database() != null) {
      throw new RefusedException(
          "This works on a data folder, not on " + place + ". Bring it back into a new folder with --data NEW and without --database, then:"
              + " boundwright move --from NEW --to ADDRESS, with a schema that holds nothing yet.");
    }
    return place.folder();
  }

  /** Opens the place; it is made if it is missing. */
  Workbench openOrMake(Surroundings s) {
    return Workbench.open(place(s), s.clock());
  }

  /** Opens a folder that is there: a mistyped name must not make an empty one. */
  public Workbench open(Surroundings s) {
    DataPlace place = place(s);
    Path folder = place.folder();
    if (place.database() != null && !Database.isThere(place)) {
      throw new RefusedException("There is no store in " + place + ". Check the name of the database and the schema, or begin one: boundwright serve, or boundwright move.");
    }
    if (place.database() == null && !Files.isDirectory(folder)) {
      throw new RefusedException(
          "There is no data folder " + folder + ". Name yours with --data DIR or $" + VARIABLE
              + ", or begin one: boundwright serve, or boundwright import FILE.csv.");
    }
    return Workbench.open(place, s.clock());
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
            ? "There are no athletes here yet: add them on the screen (boundwright serve), or import a list of names: boundwright import FILE --as roster."
            : near.isEmpty()
                ? "The squad has " + names.size() + " athletes, none with a name near that: "
                    + String.join(", ", names.subList(0, Math.min(names.size(), 8))) + (names.size() > 8 ? " and " + (names.size() - 8) + " more." : ".")
                : "Did you mean " + String.join(", or ", near) + "?";
    return new RefusedException("No athlete is called '" + name.strip() + "'. " + wayOut);
  }

  /** The unit asked on the command line, or else the coach's setting. */
  public static LengthUnit unit(@Nullable String asked, CoachSettings settings) {
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
