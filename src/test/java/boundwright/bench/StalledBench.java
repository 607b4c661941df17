package boundwright.bench;

import boundwright.demo.DemoSquad;
import boundwright.store.Workbench;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * Uploads that stall half-way, and the pages beside them. The program is a process of its own; this one is its slow senders and its coach. Run it
 * with {@code bench/stalled [UPLOADS [SECONDS]]}.
 */
public final class StalledBench {
  private static final String TOKEN = "0123456789abcdef0123456789abcdef";
  private static final List<String> PAGES = List.of("/", "/plan", "/athlete/1", "/watch");

  private StalledBench() {}

  /** Arguments: how many uploads, and for how long the pages are asked [s]. */
  public static void main(String[] arguments) throws Exception {
    int uploads = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 260;
    int seconds = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 20;
    Path folder = Files.createTempDirectory("boundwright-stalled");
    try (Workbench bench = Workbench.open(folder, Clock.system(ZoneId.systemDefault()))) {
      DemoSquad.fill(bench);
    }
    List<Socket> open = new ArrayList<>();
    try (ServerProcess server = ServerProcess.start(folder)) {
      ask(server.url(), 3);
      report("before", ask(server.url(), 5));
      for (int i = 0; i < uploads; i++) {
        open.add(stalled(URI.create(server.url()).getPort()));
      }
      report("while " + uploads + " uploads stall", ask(server.url(), seconds));
      long told = open.stream().filter(StalledBench::answered).count();
      System.out.printf("%d of %d uploads were told to wait%n", told, uploads);
      for (Socket s : open) {
        s.close();
      }
      report("afterwards", ask(server.url(), 5));
      open.add(stalled(URI.create(server.url()).getPort()));
      TimeUnit.MILLISECONDS.sleep(300);
      server.process().destroyForcibly().waitFor();
    }
    try (Workbench again = Workbench.open(folder, Clock.system(ZoneId.systemDefault()));
        Stream<Path> left = Files.list(again.arriving())) {
      System.out.println(left.count() + " files left of an upload after a kill and a start");
    }
  }

  private static boolean answered(Socket s) {
    try {
      return s.getInputStream().available() > 0;
    } catch (IOException e) {
      return true;
    }
  }

  private static Socket stalled(int port) throws IOException {
    Socket s = new Socket(InetAddress.getLoopbackAddress(), port);
    String body =
        "--cut\r\nContent-Disposition: form-data; name=\"csrf\"\r\n\r\n" + TOKEN
            + "\r\n--cut\r\nContent-Disposition: form-data; name=\"film\"; filename=\"a.mp4\"\r\n\r\n" + "x".repeat(200_000);
    s.getOutputStream().write(
        ("POST /clips HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\nCookie: boundwright_form=" + TOKEN
                + "\r\nContent-Type: multipart/form-data; boundary=cut\r\nContent-Length: 20000000\r\n\r\n" + body)
            .getBytes(StandardCharsets.US_ASCII));
    s.getOutputStream().flush();
    return s;
  }

  private static double[] ask(String url, int seconds) throws IOException, InterruptedException {
    HttpClient http = HttpClient.newHttpClient();
    List<Double> times = new ArrayList<>();
    long until = System.nanoTime() + seconds * 1_000_000_000L;
    for (int i = 0; System.nanoTime() < until; i++) {
      HttpRequest request = HttpRequest.newBuilder(URI.create(url + PAGES.get(i % PAGES.size()))).timeout(Duration.ofSeconds(60)).build();
      long begin = System.nanoTime();
      int status = http.send(request, HttpResponse.BodyHandlers.discarding()).statusCode();
      times.add((System.nanoTime() - begin) / 1e6);
      if (status != 200) {
        throw new IOException(request.uri() + " answered " + status);
      }
    }
    return times.stream().mapToDouble(Double::doubleValue).sorted().toArray();
  }

  private static void report(String when, double[] t) {
    System.out.printf(
        Locale.ROOT, "%s: %d pages, median %.1f ms, p99 %.1f ms, longest %.1f ms%n", when, t.length, t[t.length / 2], t[(int) (t.length * 0.99)], t[t.length - 1]);
  }
}
