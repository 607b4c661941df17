package boundwright.store;

import boundwright.clip.keep.BucketAddress;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.HttpURLConnection;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * A real S3-compatible server over a folder, in a process of its own with a class path of its own. The build brings its jar by the ordinary
 * Maven client; its signatures, listings and pieces are not ours.
 */
public final class FilmServer implements AutoCloseable {
  /** What the tests' keys are; nobody else's. */
  public static final String SECRET = "made-up-secret-of-the-tests";

  private static final Path JAR = Path.of(System.getProperty("boundwright.test.s3", "target/s3/s3proxy.jar"));

  private static @Nullable FilmServer shared;

  private final Path folder;
  private final int port;
  private @Nullable Process process;

  private FilmServer(Path folder, int port) {
    this.folder = folder;
    this.port = port;
  }

  /** The one of the process, which runs to its end. */
  public static synchronized FilmServer shared() {
    FilmServer running = shared;
    if (running == null) {
      try {
        Path folder = Files.createTempDirectory("films");
        FilmServer started = start(folder);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> started.end()));
        running = started;
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      shared = running;
    }
    return running;
  }

  private void end() {
    stop();
    try (var all = Files.walk(folder)) {
      for (Path p : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(p);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Starts one whose buckets are folders in {@code folder}; there is one, {@code films}. */
  public static FilmServer start(Path folder) {
    try {
      FilmServer server = new FilmServer(folder, freePort());
      Files.createDirectories(folder.resolve("buckets").resolve("films"));
      server.start();
      return server;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0)) {
      return free.getLocalPort();
    }
  }

  /** Starts it where it was, unless it runs. */
  public void start() {
    Process running = process;
    if (running != null && running.isAlive()) {
      return;
    }
    if (!Files.exists(JAR)) {
      throw new AssertionError("the test's S3 server is not at " + JAR.toAbsolutePath() + ": mvn process-test-resources brings it");
    }
    Properties p = new Properties();
    p.setProperty("s3proxy.endpoint", "http://127.0.0.1:" + port);
    p.setProperty("s3proxy.authorization", "aws-v2-or-v4");
    p.setProperty("s3proxy.identity", "tester");
    p.setProperty("s3proxy.credential", SECRET);
    p.setProperty("jclouds.provider", "filesystem");
    p.setProperty("jclouds.filesystem.basedir", folder.resolve("buckets").toString());
    Path settings = folder.resolve("server.properties");
    try {
      try (var out = Files.newBufferedWriter(settings)) {
        p.store(out, null);
      }
      process =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx256m", "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-jar",
                  JAR.toString(), "--properties", settings.toString())
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve("server.log").toFile())
              .start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    awaitOpen();
  }

  private void awaitOpen() {
    for (int i = 0; i < 1200; i++) {
      try {
        HttpURLConnection c = (HttpURLConnection) URI.create(endpoint() + "/").toURL().openConnection();
        c.getResponseCode();
        return;
      } catch (IOException e) {
        sleep();
      }
    }
    throw new AssertionError("the S3 server of the tests does not start; see " + folder.resolve("server.log"));
  }

  private static void sleep() {
    try {
      Thread.sleep(100);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError(e);
    }
  }

  /** Where it is. */
  public String endpoint() {
    return "http://127.0.0.1:" + port;
  }

  /** What a program is given to be let in. */
  public Map<String, String> environment() {
    return new HashMap<>(
        Map.of(BucketAddress.ENDPOINT_VARIABLE, endpoint(), BucketAddress.KEY_VARIABLE, "tester", BucketAddress.SECRET_VARIABLE, SECRET));
  }

  /** A folder in its bucket. */
  public BucketAddress at(String name) {
    return BucketAddress.of("s3://films/" + name, environment(), folder);
  }

  /** A film or a pack as it lies there. */
  public Path lying(String name) {
    return folder.resolve("buckets").resolve("films").resolve(name);
  }

  /** What it holds below a folder of its bucket, by name. */
  public List<String> held(String name) {
    Path at = lying(name);
    if (!Files.isDirectory(at)) {
      return List.of();
    }
    try (var all = Files.walk(at)) {
      return all.filter(Files::isRegularFile).map(f -> at.relativize(f).toString()).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Kills it; what it holds stays. */
  public void stop() {
    Process running = process;
    if (running != null) {
      running.destroyForcibly();
      try {
        running.waitFor(60, TimeUnit.SECONDS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }

  @Override
  public void close() {
    stop();
  }
}
