package boundwright.bench;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.clip.keep.BucketAddress;
import boundwright.clip.truth.Filmed;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Foot;
import boundwright.store.FilmServer;
import boundwright.store.Workbench;
import boundwright.store.engine.DataPlace;
import boundwright.store.engine.PostgresAddress;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * How many films 1, 2 and 4 machines read in a minute: each machine a process of {@code boundwright work} with a data folder of its own, all on one
 * PostgreSQL, the films in an S3-compatible server; on this one computer, so that they share its cores. The films are painted. Counts in the
 * database itself how often each film was read. Linux only: it asks {@code /proc} for the cores' time.
 * Run it with {@code bench/workers [FILMS [FRAMES_PER_SECOND [MACHINES ...]]]}.
 */
public final class WorkersBench {
  private static final int DISTINCT = 3;
  private static final double SHUTTER_S = 0.002;
  private static final long SEED = 2000;
  private static final double TICKS = 100;

  private WorkersBench() {}

  /** Arguments: films, their frames a second, numbers of machines; the property {@code home} names the folder with the weights' folder. */
  public static void main(String[] arguments) throws IOException, InterruptedException, SQLException {
    int films = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 12;
    double fps = arguments.length > 1 ? Double.parseDouble(arguments[1]) : 60;
    List<Integer> machines = new ArrayList<>();
    for (int i = 2; i < arguments.length; i++) {
      machines.add(Integer.valueOf(arguments[i]));
    }
    PrintStream out = System.out;
    Path folder = Files.createTempDirectory("workers");
    List<Path> painted = new ArrayList<>();
    double bytes = 0;
    for (int k = 0; k < Math.min(DISTINCT, films); k++) {
      Path film = folder.resolve("made-up-" + k + ".mp4");
      Filmed.write(TrueClip.numbered(k, fps, Noise.NONE, false, SEED), film, SHUTTER_S);
      painted.add(film);
      bytes += Files.size(film);
    }
    int cores = Runtime.getRuntime().availableProcessors();
    out.printf(Locale.ROOT, "%d films of one rep, %d different ones, 1280 x 720, %.0f frames a second, %.1f MB each on average, %d cores%n%n", films, painted.size(), fps, bytes / painted.size() / 1e6, cores);
    out.println("| machines | films a minute | cores' time a film [s] | cores in use by them | load of the computer | read exactly once |\n| --- | --- | --- | --- | --- | --- |");
    try (EmbeddedPostgres postgres = EmbeddedPostgres.start();
        FilmServer server = FilmServer.start(Files.createDirectories(folder.resolve("s3")))) {
      for (int n : machines.isEmpty() ? List.of(1, 2, 4) : machines) {
        String address = "jdbc:postgresql://localhost:" + postgres.getPort() + "/postgres?user=postgres&currentSchema=with_" + n;
        out.println(new Run(folder, address, server, n, films, painted).row(cores));
        out.flush();
      }
    }
  }

  /** So many films read by so many machines. */
  private record Run(Path folder, String address, FilmServer server, int machines, int films, List<Path> painted) {
    String row(int cores) throws IOException, InterruptedException, SQLException {
      take();
      List<Process> running = new ArrayList<>();
      double load = 0;
      int looks = 0;
      long begin;
      long end;
      try (Connection c = DriverManager.getConnection(address)) {
        for (int i = 0; i < machines; i++) {
          running.add(machine(i));
        }
        while (count(c, "SELECT count(*) FROM clip WHERE state = 'WAITING'") == films) {
          Thread.sleep(50);
        }
        begin = System.nanoTime();
        while (count(c, "SELECT count(*) FROM clip WHERE state IN ('WAITING', 'READING')") > 0) {
          Thread.sleep(200);
          load += ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
          looks++;
        }
        end = System.nanoTime();
        double spent = 0;
        for (Process p : running) {
          spent += cores_s(p.pid());
        }
        double took_s = (end - begin) / 1e9;
        long once = count(c, "SELECT count(*) FROM (SELECT clip FROM read_off GROUP BY clip HAVING count(*) = 1) AS o");
        long all = count(c, "SELECT count(*) FROM read_off");
        return String.format(
            Locale.ROOT, "| %d | %.2f | %.1f | %.2f of %d | %.1f | %d of %d, %d readings |", machines, 60 * films / took_s, spent / films, spent / took_s, cores,
            load / Math.max(1, looks), once, films, all);
      } finally {
        for (Process p : running) {
          p.destroy();
          p.waitFor();
        }
      }
    }

    private String bucket() {
      return "s3://films/with-" + machines;
    }

    private void take() throws IOException, SQLException {
      Path own = folder.resolve("server-" + machines);
      DataPlace place = new DataPlace(own, PostgresAddress.of(address, Map.of()), BucketAddress.of(bucket(), server.environment(), folder));
      try (Workbench w = Workbench.open(place, Clock.systemUTC());
          Connection c = DriverManager.getConnection(address);
          Statement s = c.createStatement()) {
        s.execute("CREATE TABLE read_off (clip BIGINT NOT NULL)");
        s.execute("CREATE FUNCTION note_read() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN INSERT INTO read_off VALUES (NEW.id); RETURN NEW; END $$");
        s.execute("CREATE TRIGGER note_read AFTER UPDATE ON clip FOR EACH ROW WHEN (NEW.state = 'READ' AND OLD.film_kept = NEW.film_kept) EXECUTE FUNCTION note_read()");
        long athlete = w.athletes().add(new Athlete(0, "Invented", Level.INTERMEDIATE, Foot.RIGHT, 4)).id();
        for (int i = 0; i < films; i++) {
          try (InputStream film = Files.newInputStream(painted.get(i % painted.size()))) {
            w.clips().take(athlete, null, "made-up.mp4", film, null, 4, Surface.TRACK, null);
          }
        }
      }
    }

    private Process machine(int number) throws IOException {
      List<String> command =
          List.of(
              Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Dboundwright.home=" + System.getProperty("home", "target"),
              "-cp", System.getProperty("java.class.path"), "boundwright.Boundwright", "work", "--data", folder.resolve("machine-" + machines + "-" + number).toString(),
              "--database", address, "--films-in", bucket());
      ProcessBuilder builder = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).redirectOutput(ProcessBuilder.Redirect.DISCARD);
      builder.environment().putAll(server.environment());
      return builder.start();
    }
  }

  private static long count(Connection c, String question) throws SQLException {
    try (Statement s = c.createStatement();
        ResultSet r = s.executeQuery(question)) {
      r.next();
      return r.getLong(1);
    }
  }

  /** What a process and its children that ended took of the cores [s]; see proc(5), fields 14 to 17. */
  private static double cores_s(long pid) throws IOException {
    String stat = Files.readString(Path.of("/proc", Long.toString(pid), "stat"));
    String[] after = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
    double ticks = 0;
    for (int field = 14; field <= 17; field++) {
      ticks += Double.parseDouble(after[field - 3]);
    }
    return ticks / TICKS;
  }
}
