package boundwright;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Starts a program of the tests in a process of its own. */
public final class ChildProgram {
  private ChildProgram() {}

  /** Starts the class's {@code main} with this class path; what it says of errors goes where the tests' own go. */
  public static Process start(Class<?> program, String... args) throws IOException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx128m", "-cp", System.getProperty("java.class.path"),
                program.getName()));
    command.addAll(List.of(args));
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }
}
