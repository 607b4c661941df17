package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.person.Scope;
import boundwright.athlete.person.Standing;
import boundwright.store.Fixtures;
import boundwright.store.Workbench;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A coach's own spreadsheet, and birth date and consent, through the pages of a running server. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class MoveInPagesTest {
  @TempDir Path dir;
  private Workbench bench;
  private WebServer server;
  private Client client;
  private String csrf;

  @BeforeEach
  void start() {
    bench = Workbench.open(dir, Fixtures.CLOCK);
    server = WebServer.start(bench, "127.0.0.1", 0);
    client = new Client(server.port());
    csrf = Client.hidden(client.get("/import").body(), "csrf");
  }

  @AfterEach
  void stop() {
    server.close();
    bench.close();
  }

  @Test
  void aRosterIsMappedAskedAboutTakenAndTakenBack() {
    String file = "Who;Born;Crew\nAda Fenn;3.11.2010;Tuesday\nBo Larch;4.12.2009;\n;1.1.2010;\n";
    HttpResponse<String> first = client.upload("/import", csrf, "squad.csv", file);
    assertThat(first.body()).contains("read as UTF-8, separated by semicolons").contains("No column is chosen for Name").doesNotContain("Take 2 rows");
    String token = Client.hidden(first.body(), "token");
    String of = Client.hidden(first.body(), "of");
    String[] chosen = {
      "csrf", csrf, "token", token, "of", of, "kind", "ROSTER", "encoding", "UTF_8", "separator", "SEMICOLON", "column-name", "0", "column-born", "1", "column-group", "2"
    };
    HttpResponse<String> asked = client.post("/import/look", chosen);
    assertThat(asked.body()).contains("Say above how days are written").doesNotContain("formaction");
    assertThat(client.post("/import/move", and(chosen, "bad", "skip")).statusCode()).as("days are never guessed").isEqualTo(422);
    assertThat(bench.athletes().all()).isEmpty();
    String[] told = and(chosen, "days", "DAY_FIRST");
    assertThat(client.post("/import/look", told).body()).contains("born 2010-11-03").contains("The name is empty").contains("Leave 1 out, take 2");
    assertThat(client.post("/import/move", told).statusCode()).as("not without the word").isEqualTo(422);
    assertThat(client.post("/import/move", and(told, "bad", "skip")).body()).contains("2 rows of squad.csv taken, 1 left out.").contains("2 athletes, 1 place in a group");
    assertThat(bench.people().person(bench.athletes().byName("Ada Fenn").orElseThrow().id()).born()).isEqualTo(LocalDate.of(2010, 11, 3));
    assertThat(client.post("/import/move", and(told, "bad", "skip")).statusCode()).as("once only").isEqualTo(422);
    HttpResponse<String> again = client.upload("/import", csrf, "squad.csv", file);
    assertThat(again.body()).contains("columns as for the last such file").contains("2 here already");
    assertThat(client.post("/import/back", "csrf", csrf, "number", "1").body()).contains("Taken back: 2 athletes.");
    assertThat(bench.athletes().all()).isEmpty();
  }

  @Test
  void whatWasChosenForAnotherKindOrReadingIsNotTakenOver() {
    HttpResponse<String> first = client.upload("/import", csrf, "x.csv", "name,date,distance\nAda,2026-05-01,11.20\n");
    String token = Client.hidden(first.body(), "token");
    HttpResponse<String> roster =
        client.post(
            "/import/look", "csrf", csrf, "token", token, "of", Client.hidden(first.body(), "of"), "kind", "ROSTER", "encoding", "UTF_8", "separator", "COMMA", "column-distance", "2");
    assertThat(roster.body()).contains("column-born").doesNotContain("column-distance").contains("new</b> Ada");
    assertThat(client.post("/import/look", "csrf", csrf, "token", "none", "kind", "ROSTER", "encoding", "UTF_8", "separator", "COMMA").body()).contains("no longer at hand");
    assertThat(client.post("/import/look", "csrf", csrf, "token", token, "kind", "ZOO", "encoding", "UTF_8", "separator", "COMMA").statusCode()).isEqualTo(422);
  }

  @Test
  void birthDateAndConsentAreEnteredWithdrawnAndRefusedInWords() {
    Athlete ada = bench.athletes().add(Fixtures.athlete("Ada"));
    String page = "/athlete/" + ada.id();
    assertThat(client.get(page + "/edit").body()).contains("nobody asked").contains("not known");
    assertThat(client.post(page + "/person", "csrf", csrf, "born", "2010-06-01", "sex", "FEMALE").body()).contains("1 June 2010, 15, female");
    assertThat(client.post(page + "/person", "csrf", csrf, "born", "2030-06-01").body()).contains("lies after today").contains("2030-06-01");
    assertThat(client.post(page + "/consent", "csrf", csrf, "scope", "FILM", "may", "yes", "by", "mother", "on", "2026-05-01").body())
        .contains("yes, 1 May 2026, mother; until 31 May 2028");
    assertThat(client.post("/settings/consent", "csrf", csrf, "endAge", "SIXTEEN").body()).contains("The settings are kept");
    assertThat(client.get(page + "/edit").body()).contains("until 31 May 2026");
    assertThat(client.post(page + "/consent", "csrf", csrf, "scope", "FILM", "may", "yes", "until", "2026-01-01").statusCode()).isEqualTo(422);
    assertThat(client.post(page + "/withdraw", "csrf", csrf, "scope", "FILM").body()).contains("withdrawn 12 May 2026");
    assertThat(bench.people().standing(ada.id(), Scope.FILM).kind()).isEqualTo(Standing.Kind.WITHDRAWN);
    assertThat(client.post(page + "/withdraw", "csrf", csrf, "scope", "FILM").statusCode()).isEqualTo(422);
  }

  private static String[] and(String[] fields, String... more) {
    String[] out = java.util.Arrays.copyOf(fields, fields.length + more.length);
    System.arraycopy(more, 0, out, fields.length, more.length);
    return out;
  }
}
