package boundwright.bench;

import boundwright.account.Accounts;
import boundwright.account.Role;
import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.store.Workbench;
import boundwright.store.engine.DataPlace;
import boundwright.store.engine.PostgresAddress;
import boundwright.track.Group;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What pages cost while squads and years grow, asked of the program as a process of its own. {@code bench/growth squads [ATHLETES...]}: a group
 * of 20 is shown out of ever larger squads. {@code bench/growth clubs [CLUBS [ATHLETES [REPS_EACH [ROUNDS]]]]}: clubs of one PostgreSQL, asked in
 * turn, while every tenth time a rep is logged by another program. Other programs on the machine change the times, not the time of a core.
 */
public final class GrowthBench {
  private static final long SEED = 16;
  private static final int SHOWN = 20;
  private static final int SQUAD_REPS = 60;
  private static final int PER_DAY = 6;
  private static final int ASKED = 40;
  private static final int WARM_UP = 30;
  private static final int TAP_EVERY = 10;
  private static final List<String> PAGES = List.of("/", "/watch", "/tapes", "/athlete/1", "/athlete/2/marks?sequence=RRL+RRL&steps=4", "/runway/parcel");

  private GrowthBench() {}

  /** Arguments: as above. */
  public static void main(String[] arguments) throws IOException, InterruptedException, SQLException {
    if (arguments.length > 0 && arguments[0].equals("clubs")) {
      clubs(number(arguments, 1, 60), number(arguments, 2, 60), number(arguments, 3, 2400), number(arguments, 4, 5));
    } else {
      for (int i = 1; i < Math.max(2, arguments.length); i++) {
        squad(number(arguments, i, 60));
      }
    }
  }

  private static int number(String[] arguments, int at, int usual) {
    return arguments.length > at ? Integer.parseInt(arguments[at]) : usual;
  }

  private static Clock clock() {
    return Clock.system(ZoneId.systemDefault());
  }

  /** So many invented athletes with some reps, and a group of the first. */
  private static long fill(Workbench bench, int athletes, int repsEach) {
    Set<Long> group = new LinkedHashSet<>();
    for (int a = 1; a <= athletes; a++) {
      Athlete athlete = bench.athletes().add(InventedSquad.athlete(a));
      bench.logbook().logAll(new InventedReps(a).of(athlete.id(), repsEach, PER_DAY, LocalDate.now(clock()).minusDays(1)));
      if (a <= SHOWN) {
        group.add(athlete.id());
      }
    }
    bench.settings().keep(InventedSquad.DAY);
    // the day's snapshot and everybody's model are there, as on a day that went on for a minute
    bench.logbook().dayBegins(LocalDate.now(clock()));
    return bench.attendance().keep(new Group(0, "Shown", group)).id();
  }

  private static void squad(int athletes) throws IOException, InterruptedException {
    PrintStream out = System.out;
    Path folder = Files.createTempDirectory("growth");
    long group;
    try (Workbench bench = Workbench.open(folder, clock())) {
      group = fill(bench, athletes, SQUAD_REPS);
    }
    try (ServerProcess server = ServerProcess.start(folder);
        Workbench other = Workbench.open(folder, clock())) {
      Asking asking = new Asking(server, "");
      out.printf(Locale.ROOT, "%d athletes with %d reps each; ms: p50, p99; server, ms of a core%n", athletes, SQUAD_REPS);
      for (String page : List.of("/?group=" + group, "/", "/watch", "/tapes")) {
        asking.get(page);
        asking.print(out, page + ", nothing changed", ASKED, () -> asking.get(page));
        Random random = new Random(SEED);
        asking.print(
            out, page + ", a rep of one athlete before each", ASKED,
            () -> {
              other.logbook().log(tap(1 + random.nextInt(Math.min(SHOWN, athletes)), random));
              asking.get(page);
            });
      }
    }
  }

  private static Rep tap(long athlete, Random random) {
    return new InventedReps(random.nextLong()).of(athlete, 1, 1, LocalDate.now(clock())).get(0);
  }

  private static void clubs(int clubs, int athletes, int repsEach, int rounds) throws IOException, InterruptedException, SQLException {
    PrintStream out = System.out;
    Path folder = Files.createTempDirectory("growth");
    try (EmbeddedPostgres postgres = EmbeddedPostgres.builder().setServerConfig("max_connections", "200").start()) {
      String address = "jdbc:postgresql://localhost:" + postgres.getPort() + "/postgres?user=postgres";
      DataPlace place = new DataPlace(folder, PostgresAddress.of(address, Map.of()));
      long begin = System.nanoTime();
      Map<Long, String> sessions = new LinkedHashMap<>();
      Map<Long, Workbench> others = new LinkedHashMap<>();
      try (Workbench first = Workbench.open(place, clock())) {
        fill(first, athletes, repsEach);
        Accounts accounts = new Accounts(first.accounts(), clock(), new SecureRandom());
        for (int c = 1; c <= clubs; c++) {
          long club = c == 1 ? 1 : accounts.addClub("Invented club " + c).id();
          sessions.put(club, accounts.enter(accounts.make("coach" + c, "Coach " + c, Role.HEAD_COACH, club, null).id(), false, "bench"));
        }
        copy(address, sessions.keySet());
        sessions.keySet().forEach(club -> others.put(club, club == 1 ? first : first.club(club)));
        out.printf(Locale.ROOT, "%d clubs of %d athletes, %d reps in all, filled in %.0f s%n", clubs, athletes, (long) clubs * athletes * repsEach, (System.nanoTime() - begin) / 1e9);
        try (ServerProcess server = ServerProcess.start(folder, Map.of("BOUNDWRIGHT_DATABASE", address))) {
          ask(server, sessions, others, athletes, rounds, out);
        }
        others.values().stream().filter(w -> w != first).forEach(Workbench::close);
      }
    }
  }

