package boundwright.cli.installed;

import boundwright.store.engine.SqliteLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Keeps the loaded classes of a first start in a file beside the program, which saves later starts a third of their time. Such a file
 * holds only for the place in which it was made, so it cannot come with the program: the first start at a place makes it, in a process of its
 * own that goes on when the program is closed. Nothing needs it, and where the program may not write beside itself there is none.
 */
public final class Rehearsal {
  private static final String ARCHIVE = "boundwright.jsa";
  private static final String PLACE = "place.txt";

  private Rehearsal() {}

  /** Begins to make the file beside what runs, if the program came as one folder and has none for this place. */
  public static void beside(Map<String, String> environment) {
    Path home = Path.of(environment.getOrDefault(UserPlace.HOME, "")).toAbsolutePath();
    if (!UserPlace.installed(environment) || !Files.isWritable(home)) {
      return;
    }
    try {
      Path place = home.resolve(PLACE);
      if (!Files.exists(home.resolve(ARCHIVE)) || !Files.exists(place) || !Files.readString(place).equals(home.toString())) {
        start(List.of("-D" + UserPlace.PROPERTY + "=" + home), List.of("rehearse"));
      }
    } catch (IOException e) {
      // nothing needs the file
      return;
    }
  }

  /**
   * Makes the file.
   *
   * @return whether it is there now
   * @throws IOException if the place cannot be written to
   */
  static boolean make(Path home) throws IOException, InterruptedException {
    Path work = home.resolve("rehearsal");
    clear(work);
    Files.createDirectory(work);
    try {
      // the file stands on another with the classes of Java itself, which a runtime as small as ours comes without
      start(List.of("-Xshare:dump"), List.of()).waitFor();
      Path made = work.resolve(ARCHIVE);
      Process rehearsal =
          start(
              List.of("-XX:ArchiveClassesAtExit=" + made),
              List.of("serve", "--demo", "--rehearse", "--port", "0", "--data", work.resolve("data").toString()));
      if (rehearsal.waitFor() != 0 || !Files.exists(made)) {
        return false;
      }
      Files.writeString(home.resolve(PLACE), home.toString(), StandardCharsets.UTF_8);
      Files.move(made, home.resolve(ARCHIVE), StandardCopyOption.REPLACE_EXISTING);
      return true;
    } finally {
      clear(work);
    }
  }

  private static Process start(List<String> forJava, List<String> arguments) throws IOException {
    List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
    command.addAll(
        List.of(
            "-XX:+UseSerialGC", "-D" + SqliteLibrary.PROPERTY + "=" + System.getProperty(SqliteLibrary.PROPERTY, ""), "-cp",
            System.getProperty("java.class.path")));
    command.addAll(forJava);
    if (!arguments.isEmpty()) {
      command.add("boundwright.Boundwright");
      command.addAll(arguments);
    }
    return new ProcessBuilder(command).redirectOutput(ProcessBuilder.Redirect.DISCARD).redirectError(ProcessBuilder.Redirect.DISCARD).start();
  }

  private static void clear(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path p : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(p);
      }
    }
  }
}
