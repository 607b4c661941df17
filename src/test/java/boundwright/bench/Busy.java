package boundwright.bench;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;

/**
 * Who kept the cores busy so far.
 *
 * @param at_ns when
 * @param server_s processor time of the server [s]
 * @param phones_s of this process [s]
 * @param all_s of the whole machine [s], NaN where it does not say
 */
record Busy(long at_ns, double server_s, double phones_s, double all_s) {
  static Busy now(ServerProcess server) throws IOException {
    OperatingSystemMXBean own = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    return new Busy(
        System.nanoTime(),
        server.process().toHandle().info().totalCpuDuration().orElse(Duration.ZERO).toMillis() / 1e3,
        own.getProcessCpuTime() / 1e9,
        machine());
  }

  /** The first line of Linux's account: ticks of 10 ms of user, nice, system, idle, waiting for the disk, interrupts, stolen. */
  private static double machine() throws IOException {
    Path account = Path.of("/proc/stat");
    if (!Files.exists(account)) {
      return Double.NaN;
    }
    String[] ticks = Files.readAllLines(account).get(0).trim().split("\\s+");
    double busy = 0;
    for (int i = 1; i <= 8; i++) {
      busy += i == 4 || i == 5 ? 0 : Double.parseDouble(ticks[i]) / 100;
    }
    return busy;
  }

  /** In words, since this until then, in which so many answers were given. */
  String until(Busy then, int answers) {
    double seconds = (then.at_ns - at_ns) / 1e9;
    double server = (then.server_s - server_s) / seconds;
    double phones = (then.phones_s - phones_s) / seconds;
    return String.format(
        Locale.ROOT, "cores busy of %d: server %.2f (%.0f ms an answer), phones and coaches %.2f, other programs %.2f", Runtime.getRuntime().availableProcessors(), server,
        1000 * server * seconds / Math.max(1, answers), phones, (then.all_s - all_s) / seconds - server - phones);
  }
}
