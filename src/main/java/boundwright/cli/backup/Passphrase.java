package boundwright.cli.backup;

import boundwright.cli.Surroundings;
import boundwright.quantity.RefusedException;
import java.io.Console;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The passphrase of a sealed backup: typed, or from a file or the environment for scripts; never an argument, which other users could see. */
final class Passphrase {
  private static final String VARIABLE = "BOUNDWRIGHT_PASSPHRASE";

  @Option(
      names = "--passphrase-file",
      paramLabel = "FILE",
      description = "Take the passphrase from the first line of a file. Default: $" + VARIABLE + ", or it is asked for.")
  private @Nullable String file;

  /** The passphrase; asked twice where it is a new one. */
  @SuppressWarnings("SystemConsoleNull") // on Java 17 there is none where nobody types
  char[] read(Surroundings s, boolean isNew) {
    if (file != null) {
      Path path = s.path(file);
      try {
        return Files.readAllLines(path).stream().findFirst().orElse("").toCharArray();
      } catch (IOException e) {
        throw new RefusedException("The passphrase cannot be read from " + path + ": " + e.getMessage() + ". Check the name.", e);
      }
    }
    String variable = s.environment().getOrDefault(VARIABLE, "");
    if (!variable.isEmpty()) {
      return variable.toCharArray();
    }
    Console console = System.console();
    if (console == null) {
      throw new RefusedException("A passphrase is needed and nobody can be asked here. Give it with --passphrase-file FILE or in $" + VARIABLE + ".");
    }
    char[] typed = typed(console, "Passphrase: ");
    if (isNew && !Arrays.equals(typed, typed(console, "Once more: "))) {
      throw new RefusedException("The two passphrases differ, so no backup was made. Try again.");
    }
    return typed;
  }

  private static char[] typed(Console console, String prompt) {
    char[] typed = console.readPassword(prompt);
    if (typed == null) {
      throw new RefusedException("No passphrase was given. Nothing was done.");
    }
    return typed;
  }
}
