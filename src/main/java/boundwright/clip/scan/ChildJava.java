package boundwright.clip.scan;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Starts a part of this program as a process of its own, which a damaged film may bring down alone. */
public final class ChildJava {
  private ChildJava() {}

  /**
   * Starts a class's {@code main} with this program's Java and class path; what it writes to its error output is lost.
   *
   * @param heap_mb largest heap [MB]
   * @param does what it does, for the sentence of a refusal: {@code reads films}
   * @throws RefusedException if the system starts no process
   */
  public static Process start(int heap_mb, Class<?> main, List<String> arguments, String does) {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx" + heap_mb + "m", "-XX:+UseSerialGC",
                "-Djava.awt.headless=true", "-cp", System.getProperty("java.class.path"), main.getName()));
    command.addAll(arguments);
    try {
      return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    } catch (IOException e) {
      throw new RefusedException("The process that " + does + " could not be started: " + e.getMessage() + ".", e);
    }
  }
}
