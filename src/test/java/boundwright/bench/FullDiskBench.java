package boundwright.bench;

import boundwright.demo.DemoSquad;
import boundwright.store.Workbench;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A disk that is truly full, under the program as a process of its own. Run it with {@code bench/full-disk}, which mounts the disk. */
public final class FullDiskBench {
  private static final List<String> PAGES = List.of("/", "/plan", "/athlete/1", "/watch", "/runway/parcel", "/settings");
  private static final int MOST_TAPS = 4000;
  /** The sentences that the page says of it; the whole page is the athlete's. */
  private static final Pattern DISK = Pattern.compile("[A-Z][^.]*\\bdisk\\b[^.]*\\.");

  private final Path disk;
  private final Path data;
  private final Path ballast;
  private final Random random = new Random(16);
  private final List<String> answered = new ArrayList<>();

  private FullDiskBench(Path disk) {
    this.disk = disk;
    this.data = disk.resolve("data");
    this.ballast = disk.resolve("ballast");
  }

  /** Arguments: the small disk. */
  public static void main(String[] arguments) throws Exception {
    new FullDiskBench(Path.of(arguments[0]).toAbsolutePath()).run();
  }

  private static Clock clock() {
    return Clock.system(ZoneId.systemDefault());
  }

  private void run() throws Exception {
    try (Workbench bench = Workbench.open(data, clock())) {
      DemoSquad.fill(bench);
    }
    try (ServerProcess server = ServerProcess.start(data)) {
      TrackPhone phone = phone(server);
      fillUp();
      String refusal = tap(phone, MOST_TAPS);
      System.out.println(answered.size() + " reps were answered, then: " + refusal);
      pages(server, "on the full disk");
      upload(server);
      backup();
      server.process().destroyForcibly().waitFor();
    }
    begun();
    Files.delete(ballast);
    try (ServerProcess server = ServerProcess.start(data)) {
      pages(server, "with room again");
      String refusal = tap(phone(server), 20);
      System.out.println("with room again: " + (refusal.isEmpty() ? "20 reps more" : refusal));
    }
    Set<String> kept = kept();
    System.out.println(answered.size() + " answered reps, of which are missing: " + answered.stream().filter(t -> !kept.contains(t)).count());
    try (Stream<Path> left = Files.walk(data)) {
      System.out.println("left in the folder: " + left.filter(Files::isRegularFile).map(data::relativize).map(Path::toString).sorted().toList());
    }
  }

  /** The tokens of the reps that are there. */
  private Set<String> kept() throws SQLException {
    Set<String> out = new HashSet<>();
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + data.resolve("boundwright.db"));
        Statement s = c.createStatement();
        ResultSet r = s.executeQuery("SELECT tap.token FROM tap JOIN rep ON rep.id = tap.rep_id")) {
      while (r.next()) {
        out.add(r.getString(1));
      }
    }
    return out;
  }

  private TrackPhone phone(ServerProcess server) throws IOException, InterruptedException {
    TrackPhone phone = new TrackPhone(server.url(), 1, 16);
    phone.open("/athlete/1");
    return phone;
  }

  /** Takes what is left of the disk but for some hundred kilobytes. */
  private void fillUp() throws IOException {
    long free = Files.getFileStore(disk).getUsableSpace() - 300_000;
    try (OutputStream out = Files.newOutputStream(ballast)) {
      byte[] block = new byte[4096];
      for (long at = 0; at < free; at += block.length) {
        out.write(block);
      }
    }
  }

  /** Taps until something is refused; what was said then, or nothing. */
  private String tap(TrackPhone phone, int most) throws InterruptedException {
    for (int i = 0; i < most; i++) {
      String token = TrackPhone.token(random);
      try {
        phone.log(token, "IN");
        answered.add(token);
      } catch (IOException e) {
        return DISK.matcher(String.valueOf(e.getMessage())).results().map(MatchResult::group).map(String::strip).distinct().toList().toString();
      }
    }
    return "";
  }

  private static void pages(ServerProcess server, String when) throws IOException, InterruptedException {
    HttpClient http = HttpClient.newHttpClient();
    List<String> said = new ArrayList<>();
    for (String page : PAGES) {
      HttpRequest request = HttpRequest.newBuilder(URI.create(server.url() + page)).timeout(Duration.ofSeconds(60)).build();
      said.add(page + " " + http.send(request, HttpResponse.BodyHandlers.discarding()).statusCode());
    }
    System.out.println("pages " + when + ": " + String.join(", ", said));
  }

  private static void upload(ServerProcess server) throws IOException, InterruptedException {
    String csrf = "0123456789abcdef0123456789abcdef";
    String body =
        "--cut\r\nContent-Disposition: form-data; name=\"csrf\"\r\n\r\n" + csrf
            + "\r\n--cut\r\nContent-Disposition: form-data; name=\"film\"; filename=\"a.mp4\"\r\n\r\n" + "x".repeat(3_000_000) + "\r\n--cut--\r\n";
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(server.url() + "/clips"))
            .timeout(Duration.ofSeconds(60))
            .header("Cookie", "boundwright_form=" + csrf)
            .header("Content-Type", "multipart/form-data; boundary=cut")
            .POST(HttpRequest.BodyPublishers.ofString(body, StandardCharsets.US_ASCII))
            .build();
    HttpResponse<String> answer = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
    System.out.println("a film: " + answer.statusCode() + ": " + sentences(answer.body()));
  }

  private static String sentences(String page) {
    return page.replaceAll("(?s)<(head|script|style|nav).*?</\\1>|<[^>]*>", " ").replaceAll("\\s+", " ").strip().replaceAll("(.{500}).*", "$1 ...");
  }

  private void backup() throws IOException, InterruptedException {
    System.out.println("a backup: " + command("backup", "--data", data.toString()));
  }

  /** A start while the disk is full: it serves, or says in words why not. */
  private void begun() throws Exception {
    try (ServerProcess server = ServerProcess.start(data)) {
      pages(server, "after a kill and a start on the full disk");
    } catch (IOException e) {
      System.out.println("a start on the full disk: " + command("serve", "--port", "0", "--data", data.toString()));
    }
  }

  private static String command(String... words) throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp", System.getProperty("java.class.path"), "boundwright.Boundwright"));
    command.addAll(List.of(words));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return "exit " + process.waitFor() + ": " + said.strip().replaceAll("\\s+", " ").replaceAll("(.{500}).*", "$1 ...");
  }
}
