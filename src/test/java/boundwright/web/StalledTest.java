package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.store.Workbench;
import boundwright.web.page.Arrival;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Senders who stall, drop off or find the disk full: the pages go on, and what is said is a sentence. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class StalledTest {
  /** As many as may arrive at once. */
  private static final int HOLDING = 12;
  private static final String TOKEN = "0123456789abcdef0123456789abcdef";

  @TempDir Path dir;
  private Workbench bench;
  private WebServer server;
  private final List<Socket> open = new ArrayList<>();
  private final PrintStream stderr = System.err;
  private final ByteArrayOutputStream said = new ByteArrayOutputStream();

  @BeforeEach
  void start() {
    System.setErr(new PrintStream(said, true, StandardCharsets.UTF_8));
    bench = Workbench.open(dir, Clock.fixed(Instant.parse("2026-05-12T15:00:00Z"), ZoneOffset.UTC));
    server = WebServer.start(bench, "127.0.0.1", 0);
  }

  @AfterEach
  void stop() throws Exception {
    System.setErr(stderr);
    for (Socket s : open) {
      s.close();
    }
    server.close();
    bench.close();
  }

  /** Sends the head of an upload, and of its body only the beginning. */
  private Socket begun(String path) throws IOException {
    Socket s = new Socket(InetAddress.getLoopbackAddress(), server.port());
    open.add(s);
    String body = "--cut\r\nContent-Disposition: form-data; name=\"csrf\"\r\n\r\n" + TOKEN + "\r\n--cut\r\nContent-Disposition: form-data; name=\"film\"; filename=\"a.mp4\"\r\n\r\nabc";
    s.getOutputStream().write(
        ("POST " + path + " HTTP/1.1\r\nHost: 127.0.0.1:" + server.port() + "\r\nCookie: boundwright_form=" + TOKEN
                + "\r\nContent-Type: multipart/form-data; boundary=cut\r\nContent-Length: 2000000\r\n\r\n" + body)
            .getBytes(StandardCharsets.US_ASCII));
    s.getOutputStream().flush();
    return s;
  }

  private static String answer(Socket s) throws IOException {
    s.setSoTimeout(20_000);
    InputStream in = s.getInputStream();
    byte[] some = new byte[64];
    int n = in.read(some);
    return n < 0 ? "" : new String(some, 0, n, StandardCharsets.US_ASCII);
  }

  private static boolean told(Socket s) {
    try {
      return s.getInputStream().available() > 0;
    } catch (IOException e) {
      return false;
    }
  }

  @Test
  void pagesAnswerWhileManyUploadsStallAndTheRestIsToldToWait() throws Exception {
    List<Socket> all = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      all.add(begun("/clips"));
    }
    long patience = System.nanoTime() + 30_000_000_000L;
    while (all.stream().filter(StalledTest::told).count() < 40 - HOLDING && System.nanoTime() < patience) {
      Thread.onSpinWait();
    }
    List<Socket> turned = all.stream().filter(StalledTest::told).toList();
    assertThat(turned).hasSize(40 - HOLDING);
    for (Socket s : turned) {
      assertThat(answer(s)).startsWith("HTTP/1.1 503");
    }
    Client client = new Client(server.port());
    assertThat(client.get("/").statusCode()).isEqualTo(200);
    String csrf = Client.hidden(client.get("/settings/backup").body(), "csrf");
    assertThat(client.post("/settings/backup/now", "csrf", csrf).body()).contains("A backup was made");
    for (Socket s : all) {
      s.close();
    }
    assertThat(said.toString(StandardCharsets.UTF_8)).doesNotContain("\tat ");
  }

  @Test
  void aPhoneThatDropsOffLeavesNothingAndNoTrace() throws Exception {
    Socket s = begun("/clips");
    s.shutdownOutput();
    assertThat(answer(s)).as("as far as it can still be told").matches("(?s)(HTTP/1.1 4\\d\\d.*)?");
    begun("/clips").close();
    server.close();
    try (Stream<Path> left = Files.walk(dir)) {
      assertThat(left.filter(Files::isRegularFile).map(f -> f.getFileName().toString())).allMatch(n -> n.startsWith("boundwright."));
    }
    assertThat(said.toString(StandardCharsets.UTF_8)).doesNotContain("\tat ");
  }

  @Test
  void whatAKillLeftBehindIsGoneWhenTheFolderIsOpenedAgain() throws Exception {
    Path half = Files.writeString(bench.arriving().resolve("MultiPart123"), "half a film");
    server.close();
    bench.close();
    bench = Workbench.open(dir, Clock.fixed(Instant.parse("2026-05-12T15:00:00Z"), ZoneOffset.UTC));
    server = WebServer.start(bench, "127.0.0.1", 0);
    assertThat(half).doesNotExist();
  }

  @Test
  void aFullDiskIsSaidAndAFaultOfTheProgramIsNone() {
    assertThat(Arrival.said(new IllegalStateException(new IOException("No space left on device"))))
        .isNotNull()
        .satisfies(t -> assertThat(t.status()).isEqualTo(507))
        .hasMessageContaining("The disk of the laptop is full");
    assertThat(Arrival.said(new IllegalStateException("a fault"))).isNull();
  }
}
