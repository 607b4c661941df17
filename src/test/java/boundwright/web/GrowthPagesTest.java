package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.growth.GrowthSettings;
import boundwright.athlete.growth.Measurement;
import boundwright.footfall.Foot;
import boundwright.store.Workbench;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Heights on the page. Expected figures are own output; what they rest on is checked where it is worked out. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class GrowthPagesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 12);

  @TempDir Path folder;
  private Workbench bench;
  private WebServer server;
  private Client client;
  private Athlete ilka;
  private String page;

  @BeforeEach
  void open() {
    bench = Workbench.open(folder, DAY);
    server = WebServer.start(bench, "127.0.0.1", 0);
    client = new Client(server.port());
    ilka = bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.INTERMEDIATE, Foot.RIGHT, 4));
    page = "/athlete/" + ilka.id() + "/growth";
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  private String[] form(String... more) {
    String body = client.get(page).body();
    List<String> out = new ArrayList<>(List.of("csrf", Client.hidden(body, "csrf"), "token", Client.hidden(body, "token")));
    out.addAll(List.of(more));
    return out.toArray(String[]::new);
  }

  private List<Measurement> kept() {
    return bench.growth().answer(ilka.id()).measured();
  }

  @Test
  void aHeightIsEnteredSeenAndTakenOut() {
    assertThat(client.get(page).body()).contains("No height is kept yet.").doesNotContain("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"strip growth-strip\"");
    String[] twice = form("height", "162.4", "date", "2026-01-12", "by", "coach", "sitting", "", "mass", "");
    assertThat(client.post(page, twice).body()).contains("The height is kept.");
    assertThat(client.post(page, twice).body()).contains("was not kept twice");
    assertThat(kept()).containsExactly(new Measurement(kept().get(0).id(), LocalDate.of(2026, 1, 12), 1.624, null, null, "coach"));
    client.post(page, form("height", "5 ft 5 in", "date", "2026-05-12", "by", "", "sitting", "86.0", "mass", "48,5"));
    String body = client.get(page).body();
    assertThat(body).contains("Grows about", "nine times in ten", "Measure again on", "162.4 cm", "165.1 cm", "<title>How Ilka Sandfoot grows</title>");
    assertThat(body).doesNotContain(" style=\"").doesNotContain("talented");
    assertThat(kept().get(1).mass_kg()).isEqualTo(48.5);
    client.post(page + "/" + kept().get(1).id() + "/remove", "csrf", Client.hidden(body, "csrf"));
    assertThat(kept()).hasSize(1);
    assertThat(client.post(page + "/999/remove", "csrf", Client.hidden(body, "csrf")).body()).contains("is not in the list of Ilka Sandfoot");
    assertThat(client.get("/athlete/" + ilka.id() + "/care").body()).contains("href=\"" + page + "\"");
  }

  @Test
  void theSameHeightOfTheDayIsRefusedUnlessItIsAnotherReading() {
    client.post(page, form("height", "162.4", "date", "2026-01-12", "by", "coach", "sitting", "", "mass", ""));
    HttpResponse<String> twice = client.post(page, form("height", "162.4", "date", "2026-01-12", "by", "coach", "sitting", "", "mass", ""));
    assertThat(twice.statusCode()).isEqualTo(422);
    assertThat(twice.body()).contains("is kept already, so it was not kept twice").contains("name=\"another\"").contains("value=\"162.4\"");
    assertThat(kept()).hasSize(1);
    assertThat(client.post(page, form("height", "162.4", "date", "2026-01-12", "by", "coach", "sitting", "", "mass", "", "another", "yes")).body()).contains("The height is kept.");
    assertThat(kept()).hasSize(2);
  }

  @Test
  void whatIsRefusedKeepsWhatWasWritten() {
    HttpResponse<String> bad = client.post(page, form("height", "126", "date", "2026-05-13", "by", "mother", "sitting", "", "mass", ""));
    assertThat(bad.statusCode()).isEqualTo(422);
    assertThat(bad.body()).contains("lies after today", "value=\"126\"", "value=\"mother\"");
    assertThat(client.post(page, form("height", "tall", "date", "", "by", "", "sitting", "", "mass", "")).body()).contains("Write it as 162.4 (cm)");
    assertThat(client.post(page, form("height", "16.2", "date", "", "by", "", "sitting", "", "mass", "")).body()).contains("out of range");
    assertThat(kept()).isEmpty();
  }

  @Test
  void watchListsWhoseHeightIsDueAndTheSettingsSayWhen() {
    bench.growth().add(ilka, new Measurement(0, TODAY.minusWeeks(20), 1.50, null, null, ""));
    bench.growth().add(ilka, new Measurement(0, TODAY.minusWeeks(10), 1.51, null, null, ""));
    assertThat(client.get("/watch").body()).contains("Measure their height", "href=\"" + page + "\"");
    bench.growth().add(ilka, new Measurement(0, TODAY, 1.52, null, null, ""));
    assertThat(client.get("/watch").body()).doesNotContain("Measure their height");
    String settings = client.get("/settings/guard").body();
    assertThat(settings).contains("Fast growth above").contains("id=\"fastGrowth\" name=\"fastGrowth\" inputmode=\"decimal\" value=\"7\"");
    List<String> fields = new ArrayList<>(List.of("csrf", Client.hidden(settings, "csrf")));
    Matcher m = Pattern.compile("name=\"([A-Za-z_-]+)\" inputmode=\"decimal\" value=\"([^\"]*)\"").matcher(settings);
    while (m.find()) {
      fields.add(m.group(1));
      fields.add(m.group(1).equals("fastGrowth") ? "6.5" : m.group(2));
    }
    assertThat(client.post("/settings/guard", fields.toArray(String[]::new)).statusCode()).isEqualTo(200);
    assertThat(bench.growth().settings()).isEqualTo(new GrowthSettings(6.5, 2, 12));
    fields.set(fields.indexOf("fastGrowth") + 1, "1");
    HttpResponse<String> refused = client.post("/settings/guard", fields.toArray(String[]::new));
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body()).contains("3 to 12 cm a year");
    assertThat(bench.growth().settings()).isEqualTo(new GrowthSettings(6.5, 2, 12));
  }
}
