package boundwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Map;

/**
 * What the command line touches of the world, handed in so that tests can run every command in the same process.
 *
 * @param clock tells which day it is
 * @param folder the caller's folder; relative paths start there
 * @param environment the environment variables
 * @param out where answers go
 * @param err where refusals go
 * @param until what {@code serve} waits for before it closes
 */
public record Surroundings(
    Clock clock, Path folder, Map<String, String> environment, PrintWriter out, PrintWriter err, Until until) {

  /** Waits until the coach has finished with the server. */
  @FunctionalInterface
  public interface Until {
    /**
     * Returns when the server is to close.
     *
     * @param url where it listens
     */
    void finished(String url) throws InterruptedException;
  }

  /** Says what goes wrong while something else goes on. */
  public void trouble(String sentence) {
    err.println(sentence);
    err.flush();
  }

  /** The day on which the command runs. */
  public LocalDate today() {
    return LocalDate.now(clock);
  }

  /** A path as the caller means it. */
  public Path path(String written) {
    return folder.resolve(written).normalize();
  }
}
