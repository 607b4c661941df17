package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.store.Workbench;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What pretends to be a file and cannot be read as one is refused in words. */
class BrokenUploadTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder = Path.of("");

  @Test
  void aFormThatCannotBeReadIsRefusedAndNothingIsKept() {
    try (Workbench bench = Workbench.open(folder, DAY);
        WebServer server = WebServer.start(bench, "127.0.0.1", 0)) {
      Client client = new Client(server.port());
      String csrf = Client.hidden(client.get("/settings").body(), "csrf");
      for (String name : new String[] {"reps\u0000.csv", "a\u0000", "reps.csv\"; x=\"\u0000"}) {
        HttpResponse<String> answer = client.upload("/import", csrf, name, "date,athlete\n");
        assertThat(answer.statusCode()).as(name).isEqualTo(400);
        assertThat(answer.headers().firstValue("Connection")).as(name).contains("close");
        assertThat(answer.body()).as(name).contains("is no form that can be read", "Nothing of it was kept").doesNotContain("Exception", "report number");
      }
      assertThat(bench.athletes().all()).isEmpty();
      assertThat(client.get("/settings").statusCode()).isEqualTo(200);
    }
  }
}
