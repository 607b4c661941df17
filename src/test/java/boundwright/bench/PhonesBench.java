package boundwright.bench;

import boundwright.athlete.Athlete;
import boundwright.flight.Outcome;
import boundwright.store.Workbench;
import boundwright.store.engine.DataPlace;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * A promise: with 50 phones that log at once and two coaches who edit, an answer's 99th percentile stays under 250 ms on two idle
 * cores, and every tap that was answered is in the database exactly once. The server is a process of its own; 50 phones log any of the
 * athletes through the runway page's route and hear after each tap and every {@value #HEAR_S} s what is new (or log one athlete each
 * through the page's form, with {@code form}), each in its own rhythm (waits exponential with the mean given; with a mean of 0 all in
 * the same moment, every {@value #WHISTLE_S} s), one tap in twenty sent twice at the same
 * moment; two coaches save an athlete's form and the plan in turn, every 5 s. The same phones log before, unmeasured, for
 * {@value #WARM_UP_S} s, so that the figures are of a warm program. Run it with
 * {@code bench/phones50 [SECONDS [MEAN_GAP_S [REPS_EACH [SEED [runway|form]]]]]}.
 */
public final class PhonesBench {
  static final int WARM_UP_S = 20;
  private static final int WHISTLE_S = 5;
  /** As the page's script has it. */
  private static final int HEAR_S = 10;
  private static final int PHONES = 50;
  static final int ATHLETES = 60;
  private static final double TWICE = 0.05;

  private PhonesBench() {}

  /** An answer's time. */
  private record Timed(String what, double ms) {}

  /** Arguments: seconds measured, mean gap of a phone's taps [s], reps of each athlete before, seed; all may be left out. */
  public static void main(String[] arguments) throws IOException, InterruptedException, SQLException {
    double seconds = number(arguments, 0, 60);
    double gap_s = number(arguments, 1, 12);
    int repsEach = (int) number(arguments, 2, 120);
    long seed = (long) number(arguments, 3, 1);
    boolean form = arguments.length > 4 && arguments[4].equals("form");
    PrintStream out = System.out;
    Path folder = Files.createTempDirectory("phones50");
    fill(folder, repsEach);
    out.printf(Locale.ROOT, "%d phones, a tap every %.1f s each, %.0f s, %d reps each before, seed %d, by the %s%n", PHONES, gap_s, seconds, repsEach, seed, form ? "form" : "runway page");
    Map<String, Long> acknowledged = new HashMap<>();
    ConcurrentLinkedQueue<String> failures = new ConcurrentLinkedQueue<>();
    try (ServerProcess server = ServerProcess.start(folder)) {
      long first = System.nanoTime();
      new TrackPhone(server.url(), 1, seed).open("/");
      out.printf(Locale.ROOT, "the day's first question: %.0f ms%n", (System.nanoTime() - first) / 1e6);
      round(server, form, WARM_UP_S, 2, seed + 1, acknowledged, failures);
      Busy before = Busy.now(server);
      List<Timed> times = round(server, form, seconds, gap_s, seed + 2, acknowledged, failures);
      out.println(before.until(Busy.now(server), times.size()));
      for (String what : List.of("log", "look", "edit", "plan", "page")) {
        double[] of = times.stream().filter(t -> t.what.equals(what)).mapToDouble(Timed::ms).sorted().toArray();
        if (of.length > 0) {
          out.printf(
              Locale.ROOT, "%-6s n %5d   p50 %7.1f   p95 %7.1f   p99 %7.1f   max %7.1f ms%n", what, of.length, at(of, 0.5), at(of, 0.95),
              at(of, 0.99), of[of.length - 1]);
        }
      }
    }
    failures.stream().limit(10).forEach(f -> out.println("failed: " + f));
    out.printf(Locale.ROOT, "failures: %d%n", failures.size());
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("boundwright.db"))) {
      out.println(exactlyOnce(c, acknowledged, (long) repsEach * ATHLETES));
    }
  }

  /** Neighbouring seeds give a generator's first numbers close together: fifty phones would all tap in the same moment. */
  static long mixed(long seed) {
    return new SplittableRandom(seed).nextLong();
  }

  private static double number(String[] arguments, int i, double otherwise) {
    return i < arguments.length ? Double.parseDouble(arguments[i]) : otherwise;
  }

  static double at(double[] sorted, double share) {
    return sorted[Math.min(sorted.length - 1, (int) Math.ceil(share * sorted.length) - 1)];
  }

  private interface Hand {
    void act(Random random, List<Timed> times, Map<String, Long> acknowledged) throws IOException, InterruptedException;

    /** What it does every {@value #HEAR_S} s beside. */
    @SuppressWarnings("UnusedVariable") // for those who hear something
    default void hear(List<Timed> times) throws IOException, InterruptedException {}
  }

  private static List<Timed> round(
      ServerProcess server, boolean form, double seconds, double gap_s, long seed, Map<String, Long> acknowledged, ConcurrentLinkedQueue<String> failures)
      throws IOException, InterruptedException {
    long until = System.nanoTime() + (long) (seconds * 1e9);
    List<Thread> hands = new ArrayList<>();
    List<List<Timed>> times = new ArrayList<>();
    List<Map<String, Long>> known = new ArrayList<>();
    for (int i = 0; i < PHONES + 2; i++) {
      boolean coach = i >= PHONES;
      Hand hand = hand(server, form, i, seed);
      double mean_s = coach ? 5 : gap_s;
      Random random = new Random(mixed(seed * 1000 + i));
      List<Timed> ownTimes = new ArrayList<>();
      Map<String, Long> ownKnown = new HashMap<>();
      times.add(ownTimes);
      known.add(ownKnown);
      Thread thread = new Thread(() -> live(hand, random, mean_s, until, ownTimes, ownKnown, failures), "hand-" + i);
      hands.add(thread);
    }
    for (Thread t : hands) {
      t.start();
    }
    for (Thread t : hands) {
      t.join();
    }
    known.forEach(acknowledged::putAll);
    return times.stream().flatMap(List::stream).toList();
  }

  private static Hand hand(ServerProcess server, boolean form, int i, long seed) throws IOException, InterruptedException {
    boolean coach = i >= PHONES;
    if (!coach && !form) {
      RunwayPhone phone = new RunwayPhone(server.url());
      phone.look();
      return new Hand() {
        @Override
        public void act(Random random, List<Timed> times, Map<String, Long> acknowledged) throws IOException, InterruptedException {
          bring(phone, random, times, acknowledged);
        }

        @Override
        public void hear(List<Timed> times) throws IOException, InterruptedException {
          timed("look", times, phone::look);
        }
      };
    }
    TrackPhone phone = new TrackPhone(server.url(), 1 + i % ATHLETES, mixed(seed * 1000 + i));
    phone.open("/athlete/" + (1 + i % ATHLETES));
    int[] turn = {i};
    return coach ? (r, t, k) -> edit(phone, r, t, turn) : (r, t, k) -> tap(phone, r, t, k);
  }

  private static void live(
      Hand hand, Random random, double mean_s, long until, List<Timed> times, Map<String, Long> known, ConcurrentLinkedQueue<String> failures) {
    try {
      while (true) {
        long now = System.nanoTime();
        long wait = mean_s > 0 ? (long) (-mean_s * Math.log(1 - random.nextDouble()) * 1e9) : untilWhistle(now, until);
        long left = until - now;
        if (wait >= left) {
          return;
        }
        try {
          for (long due = now + wait; due - System.nanoTime() > HEAR_S * 1_000_000_000L; ) {
            Thread.sleep(HEAR_S * 1000L);
            hand.hear(times);
          }
          Thread.sleep(Math.max(0, now + wait - System.nanoTime()) / 1_000_000);
          hand.act(random, times, known);
        } catch (IOException e) {
          failures.add(String.valueOf(e));
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** With a gap of 0 everybody taps in the same moment, once every {@value #WHISTLE_S} s. */
  private static long untilWhistle(long now, long until) {
    long every = WHISTLE_S * 1_000_000_000L;
    return every - Math.floorMod(now - until, every) + 1_000_000;
  }

  private static void tap(TrackPhone phone, Random random, List<Timed> times, Map<String, Long> acknowledged)
      throws IOException, InterruptedException {
    String token = TrackPhone.token(random);
    String outcome = outcome(random).name();
    once(random, () -> timed("log", times, () -> phone.log(token, outcome)), () -> phone.log(token, outcome));
    acknowledged.put(token, phone.athlete());
  }

  static Outcome outcome(Random random) {
    return random.nextInt(4) == 0 ? random.nextBoolean() ? Outcome.SHORT : Outcome.LATE : Outcome.IN;
  }

  /** A tap on the runway page, and then what is new, as the page does it. */
  private static void bring(RunwayPhone phone, Random random, List<Timed> times, Map<String, Long> acknowledged)
      throws IOException, InterruptedException {
    String token = TrackPhone.token(random);
    long athlete = 1L + random.nextInt(ATHLETES);
    String line = RunwayPhone.line(token, athlete, outcome(random));
    once(random, () -> timed("log", times, () -> phone.bring(token, line)), () -> phone.bring(token, line));
    acknowledged.put(token, athlete);
    timed("look", times, phone::look);
  }

  /** Sends a tap, one in twenty a second time in the same moment. */
  private static void once(Random random, Asking tap, Asking same) throws IOException, InterruptedException {
    if (random.nextDouble() >= TWICE) {
      tap.ask();
      return;
    }
    ConcurrentLinkedQueue<IOException> lost = new ConcurrentLinkedQueue<>();
    Thread again =
        new Thread(
            () -> {
              try {
                same.ask();
              } catch (IOException e) {
                lost.add(e);
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            });
    again.start();
    tap.ask();
    again.join();
    if (!lost.isEmpty()) {
      throw lost.remove();
    }
  }

  private static void edit(TrackPhone phone, Random random, List<Timed> times, int[] turn) throws IOException, InterruptedException {
    if (turn[0]++ % 2 == 0) {
      String path = "/athlete/" + (1 + random.nextInt(ATHLETES)) + "/edit";
      String[] page = new String[1];
      timed("page", times, () -> page[0] = phone.open(path));
      timed("edit", times, () -> phone.send(page[0], path, "rung", String.valueOf(2 * random.nextInt(7))));
    } else {
      String[] page = new String[1];
      timed("page", times, () -> page[0] = phone.open("/plan"));
      timed("plan", times, () -> phone.send(page[0], "/plan", "title", "Invented day " + random.nextInt(1000)));
    }
  }

  private interface Asking {
    void ask() throws IOException, InterruptedException;
  }

  private static void timed(String what, List<Timed> times, Asking asking) throws IOException, InterruptedException {
    long begin = System.nanoTime();
    asking.ask();
    times.add(new Timed(what, (System.nanoTime() - begin) / 1e6));
  }

  private static void fill(Path folder, int repsEach) {
    fill(DataPlace.of(folder), repsEach);
  }

  /** Sixty invented athletes with so many reps each. */
  static void fill(DataPlace place, int repsEach) {
    Clock clock = Clock.system(ZoneId.systemDefault());
    try (Workbench bench = Workbench.open(place, clock)) {
      for (int a = 1; a <= ATHLETES; a++) {
        Athlete athlete =
            bench.athletes().add(InventedSquad.athlete(a));
        bench.logbook().logAll(new InventedReps(a).of(athlete.id(), repsEach, 8, LocalDate.now(clock).minusDays(1)));
      }
      bench.settings().keep(InventedSquad.DAY);
    }
  }

  /** Compares what was answered with the database: every token once, its rep of the right athlete, and no rep besides. */
  static String exactlyOnce(Connection c, Map<String, Long> acknowledged, long before) throws SQLException {
    Map<String, Long> there = new HashMap<>();
    long reps;
    long apart;
    try (Statement s = c.createStatement()) {
      try (ResultSet r = s.executeQuery("SELECT tap.token, rep.athlete_id FROM tap JOIN rep ON rep.id = tap.rep_id")) {
        while (r.next()) {
          there.put(r.getString(1), r.getLong(2));
        }
      }
      try (ResultSet r = s.executeQuery("SELECT count(*) FROM rep")) {
        reps = r.next() ? r.getLong(1) : 0;
      }
      try (ResultSet r = s.executeQuery("SELECT count(DISTINCT rep_id) FROM tap")) {
        apart = r.next() ? r.getLong(1) : 0;
      }
    }
    long lost = acknowledged.entrySet().stream().filter(e -> !e.getValue().equals(there.get(e.getKey()))).count();
    long doubled = reps - before - apart;
    return String.format(
        Locale.ROOT, "answered %d, lost %d, doubled %d, kept besides %d", acknowledged.size(), lost, doubled, there.size() - acknowledged.size() + lost);
  }
}
