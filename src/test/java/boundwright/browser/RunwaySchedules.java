package boundwright.browser;

import boundwright.Boundwright;
import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import boundwright.web.WebServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Random schedules over the runway page in real Chromium: taps, looks, undo and hand over on two phones, lost connections, reloads, closed
 * pages, clocks set wrong by an hour, the program stopped or killed and started again over the same data. At the end everything is
 * connected, and then: what a thumb saw light is on its phone; every tap kept on a phone is on the server exactly once, in the phone's
 * order, on the right day; and the phones' marks are the server's to 1e-9 m. Run with {@code bench/schedules 300 1 0.1}: schedules, seed,
 * and the share in which the program is a process of its own that is killed.
 */
public final class RunwaySchedules implements AutoCloseable {
  private static final double SAME_M = 1e-9;
  private static final String SEQUENCE = "RRL x2";

  private final Chromium chromium = new Chromium();

  @Override
  public void close() {
    chromium.close();
  }

  /** Runs them; arguments: how many, seed, share with a killed process. */
  public static void main(String[] args) throws Exception {
    int many = args.length > 0 ? Integer.parseInt(args[0]) : 300;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    double killed = args.length > 2 ? Double.parseDouble(args[2]) : 0.1;
    int bad = 0;
    try (RunwaySchedules all = new RunwaySchedules()) {
      for (int i = 0; i < many; i++) {
        String said;
        try {
          said = all.run(seed + i, 25, new Random(seed + i).nextDouble() < killed);
        } catch (RuntimeException e) {
          said = "failed: " + e + " " + String.valueOf(e.getCause()).lines().limit(3).toList();
        }
        bad += said.startsWith("ok") ? 0 : 1;
        System.out.println("schedule " + (seed + i) + " " + said);
      }
    }
    System.out.println(many + " schedules, " + bad + " wrong");
    System.exit(bad == 0 ? 0 : 1);
  }

  /**
   * One schedule.
   *
   * @param steps how many things happen
   * @param process whether the program runs as a process of its own, which is killed; otherwise it is stopped and started
   * @return {@code ok} and what happened, or what was wrong
   */
  String run(long seed, int steps, boolean process) throws IOException {
    Random random = new Random(seed);
    Path data = Files.createTempDirectory("boundwright-schedule");
    List<Long> athletes = new ArrayList<>();
    try (Workbench w = open(data)) {
      for (String name : List.of("Ada Fenn", "Bo Lark", "Cy Marrow", "Dot Ashby")) {
        athletes.add(w.athletes().add(new Athlete(0, name, Level.INTERMEDIATE, Foot.RIGHT, 4)).id());
      }
      w.settings().keep(new DayPlan("", List.of(new Drill(Sequence.parse(SEQUENCE), null, 2, 20, true))));
    }
    int port = freePort();
    Program program = new Program(data, port, process);
    program.start();
    List<SchedulePhone> phones = new ArrayList<>();
    List<String> happened = new ArrayList<>();
    try {
      for (int i = 0; i < 2; i++) {
        phones.add(new SchedulePhone(chromium.browser(), "http://127.0.0.1:" + port, new Random(random.nextLong())));
        phones.get(i).begin();
      }
      for (int i = 0; i < steps; i++) {
        if (random.nextInt(10) == 0) {
          happened.add(program.turn());
        } else {
          int phone = random.nextInt(3) == 0 ? 1 : 0;
          happened.add((phone + 1) + " " + phones.get(phone).act(athletes));
        }
      }
      program.start();
      phones.forEach(SchedulePhone::end);
      phones.forEach(SchedulePhone::hear);
      List<List<Map<String, Object>>> shelves = phones.stream().map(SchedulePhone::shelf).toList();
      List<double[]> marks = phones.stream().map(p -> athletes.stream().mapToDouble(p::mark_m).toArray()).toList();
      program.stop();
      String wrong = wrong(data, athletes, phones, shelves, marks);
      return (wrong.isEmpty() ? "ok " : "WRONG " + wrong + " after ") + happened;
    } catch (RuntimeException e) {
      throw new IllegalStateException("seed " + seed + " after " + happened, e);
    } finally {
      phones.forEach(SchedulePhone::close);
      program.stop();
    }
  }

