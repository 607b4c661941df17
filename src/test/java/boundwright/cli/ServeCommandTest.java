package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.cli.Terminal.Said;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
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
}