  private static void ask(
      ServerProcess server, Map<Long, String> sessions, Map<Long, Workbench> others, int athletes, int rounds, PrintStream out)
      throws IOException, InterruptedException {
    Map<Long, Asking> asking = new LinkedHashMap<>();
    sessions.forEach((club, secret) -> asking.put(club, new Asking(server, "boundwright_who=" + secret)));
    Asking any = asking.values().iterator().next();
    List<Long> clubs = List.copyOf(asking.keySet());
    out.println("ms: p50, p99; server, ms of a core");
    int[] next = {0};
    any.print(out, "a club's first page, its store being opened", clubs.size(), () -> of(asking, clubs, next[0]++).get("/"));
    Random random = new Random(SEED);
    for (String page : PAGES) {
      for (int c = 0; c < clubs.size(); c++) {
        of(asking, clubs, c).get(page);
      }
      int[] at = {0};
      any.print(
          out, page + ", a rep in its club before every " + TAP_EVERY + "th", clubs.size() * rounds,
          () -> {
            int i = at[0]++;
            if (i % TAP_EVERY == 0) {
              Objects.requireNonNull(others.get(clubs.get(i % clubs.size()))).logbook().log(tap(1 + random.nextInt(athletes), random));
            }
            of(asking, clubs, i).get(page);
          });
    }
  }

  private static Asking of(Map<Long, Asking> asking, List<Long> clubs, int i) {
    return Objects.requireNonNull(asking.get(clubs.get(i % clubs.size())));
  }

  /** Makes the schemas of the other clubs like the first one's, rows, functions and triggers included; references are left out, as nobody is erased here. */
  private static void copy(String address, Set<Long> clubs) throws SQLException {
    String from = "boundwright";
    try (Connection c = DriverManager.getConnection(address);
        Statement s = c.createStatement()) {
      List<String> tables = ask(s, "SELECT relname FROM pg_class WHERE relnamespace = '" + from + "'::regnamespace AND relkind = 'r' ORDER BY 1");
      List<String> functions = ask(s, "SELECT pg_get_functiondef(oid) FROM pg_proc WHERE pronamespace = '" + from + "'::regnamespace");
      List<String> triggers = ask(s, "SELECT pg_get_triggerdef(t.oid) FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid WHERE c.relnamespace = '" + from + "'::regnamespace AND NOT tgisinternal");
      Set<String> filled = Set.of("athlete", "athlete_token", "rep", "learned", "squad_prior", "drill", "setting", "written", "squad_group", "group_member", "flyway_schema_history");
      for (long club : clubs) {
        String to = club == 1 ? from : from + "_club_" + club;
        if (club != 1) {
          s.execute("CREATE SCHEMA " + to);
          for (String table : tables) {
            s.execute("CREATE TABLE " + to + "." + table + " (LIKE " + from + "." + table + " INCLUDING ALL)");
            if (filled.contains(table)) {
              s.execute("INSERT INTO " + to + "." + table + " SELECT * FROM " + from + "." + table);
            }
          }
          for (String made : Stream.concat(functions.stream(), triggers.stream()).toList()) {
            s.execute(made.replace(from + ".", to + "."));
          }
        }
        for (String table : List.of("athlete", "rep")) {
          s.execute("SELECT setval(pg_get_serial_sequence('" + to + "." + table + "', 'id'), (SELECT max(id) FROM " + to + "." + table + "))");
        }
      }
      s.execute("ANALYZE");
    }
  }

  private static List<String> ask(Statement s, String sql) throws SQLException {
    List<String> out = new ArrayList<>();
    try (ResultSet r = s.executeQuery(sql)) {
      while (r.next()) {
        out.add(r.getString(1));
      }
    }
    return out;
  }

  private interface Question {
    void ask() throws IOException, InterruptedException;
  }

  /** How long the newest answer of anybody took [ms]; the questions come one after the other. */
  private static double last;

  /** A browser of one club. */
  private static final class Asking {
    private final ServerProcess server;
    private final HttpClient client = HttpClient.newHttpClient();
    private final String cookie;

    Asking(ServerProcess server, String cookie) {
      this.server = server;
      this.cookie = cookie;
    }

    void get(String page) throws IOException, InterruptedException {
      HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(server.url() + page)).timeout(Duration.ofMinutes(2));
      if (!cookie.isEmpty()) {
        request.header("Cookie", cookie);
      }
      long begin = System.nanoTime();
      HttpResponse<byte[]> answer = client.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
      last = (System.nanoTime() - begin) / 1e6;
      if (answer.statusCode() != 200) {
        throw new IOException(page + " answered " + answer.statusCode());
      }
    }

    void print(PrintStream out, String what, int asked, Question question) throws IOException, InterruptedException {
      for (int i = 0; i < Math.min(WARM_UP, asked / 2); i++) {
        question.ask();
      }
      List<Double> times = new ArrayList<>();
      Duration before = cpu();
      for (int i = 0; i < asked; i++) {
        question.ask();
        times.add(last);
      }
      double core_ms = cpu().minus(before).toNanos() / 1e6 / asked;
      times.sort(Double::compare);
      out.printf(Locale.ROOT, "%-64s %8.1f %8.1f %8.1f%n", what, times.get(asked / 2), times.get(asked * 99 / 100), core_ms);
    }

    private Duration cpu() {
      return server.process().toHandle().info().totalCpuDuration().orElse(Duration.ZERO);
    }
  }
}