  private static String wrong(
      Path data, List<Long> athletes, List<SchedulePhone> phones, List<List<Map<String, Object>>> shelves, List<double[]> marks) {
    List<String> wrong = new ArrayList<>();
    try (Workbench w = open(data)) {
      LocalDate today = LocalDate.now(w.clock());
      Set<String> tokens = new HashSet<>();
      Set<String> undone = new HashSet<>();
      for (List<Map<String, Object>> shelf : shelves) {
        shelf.stream().filter(t -> "UNDO".equals(t.get("kind"))).forEach(t -> undone.add(String.valueOf(t.get("of"))));
      }
      int expected = 0;
      List<Rep> reps = athletes.stream().flatMap(a -> w.reps().inOrder(a).stream()).toList();
      for (int i = 0; i < phones.size(); i++) {
        List<String> kept = new ArrayList<>();
        long before = 0;
        for (Map<String, Object> t : shelves.get(i)) {
          String kind = String.valueOf(t.get("kind"));
          if (!kind.equals("LOOK")) {
            kept.add(kind.equals("REP") ? "REP " + Objects.requireNonNull((Number) t.get("athleteId"), "athlete").longValue() + " " + t.get("outcome") : kind);
          }
          if (!"sent".equals(t.get("state"))) {
            wrong.add("phone " + (i + 1) + " has " + kind + " as " + t.get("state") + " " + t.get("why"));
          }
          String token = String.valueOf(t.get("token"));
          if (!tokens.add(token)) {
            wrong.add("token twice " + token);
          }
          if (kind.equals("REP") && !undone.contains(token)) {
            expected++;
            List<Rep> its = reps.stream().filter(r -> token.equals(w.track().token(r.id()))).toList();
            if (its.size() != 1) {
              wrong.add("phone " + (i + 1) + " " + token + " is there " + its.size() + " times");
            } else {
              Rep r = its.get(0);
              if (!Objects.equals(String.valueOf(r.outcome()), t.get("outcome")) || !r.date().equals(today)) {
                wrong.add("another rep: " + r);
              }
              if (r.id() < before) {
                wrong.add("phone " + (i + 1) + " out of order at " + r.id());
              }
              before = r.id();
            }
          }
        }
        if (!kept.equals(phones.get(i).lit)) {
          wrong.add("phone " + (i + 1) + " lit " + phones.get(i).lit + " and kept " + kept);
        }
      }
      if (reps.size() != expected) {
        wrong.add(reps.size() + " reps on the server, " + expected + " expected");
      }
      for (int a = 0; a < athletes.size(); a++) {
        Athlete athlete = w.athletes().byId(athletes.get(a)).orElseThrow();
        double server =
            w.advisor().advise(athlete, Sequence.parse(SEQUENCE), 4, Surface.TRACK, w.settings().settings()).markToSand_m();
        for (int i = 0; i < phones.size(); i++) {
          if (!(Math.abs(marks.get(i)[a] - server) <= SAME_M)) {
            wrong.add("phone " + (i + 1) + " says " + marks.get(i)[a] + " m for " + athlete.name() + ", the server " + server);
          }
        }
      }
    }
    return String.join("; ", wrong);
  }

  private static Workbench open(Path data) {
    return Workbench.open(data, Clock.system(ZoneId.systemDefault()));
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0)) {
      return socket.getLocalPort();
    }
  }

  /** The program over one folder: inside this process, or as one that can be killed. */
  private static final class Program {
    private final Path data;
    private final int port;
    private final boolean process;
    private @Nullable Workbench bench;
    private @Nullable WebServer server;
    private @Nullable Process child;

    Program(Path data, int port, boolean process) {
      this.data = data;
      this.port = port;
      this.process = process;
    }

    private boolean runs() {
      return server != null || child != null;
    }

    String turn() throws IOException {
      if (runs()) {
        stop();
        return process ? "killed" : "stopped";
      }
      start();
      return "started";
    }

    void start() throws IOException {
      if (runs()) {
        return;
      }
      if (!process) {
        Workbench w = open(data);
        bench = w;
        server = WebServer.start(w, "127.0.0.1", port);
        return;
      }
      child =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1", "-cp",
                  System.getProperty("java.class.path"), Boundwright.class.getName(), "serve", "--data", data.toString(), "--port",
                  String.valueOf(port))
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      for (int i = 0; i < 600; i++) {
        try (Socket s = new Socket(InetAddress.getLoopbackAddress(), port)) {
          if (s.isConnected()) {
            return;
          }
        } catch (IOException notYet) {
          sleep();
        }
      }
      throw new IllegalStateException("the program did not start");
    }

    private static void sleep() {
      try {
        Thread.sleep(100);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }

    void stop() {
      if (child != null) {
        child.destroyForcibly();
        try {
          child.waitFor();
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
        }
        child = null;
      }
      if (server != null) {
        server.close();
        server = null;
      }
      if (bench != null) {
        bench.close();
        bench = null;
      }
    }
  }
}
