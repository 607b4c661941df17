package boundwright.bench;

import boundwright.store.engine.DataPlace;
import boundwright.store.engine.PostgresAddress;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Queue;
import java.util.Random;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Three servers, each a process of its own, on one PostgreSQL that writes to the disk as it should. Clients log reps with identities of their
 * own, each by any of the servers; one of the three is killed under load, and what was not answered is sent again to the others, as a
 * phone does. Some taps are sent to two servers in the same moment. At the end every tap that was answered is looked for in the database.
 * Run it with {@code bench/machines [SECONDS [CLIENTS [MEAN_GAP_S [SEED]]]]}.
 */
public final class MachinesBench {
  private static final int SERVERS = 3;
  private static final int REPS_EACH = 40;
  private static final double TWICE = 0.1;

  private MachinesBench() {}

  /** Arguments: seconds, clients, mean gap between a client's taps [s], seed; all may be left out. */
  public static void main(String[] arguments) throws IOException, InterruptedException, SQLException {
    double seconds = number(arguments, 0, 40);
    int clients = (int) number(arguments, 1, 24);
    double gap_s = number(arguments, 2, 1);
    long seed = (long) number(arguments, 3, 1);
    PrintStream out = System.out;
    Path folder = Files.createTempDirectory("machines");
    try (EmbeddedPostgres postgres = EmbeddedPostgres.start()) {
      String address = "jdbc:postgresql://localhost:" + postgres.getPort() + "/postgres?user=postgres";
      PhonesBench.fill(new DataPlace(folder, PostgresAddress.of(address, Map.of())), REPS_EACH);
      List<ServerProcess> servers = new ArrayList<>();
      for (int i = 0; i < SERVERS; i++) {
        servers.add(ServerProcess.start(folder, Map.of("BOUNDWRIGHT_DATABASE", address)));
      }
      out.printf(Locale.ROOT, "%d servers, %d clients, a tap every %.1f s each, %.0f s, seed %d; one server is killed in the middle%n", SERVERS, clients, gap_s, seconds, seed);
      Map<String, Long> answered = new HashMap<>();
      Queue<Double> times = new ConcurrentLinkedQueue<>();
      AtomicInteger again = new AtomicInteger();
      Queue<String> unanswered = new ConcurrentLinkedQueue<>();
      List<Client> phones = new ArrayList<>();
      for (int i = 0; i < clients; i++) {
        phones.add(new Client(servers, i, new Random(PhonesBench.mixed(seed * 1000 + i)), gap_s, times, again, unanswered));
      }
      long begin = System.nanoTime();
      long until = begin + (long) (seconds * 1e9);
      List<Thread> hands = new ArrayList<>();
      for (Client client : phones) {
        Thread hand =
            new Thread(
                () -> {
                  Map<String, Long> own = client.live(until);
                  synchronized (answered) {
                    answered.putAll(own);
                  }
                });
        hands.add(hand);
        hand.start();
      }
      Thread.sleep((long) (seconds * 500));
      servers.get(1).process().destroyForcibly().waitFor();
      out.printf(Locale.ROOT, "after %.1f s one server was killed%n", (System.nanoTime() - begin) / 1e9);
      for (Thread hand : hands) {
        hand.join();
      }
      double[] sorted = times.stream().mapToDouble(Double::doubleValue).sorted().toArray();
      out.printf(
          Locale.ROOT, "taps %d, p50 %.1f, p99 %.1f, max %.1f ms; sent again to another server %d; never answered %d%n", sorted.length, PhonesBench.at(sorted, 0.5),
          PhonesBench.at(sorted, 0.99), sorted[sorted.length - 1], again.get(), unanswered.size());
      servers.forEach(ServerProcess::close);
      try (Connection c = DriverManager.getConnection(address + "&currentSchema=boundwright")) {
        out.println(PhonesBench.exactlyOnce(c, answered, (long) REPS_EACH * PhonesBench.ATHLETES));
      }
    }
  }

  private static double number(String[] arguments, int i, double otherwise) {
    return i < arguments.length ? Double.parseDouble(arguments[i]) : otherwise;
  }

  /** A phone that knows all the servers. */
  private static final class Client {
    private final RunwayPhone[] phones;
    private final Random random;
    private final double gap_s;
    private final Queue<Double> times;
    private final AtomicInteger again;
    private final Queue<String> unanswered;
    private int at;

    Client(List<ServerProcess> servers, int number, Random random, double gap_s, Queue<Double> times, AtomicInteger again, Queue<String> unanswered)
        throws IOException, InterruptedException {
      this.phones = servers.stream().map(s -> new RunwayPhone(s.url())).toArray(RunwayPhone[]::new);
      for (RunwayPhone phone : phones) {
        phone.look();
      }
      this.at = number % phones.length;
      this.random = random;
      this.gap_s = gap_s;
      this.times = times;
      this.again = again;
      this.unanswered = unanswered;
    }

    /** Taps until the time is over; what was answered, by token. */
    Map<String, Long> live(long until) {
      Map<String, Long> answered = new HashMap<>();
      try {
        while (System.nanoTime() < until) {
          Thread.sleep((long) (-gap_s * Math.log(1 - random.nextDouble()) * 1e3));
          String token = TrackPhone.token(random);
          long athlete = 1L + random.nextInt(PhonesBench.ATHLETES);
          String line = RunwayPhone.line(token, athlete, PhonesBench.outcome(random));
          Thread twin = random.nextDouble() < TWICE ? twin(phones[(at + 1) % phones.length], token, line) : null;
          if (tap(token, line)) {
            answered.put(token, athlete);
          } else {
            unanswered.add(token);
          }
          if (twin != null) {
            twin.join();
          }
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      return answered;
    }

    /** Sends a tap until one of the servers answers that it is kept. */
    private boolean tap(String token, String line) throws InterruptedException {
      long begin = System.nanoTime();
      for (int tries = 0; tries < 10 * phones.length; tries++) {
        try {
          phones[at].bring(token, line);
          times.add((System.nanoTime() - begin) / 1e6);
          return true;
        } catch (IOException gone) {
          at = (at + 1) % phones.length;
          again.incrementAndGet();
          Thread.sleep(50);
        }
      }
      return false;
    }

    /** The same tap at another server in the same moment, whose answer nobody waits for. */
    private static Thread twin(RunwayPhone other, String token, String line) {
      Thread twin =
          new Thread(
              () -> {
                try {
                  other.bring(token, line);
                } catch (IOException gone) {
                  // a server that was killed: the tap itself goes to another
                } catch (InterruptedException e) {
                  Thread.currentThread().interrupt();
                }
              });
      twin.start();
      return twin;
    }
  }
}
