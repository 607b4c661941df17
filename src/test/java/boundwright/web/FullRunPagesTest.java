package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.approach.full.DistanceEntry;
import boundwright.approach.weather.Weather;
import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.meet.BoardDistance;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.store.Workbench;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pages of the full run, the weather and the day of a meet, asked by a plain browser without scripts. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class FullRunPagesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);

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
    ilka = bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.INTERMEDIATE, Foot.RIGHT, 8));
    page = "/athlete/" + ilka.id() + "/full-run";
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  private HttpResponse<String> send(String from, String to, String... fields) {
    String shown = client.get(from).body();
    List<String> all = new ArrayList<>(List.of("csrf", Client.hidden(shown, "csrf")));
    if (shown.contains("name=\"token\"")) {
      all.addAll(List.of("token", Client.hidden(shown, "token")));
    }
    all.addAll(List.of(fields));
    return client.post(to, all.toArray(new String[0]));
  }

  @Test
  void everyPageAnswersWithoutDataAndKeepsScriptsAndStylesOutsideItself() {
    MeetSheet meet = bench.meets().add(MeetSheet.of("Evening", LocalDate.now(DAY), BoardDistance.ALL.get(0), null, MeetRules.DEFAULT));
    for (String path : List.of(page, "/weather", "/meet/" + meet.id() + "/day")) {
      HttpResponse<String> r = client.get(path);
      assertThat(r.statusCode()).as(path).isEqualTo(200);
      assertThat(r.headers().firstValue("Content-Security-Policy").orElse("")).as(path).contains("default-src 'self'");
      assertThat(r.body()).as(path).doesNotContain(" style=\"").doesNotContain("<style").doesNotContain("onclick").doesNotContain("NaN").doesNotContain("null");
    }
    assertThat(client.get(page).body())
        .contains("<title>Ilka Sandfoot: the full run of the triple jump")
        .contains("The chance of a standard in the triple jump")
        .contains("/athlete/" + ilka.id() + "/long-jump/aim");
    assertThat(client.get(page).body()).contains("The data cannot tell").contains("No triple jump of Ilka Sandfoot");
  }

  @Test
  void aDistanceIsKeptWithItsWeatherToldOfAndTakenBack() {
    HttpResponse<String> r =
        send(page, page, "from", "8", "distance", "11.20", "wind", "-1.5", "windBy", "FLAG", "warm", "12", "wet", "wet", "note", "soft");
    assertThat(r.statusCode()).as(r.body()).isEqualTo(200);
    DistanceEntry kept = bench.fullRunLog().distances(ilka.id()).get(0);
    assertThat(kept.weather()).isEqualTo(new Weather(-1.5, Weather.From.FLAG, 12.0, true));
    assertThat(r.body()).contains("11.20 m from 8 steps").contains("-1.5 m/s by the flag");
    send(page, page, "from", "12", "distance", "11.90", "windBy", "GAUGE");
    assertThat(bench.fullRunLog().distances(ilka.id()).get(1).weather()).isEqualTo(Weather.UNKNOWN);
    HttpResponse<String> told = client.get(page + "?steps=14");
    assertThat(told.body()).contains("on average from 14 steps").contains(" is about ").contains("A single jump lies between");
    HttpResponse<String> far = client.get(page + "?steps=22");
    assertThat(far.body()).contains("Nobody here has jumped from more than 12 steps");
    assertThat(send(page, page + "/" + kept.id() + "/remove").body()).contains("taken back");
    assertThat(bench.fullRunLog().distances(ilka.id())).hasSize(1);
  }

  @Test
  void aDistanceFarFromWhatIsToldIsAskedAboutOnce() {
    send(page, page, "from", "8", "distance", "9.00");
    HttpResponse<String> asked = send(page, page, "from", "16", "distance", "14.90");
    assertThat(asked.statusCode()).isEqualTo(422);
    assertThat(asked.body()).contains("Was it really 14.90 m?").contains("value=\"14.90\"");
    assertThat(bench.fullRunLog().distances(ilka.id())).hasSize(1);
    assertThat(send(page, page, "from", "16", "distance", "14.90").statusCode()).isEqualTo(200);
    assertThat(bench.fullRunLog().distances(ilka.id())).hasSize(2);
  }

  @Test
  void whatIsRefusedKeepsWhatWasWritten() {
    HttpResponse<String> r = send(page, page, "from", "2", "distance", "11.20");
    assertThat(r.statusCode()).isEqualTo(422);
    assertThat(r.body()).contains("4 to 26").contains("value=\"11.20\"");
    HttpResponse<String> side = send(page, page, "from", "8", "distance", "11.20", "wind", "2", "windBy", "HEAD");
    assertThat(side.statusCode()).isEqualTo(422);
    assertThat(side.body()).contains("says its side already");
    assertThat(client.get(page + "?steps=99").statusCode()).isEqualTo(422);
    assertThat(client.get(page + "?standard=12.50&by=2020-01-01").body()).contains("is not after today");
    assertThat(send("/weather", "/weather", "note", "nothing").body()).contains("Nothing was said of the weather");
    assertThat(bench.fullRunLog().distances(ilka.id())).isEmpty();
  }

  @Test
  void theChanceOfAStandardIsToldMeetByMeet() {
    for (String d : List.of("11.90", "12.05", "11.80")) {
      send(page, page, "from", "14", "distance", d);
    }
    assertThat(client.get(page + "?standard=12.20&by=2026-07-01").body()).contains("No meet of Ilka Sandfoot is kept");
    String body = client.get(page + "?standard=12.20&by=2026-07-01&meets=2026-05-30,+2026-06-20").body();
    assertThat(body).contains("to reach 12.20 m in the triple jump from 14 steps by 1 July 2026, in 2 meets").contains("by then").contains("if the wind did not matter");
    assertThat(body.substring(body.indexOf("simulated futures"))).as("where its numbers are from").contains("<a href=\"/sources\">Sources</a></p>\n</details>");
  }

  @Test
  void theWeatherOfADayIsReplacedAndTakenOut() {
    send("/weather", "/weather", "wind", "1", "windBy", "FLAG");
    HttpResponse<String> r = send("/weather", "/weather", "windBy", "HEAD", "warm", "9");
    assertThat(r.body()).contains("wind against, 9").contains("Kept.");
    assertThat(bench.weather().days()).singleElement().satisfies(d -> assertThat(d.weather().from()).isEqualTo(Weather.From.HEAD));
    assertThat(send("/weather", "/weather/2026-05-12/remove").body()).contains("Taken out.");
    assertThat(bench.weather().days()).isEmpty();
  }

  @Test
  void theDayOfAMeetIsKeptShownAndPrinted() {
    MeetSheet meet = bench.meets().add(MeetSheet.of("Evening", LocalDate.now(DAY), BoardDistance.ALL.get(0), null, MeetRules.DEFAULT));
    String day = "/meet/" + meet.id() + "/day";
    HttpResponse<String> refused = send(day, day, "starts", "noonish", "call", "30", "warm", "60");
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body()).contains("as in 14:30");
    HttpResponse<String> r = send(day, day, "starts", "14:30", "call", "20", "warm", "40", "wind", "-1.5", "give", "1", "note", "cold");
    assertThat(r.body()).contains("13:30").contains("call room closes").contains("-1.5 m/s, within 1.0");
    assertThat(bench.meetDays().day(meet.id()).orElseThrow().starts()).isEqualTo(LocalTime.of(14, 30));
    HttpResponse<String> pdf = client.get(day + ".pdf");
    assertThat(pdf.statusCode()).isEqualTo(200);
    assertThat(pdf.headers().firstValue("Content-Type").orElse("")).startsWith("application/pdf");
    assertThat(pdf.body()).startsWith("%PDF");
    assertThat(client.get(day + ".pdf?paper=A4").statusCode()).isEqualTo(200);
    assertThat(client.get(day + ".pdf?paper=A3").statusCode()).as("a paper that is not offered, as of a card").isEqualTo(422);
    assertThat(client.get("/meet/" + meet.id()).body()).contains(day);
  }
}
