package boundwright.store.movein;

import boundwright.store.RepCsv;
import boundwright.store.RepImport;
import boundwright.store.Workbench;
import com.sun.management.OperatingSystemMXBean;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Writer;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.locks.LockSupport;

/**
 * How long a file of many reps takes to be taken in, and how much memory: {@code bench/import ROWS ATHLETES}. Five seasons of invented reps, the
 * same for the same numbers; the script holds the memory by {@code -Xmx512m}.
 */
final class ManyRows {
  private static final LocalDate FIRST = LocalDate.of(2021, 10, 1);
  private static final String[] SEQUENCES = {"RRL", "RL x5", "RRL x2", "LLR", "RRLL RRLL RR", "L x6"};
  private static final int[] CONTACTS = {3, 10, 6, 3, 10, 6};
  private static final int[] STEPS = {0, 2, 4, 6, 8};

  private ManyRows() {}

  public static void main(String[] args) throws IOException {
    int rows = Integer.parseInt(args[0]);
    int athletes = Integer.parseInt(args[1]);
    PrintStream out = System.out;
    Path folder = Files.createTempDirectory("many-rows");
    Path file = folder.resolve("reps.csv");
    write(file, rows, athletes);
    out.printf(Locale.ROOT, "%d rows of %d athletes, %.0f MB%n", rows, athletes, Files.size(file) / 1e6);
    try (Workbench bench = Workbench.open(folder.resolve("data"), Clock.fixed(Instant.parse("2026-11-29T12:00:00Z"), ZoneOffset.UTC))) {
      long begin = System.nanoTime();
      long cpu = cpu_ns();
      Thread watch =
          new Thread(
              () -> {
                while (bench.athletes().all().isEmpty()) {
                  LockSupport.parkNanos(50_000_000);
                }
                out.printf(Locale.ROOT, "on disk after %.1f s, %.1f s of a core; what follows is learning%n", (System.nanoTime() - begin) / 1e9, (cpu_ns() - cpu) / 1e9);
              });
      watch.start();
      RepImport.Result result = new RepImport(bench).take(() -> RepCsv.open(file), new RepImport.Order(false, false, "reps.csv"));
      out.printf(
          Locale.ROOT, "%d taken, %d athletes, %d problems in %.1f s, %.1f s of a core%n", result.taken(), result.newAthletes(), result.problems().size(),
          (System.nanoTime() - begin) / 1e9, (cpu_ns() - cpu) / 1e9);
    }
    if (Files.exists(Path.of("/proc/self/status"))) {
      Files.readAllLines(Path.of("/proc/self/status")).stream().filter(l -> l.startsWith("VmHWM")).forEach(out::println);
    }
  }

  private static long cpu_ns() {
    return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
  }

  /** Days in order, as a log grows: everybody trains three times a week. */
  static void write(Path file, int rows, int athletes) throws IOException {
    Random random = new Random(20261129);
    int days = 5 * 52 * 3;
    try (Writer text = Files.newBufferedWriter(file);
        BufferedWriter out = new BufferedWriter(text)) {
      out.write("date,athlete,sequence,approach_steps,surface,footprints_m,landing_m,outcome,mark_to_sand_m,faults\n");
      for (int i = 0; i < rows; i++) {
        int day = (int) ((long) i * days / rows);
        LocalDate date = FIRST.plusDays(day / 3 * 7L + day % 3 * 2L);
        int kind = random.nextInt(SEQUENCES.length);
        int steps = STEPS[random.nextInt(STEPS.length)];
        double flight = 1.9 + 0.14 * steps + 0.1 * random.nextGaussian();
        double landing = flight * CONTACTS[kind];
        out.write(date + ",Athlete " + random.nextInt(athletes) + "," + SEQUENCES[kind] + "," + steps + ",track," + prints(random, flight, CONTACTS[kind], i) + ",");
        out.write(String.format(Locale.ROOT, "%.2f,,,%s\n", landing, i % 4 == 0 ? "clean" : ""));
      }
    }
  }

  private static String prints(Random random, double flight, int contacts, int i) {
    if (i % 2 == 0) {
      return "";
    }
    StringBuilder out = new StringBuilder();
    for (int c = 1; c < contacts; c++) {
      out.append(c == 1 ? "" : ";").append(String.format(Locale.ROOT, "%.2f", c * flight + 0.03 * random.nextGaussian()));
    }
    return out.toString();
  }
}
