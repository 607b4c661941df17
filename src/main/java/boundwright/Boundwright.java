package boundwright;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.Surroundings;
import boundwright.cli.installed.UserPlace;
import java.io.BufferedWriter;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** The program: hands the real clock, folder and terminal to the command line. */
public final class Boundwright {
  /** How long Ctrl-C waits for what is being written [s]; the store is safe even if it is not done by then. */
  private static final long PATIENCE_S = 5;

  private Boundwright() {}

  /** Runs one command and ends with its exit code; Ctrl-C lets it close its server and its store first. */
  public static void main(String[] arguments) {
    CountDownLatch stop = new CountDownLatch(1);
    CountDownLatch closed = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(new Thread(() -> close(stop, closed), "close"));
    int exit =
        BoundwrightCommand.run(
            new Surroundings(
                Clock.system(ZoneId.systemDefault()),
                Path.of("").toAbsolutePath(),
                environment(),
                writer(System.out),
                writer(System.err),
                url -> stop.await()),
            arguments);
    closed.countDown();
    if (stop.getCount() > 0) {
      System.exit(exit);
    }
  }

  /** The launcher of the program with its own Java can set no variable, only a property. */
  private static Map<String, String> environment() {
    Map<String, String> all = new HashMap<>(System.getenv());
    String home = System.getProperty(UserPlace.PROPERTY, "");
    if (!home.isEmpty()) {
      all.put(UserPlace.HOME, home);
    }
    return all;
  }

  private static void close(CountDownLatch stop, CountDownLatch closed) {
    stop.countDown();
    try {
      if (!closed.await(PATIENCE_S, TimeUnit.SECONDS)) {
        System.err.println("boundwright was stopped in the middle of something; reps that were answered are safe.");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** UTF-8, so that scripts read the same bytes everywhere; only a Windows terminal has a character set of its own. */
  private static PrintWriter writer(PrintStream stream) {
    boolean windows = System.getProperty("os.name", "").toLowerCase(Locale.ROOT).startsWith("windows");
    String terminal = System.getProperty("stdout.encoding", System.getProperty("sun.stdout.encoding", "UTF-8"));
    Charset charset = windows && Charset.isSupported(terminal) ? Charset.forName(terminal) : StandardCharsets.UTF_8;
    return new PrintWriter(new BufferedWriter(new OutputStreamWriter(stream, charset)));
  }
}
