package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.cli.Terminal.Said;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.CookieManager;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ServeCommandTest {
  @TempDir Path folder = Path.of("");
  private Terminal terminal = new Terminal(folder);
  private final AtomicReference<String> page = new AtomicReference<>("");

  @BeforeEach
  void terminal() {
    terminal = new Terminal(folder);
    terminal.until = url -> page.set(get(url));
  }

  private static String get(String url) {
    try {
      HttpResponse<String> answer =
          HttpClient.newHttpClient().send(HttpRequest.newBuilder(URI.create(url + "/")).build(), HttpResponse.BodyHandlers.ofString());
      assertThat(answer.statusCode()).isEqualTo(200);
      return answer.body();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  @Test
  void theDemoIsInventedAndKeptApart() {
    Said said = terminal.run("serve", "--demo", "--port", "0");
    assertThat(said.exit()).as(said.err()).isZero();
    assertThat(said.out()).contains("boundwright is open at http://127.0.0.1:").contains("data-demo").contains("invented");
    assertThat(page.get()).containsIgnoringCase("invented");
    assertThat(folder.resolve("data-demo")).isDirectory();
    assertThat(folder.resolve("data")).doesNotExist();
    Said again = terminal.run("serve", "--demo", "--port", "0");
    assertThat(again.exit()).as(again.err()).isZero();
  }

  @Test
  void theServerIsGoneWhenTheCommandEnds() {
    String url = terminal.run("serve", "--demo", "--port", "0", "--json").json().get("url").asText();
    assertThat(url).startsWith("http://127.0.0.1:");
    assertThatThrownBy(() -> get(url)).isInstanceOf(UncheckedIOException.class);
  }

  @Test
  void inventedAthletesAreNeverMixedWithRealOnes() {
    terminal.squad();
    Said said = terminal.run("serve", "--demo", "--data", "data", "--port", "0");
    assertThat(said.exit()).isEqualTo(2);
    assertThat(said.err()).contains("never mixed");
    assertThat(terminal.run("serve", "--port", "0").exit()).isZero();
    assertThat(page.get()).contains("Orla Tamsin");
  }

  @Test
  void aPortInUseIsSaid() throws IOException {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      Said said = terminal.run("serve", "--port", String.valueOf(taken.getLocalPort()));
      assertThat(said.exit()).isEqualTo(2);
      assertThat(said.err()).contains("Port " + taken.getLocalPort() + " is in use").doesNotContain("Exception");
    }
    assertThat(terminal.run("serve", "--port", "70000").err()).contains("0 to 65535");
  }

  @Test
  void jsonGivesTheAddress() {
    Said said = terminal.run("serve", "--demo", "--port", "0", "--json");
    assertThat(said.json().get("url").asText()).startsWith("http://127.0.0.1:");
    assertThat(said.json().get("invented").asBoolean()).isTrue();
  }

  @Test
  void theProgramThatCameAsOneFolderKeepsItsDataInTheUsersPlace() {
    Path home = folder.resolve("home");
    terminal.environment.put("HOME", home.toString());
    terminal.environment.put("XDG_DATA_HOME", home.resolve("share").toString());
    terminal.environment.put("APPDATA", home.resolve("share").toString());
    // no folder that could be written to: nothing is made beside the program
    terminal.environment.put("BOUNDWRIGHT_HOME", folder.resolve("no-such-folder").toString());
    Said said = terminal.run("serve", "--port", "0");
    assertThat(said.exit()).as(said.err()).isZero();
    assertThat(said.out()).contains("Data: " + home);
    assertThat(folder.resolve("data")).doesNotExist();
  }

  @Test
  void aPageClosesTheProgram() {
    CountDownLatch never = new CountDownLatch(1);
    terminal.until = url -> {
      closeFromThePage(url);
      never.await();
    };
    Said said = terminal.run("serve", "--demo", "--port", "0");
    assertThat(said.exit()).as(said.err()).isZero();
    assertThat(page.get()).contains("All that was logged is kept");
  }

  private void closeFromThePage(String url) throws InterruptedException {
    HttpClient client = HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
    try {
      String settings = client.send(HttpRequest.newBuilder(URI.create(url + "/settings")).build(), HttpResponse.BodyHandlers.ofString()).body();
      String token = settings.replaceFirst("(?s).*name=\"csrf\" value=\"([^\"]+)\".*", "$1");
      HttpRequest close =
          HttpRequest.newBuilder(URI.create(url + "/settings/close")).header("Content-Type", "application/x-www-form-urlencoded")
              .POST(HttpRequest.BodyPublishers.ofString("csrf=" + token)).build();
      page.set(client.send(close, HttpResponse.BodyHandlers.ofString()).body());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
