package boundwright.bench;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.store.Workbench;
import boundwright.store.engine.DataPlace;
import boundwright.store.engine.PostgresAddress;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Two promises: the first page within 2 s of a start, and a page's 99th percentile under 25 ms with 60 athletes and 200 000
 * reps in the store. Fills a folder once ({@code BigStore}), starts the real launcher on it and asks the pages one after the
 * other. Run it with {@code bench/pages [FOLDER]}; the folder is kept so that a second run need not fill it.
 */
public final class PagesBench {
  private static final int ATHLETES = 60;
  private static final int REPS = 200_000;
  private static final int WARM_UP = 300;
  private static final int ASKED = 1000;
  private static final int STARTS = 5;
  private static final Duration PATIENCE = Duration.ofSeconds(30);

  private PagesBench() {}

  /** Arguments: the data folder and the launcher. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    Path folder = Path.of(arguments[0]);
    String launcher = arguments[1];
    PrintStream out = System.out;
    fill(folder, out);
    double[] starts = new double[STARTS];
    for (int i = 0; i < STARTS; i++) {
      long begin = System.nanoTime();
      Running server = Running.start(launcher, folder);
      server.get("/");
      starts[i] = ms(begin);
      server.stop();
    }
    Arrays.sort(starts);
    out.printf(Locale.ROOT, "process start to first page: median %.0f ms, worst of %d %.0f ms%n", starts[STARTS / 2], STARTS, starts[STARTS - 1]);
    Running server = Running.start(launcher, folder);
    out.printf(Locale.ROOT, "%-44s %8s %8s %8s%n", "page (ms)", "p50", "p99", "worst");
    for (String page : List.of("/", "/athlete/1", "/athlete/60/marks?sequence=RRL+RRL&steps=4", "/plan", "/tapes", "/settings", "/athlete/1/card", "/sources")) {
      measure(server, page, out);
    }
    server.stop();
  }

  private static void measure(Running server, String page, PrintStream out) throws IOException, InterruptedException {
    for (int i = 0; i < WARM_UP; i++) {
      server.get(page);
    }
    double[] times = new double[ASKED];
    for (int i = 0; i < ASKED; i++) {
      long begin = System.nanoTime();
      server.get(page);
      times[i] = ms(begin);
    }
    Arrays.sort(times);
    out.printf(Locale.ROOT, "%-44s %8.2f %8.2f %8.2f%n", page, times[ASKED / 2], times[ASKED * 99 / 100], times[ASKED - 1]);
  }

  private static double ms(long begin) {
    return (System.nanoTime() - begin) / 1e6;
  }

  /** Where the server, which has this program's environment, will look. */
  private static DataPlace place(Path folder) {
    String address = System.getenv().getOrDefault("BOUNDWRIGHT_DATABASE", "");
    return address.isEmpty() ? DataPlace.of(folder) : new DataPlace(folder, PostgresAddress.of(address, System.getenv()));
  }

  private static void fill(Path folder, PrintStream out) {
    Clock clock = Clock.system(ZoneId.systemDefault());
    try (Workbench bench = Workbench.open(place(folder), clock)) {
      if (bench.athletes().all().size() == ATHLETES) {
        return;
      }
      out.println("filling " + folder + " with " + ATHLETES + " invented athletes and " + REPS + " reps ...");
      long begin = System.nanoTime();
      for (int a = 1; a <= ATHLETES; a++) {
        Athlete athlete =
            bench.athletes().add(InventedSquad.athlete(a));
        List<Rep> reps = new InventedReps(a).of(athlete.id(), (REPS + ATHLETES - 1) / ATHLETES, 20, LocalDate.now(clock));
        bench.logbook().logAll(reps);
      }
      bench.settings().keep(InventedSquad.DAY);
      // everybody is learned, as on a day that went on for a minute; else each start would begin to learn and be stopped
      bench.logbook().dayBegins(LocalDate.now(clock));
      out.printf(Locale.ROOT, "filled in %.0f s%n", ms(begin) / 1000);
    }
  }

  /** The launcher as a process of its own, and a client of it. */
  private record Running(Process process, BufferedReader said, String url, HttpClient client) {
    private static final Pattern URL = Pattern.compile("http://[0-9.]+:\\d+");

    static Running start(String launcher, Path folder) throws IOException {
      Process process =
          new ProcessBuilder(launcher, "serve", "--port", "0", "--data", folder.toString())
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
      BufferedReader said = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
      for (String line = said.readLine(); line != null; line = said.readLine()) {
        Matcher m = URL.matcher(line);
        if (m.find()) {
          return new Running(process, said, m.group(), HttpClient.newHttpClient());
        }
      }
      throw new IOException("the server did not start");
    }

    void get(String page) throws IOException, InterruptedException {
      HttpResponse<byte[]> answer =
          client.send(HttpRequest.newBuilder(URI.create(url + page)).timeout(PATIENCE).build(), HttpResponse.BodyHandlers.ofByteArray());
      if (answer.statusCode() != 200 || answer.body().length == 0) {
        throw new IOException(page + " answered " + answer.statusCode());
      }
    }

    void stop() throws InterruptedException {
      process.destroy();
      process.waitFor();
    }
  }
}
