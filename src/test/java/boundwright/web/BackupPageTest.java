package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.store.Workbench;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One button, when the last one was made, and a few words when none has left the machine for long. */
class BackupPageTest {
  private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-05-12T15:00:00Z"), ZoneOffset.UTC);

  @Test
  void oneButtonMakesOneAndThePageSaysWhen(@TempDir Path dir) throws Exception {
    try (Workbench bench = Workbench.open(dir, CLOCK);
        WebServer server = WebServer.start(bench, "127.0.0.1", 0)) {
      bench.athletes().add(new boundwright.athlete.Athlete(0, "Ada", boundwright.athlete.Level.BEGINNER, boundwright.footfall.Foot.LEFT, 0));
      Client client = new Client(server.port());
      String page = client.get("/settings/backup").body();
      assertThat(page).contains("Last: <b>none yet</b>").contains("Last: <b>never</b>");
      String csrf = Client.hidden(page, "csrf");
      assertThat(client.post("/settings/backup/now", "csrf", csrf).body()).contains("A backup was made and looked through.").contains("12 May 2026, 15:00: 1 athlete, 0 reps");
      assertThat(client.post("/settings/backup/away", "csrf", csrf, "passphrase", "short", "again", "short").body()).contains("is too short");
      assertThat(client.post("/settings/backup/away", "csrf", csrf, "passphrase", "four invented words", "again", "four other words..").body()).contains("The two passphrases differ");
      var sealed = client.post("/settings/backup/away", "csrf", csrf, "passphrase", "four invented words", "again", "four invented words");
      assertThat(sealed.statusCode()).isEqualTo(200);
      assertThat(sealed.headers().firstValue("Content-Disposition")).hasValue("attachment; filename=\"boundwright-20260512-150000.zip.age\"");
      assertThat(sealed.body()).startsWith("age-encryption.org/v1\n");
      assertThat(client.get("/settings/backup").body()).contains("Last: <b>12 May 2026</b>");
      assertThat(client.post("/settings/backup", "csrf", csrf, "days", "0", "weeks", "4", "months", "6").body()).contains("A number of days of 0 is out of range");
    }
    try (Workbench bench = Workbench.open(dir, Clock.offset(CLOCK, Duration.ofDays(45)));
        WebServer server = WebServer.start(bench, "127.0.0.1", 0)) {
      assertThat(new Client(server.port()).get("/").body()).contains("No backup has left this machine for 45 days.");
    }
    Files.writeString(dir.resolve("boundwright.lost"), "2 entries are no longer there.", StandardCharsets.UTF_8);
    try (Workbench bench = Workbench.open(dir, CLOCK);
        WebServer server = WebServer.start(bench, "127.0.0.1", 0)) {
      Client client = new Client(server.port());
      assertThat(client.get("/").body()).contains("Entries are missing.");
      String page = client.get("/settings/backup").body();
      assertThat(page).contains("2 entries are no longer there.");
      assertThat(client.post("/settings/backup/seen", "csrf", Client.hidden(page, "csrf")).body()).doesNotContain("Entries are missing");
    }
  }
}
