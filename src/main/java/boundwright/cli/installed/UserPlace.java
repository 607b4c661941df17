package boundwright.cli.installed;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The place in which the machine's user expects a program to keep data: what the XDG base directory specification 0.8 says on Linux,
 * and the folders that macOS and Windows name themselves (from memory).
 */
public final class UserPlace {
  /** The environment variable that tells the folder of the program, where it came as one folder with its own Java. */
  public static final String HOME = "BOUNDWRIGHT_HOME";

  /** The property of Java that tells the same, where the launcher can set no variable. */
  public static final String PROPERTY = "boundwright.home";

  private UserPlace() {}

  /** Whether the program came as one folder, so that the folder in which it was called says nothing about the data. */
  public static boolean installed(Map<String, String> environment) {
    return !environment.getOrDefault(HOME, "").isBlank();
  }

  /**
   * The folder for the data.
   *
   * @param name of the folder, {@code boundwright} or another beside it
   * @param environment the environment variables
   * @param system the name of the operating system as Java tells it
   * @param user the user's own folder, where no variable tells it
   */
  public static Path of(String name, Map<String, String> environment, String system, Path user) {
    String asked = system.toLowerCase(Locale.ROOT);
    String home = environment.getOrDefault("HOME", "");
    Path own = home.isBlank() ? user : Path.of(home);
    if (asked.startsWith("windows")) {
      return under(environment.get("APPDATA"), own.resolve("AppData").resolve("Roaming")).resolve(name);
    }
    if (asked.startsWith("mac")) {
      return own.resolve("Library").resolve("Application Support").resolve(name);
    }
    return under(environment.get("XDG_DATA_HOME"), own.resolve(".local").resolve("share")).resolve(name);
  }

  /** What the variable names; the specification says that a relative path in it is to be passed over. */
  private static Path under(@Nullable String variable, Path usual) {
    if (variable == null || variable.isBlank()) {
      return usual;
    }
    Path named = Path.of(variable);
    return named.isAbsolute() ? named : usual;
  }
}
