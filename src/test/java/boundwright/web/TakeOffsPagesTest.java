package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.footfall.RunJumps;
import boundwright.store.Workbench;
import boundwright.takeoffs.RunJumpRep;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of take-offs in a row, asked by a plain browser without scripts. */
class TakeOffsPagesTest {
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
    ilka = bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.INTERMEDIATE, Foot.LEFT, 4));
    page = "/athlete/" + ilka.id() + "/take-offs";
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  private HttpResponse<String> send(String to, String... fields) {
    String shown = client.get(page).body();
    List<String> all = new ArrayList<>(List.of("csrf", Client.hidden(shown, "csrf"), "token", Client.hidden(shown, "token")));
    all.addAll(List.of(fields));
    return client.post(to, all.toArray(new String[0]));
  }

  private HttpResponse<String> keep(String running, String jumps, String steps, String end, String landing, String... places) {
    List<String> fields = new ArrayList<>(List.of("foot", "LEFT", "running", running, "jumps", jumps, "steps", steps, "end", end, "landing", landing));
    for (String place : places) {
      fields.addAll(List.of("place", place));
    }
    return send(page, fields.toArray(new String[0]));
  }

  @Test
  void theUsualFormIsShownWithItsFeetAndThatItIsAGuess() {
    HttpResponse<String> r = client.get(page);
    assertThat(r.statusCode()).isEqualTo(200);
    assertThat(r.body()).contains("Run, run, jump x4, from 4 steps").contains("best mark").contains("do not rely on this one").contains("a first guess").contains("In the load each take-off counts, and each landing that is not in the sand").doesNotContain("landings are no contacts")
        .contains("Take-off 2").contains("Take-off 4").doesNotContain("Take-off 5 <").doesNotContain(" style=\"").doesNotContain("NaN");
    // four take-offs that change the foot (worked): left, right, left, right
    assertThat(r.body().split("<span class=\"whole\">[1-4] ", -1)).hasSize(5);
    assertThat(client.get("/athlete/" + ilka.id() + "/long-jump").body()).contains("href=\"" + page + "\"");
  }

  @Test
  void anotherRhythmIsAskedInTheAddress() {
    String said = client.get(page + "?foot=RIGHT&running=3&jumps=3&steps=6&end=flat").body();
    assertThat(said).contains("Run, run, run, jump x3, from 6 steps").contains("always off the right: 3 right, 0 left").contains("level ground this takes").doesNotContain("tape to sand");
    HttpResponse<String> r = client.get(page + "?foot=RIGHT&running=0&jumps=3&steps=6&end=flat");
    assertThat(r.statusCode()).isEqualTo(422);
    assertThat(r.body()).contains("of 0 is out of range: 1 to 8").contains("Run, run, jump x4");
    for (String odd : List.of("?foot=both&running=2&jumps=3&steps=6", "?foot=LEFT&running=two&jumps=3&steps=6", "?foot=LEFT&running=2&jumps=99&steps=6", "?foot=LEFT&running=2&jumps=3&steps=99")) {
      assertThat(client.get(page + odd).statusCode()).as(odd).isEqualTo(422);
    }
  }

  @Test
  void aRepIsKeptShownOnceAndTakenBack() {
    HttpResponse<String> r = keep("4", "3", "6", "sand", "24.1", "", "19.6");
    assertThat(r.statusCode()).isEqualTo(200);
    RunJumpRep kept = bench.runJumps().runJumps(ilka.id()).get(0);
    assertThat(kept.pattern()).isEqualTo(new RunJumps(Foot.LEFT, 4, 3));
    assertThat(kept.takeOffs_m()).containsExactly(Double.NaN, 19.6);
    assertThat(kept.date()).isEqualTo(LocalDate.of(2026, 5, 12));
    assertThat(r.body()).as("the next is the same").contains("4 running steps, jump x3, from 6 steps").contains("take-offs -; 19.60 m, landing 24.10 m").contains("1 measured rep");
    HttpResponse<String> again = keep("2", "3", "4", "sand", "15", "6", "5");
    assertThat(again.statusCode()).isEqualTo(422);
    assertThat(again.body()).contains("Take-off 3 at 5.00 m cannot be").contains("value=\"15\"").contains("value=\"6\"");
    assertThat(bench.runJumps().runJumps(ilka.id())).hasSize(1);
    send(page + "/" + kept.id() + "/remove");
    assertThat(bench.runJumps().runJumps(ilka.id())).isEmpty();
  }

  @Test
  void afterSomeMeasuredRepsMarksWork() {
    for (int i = 0; i < 9; i++) {
      keep("2", "4", "4", "sand", "20.7" + i, "5.4" + i, "10.9" + i, "16.6" + i);
    }
    assertThat(client.get(page).body()).contains("first take-off mark to sand").contains("works from").contains("9 measured reps").doesNotContain("do not rely")
        .as("the day's verdict, as wherever an athlete stands").contains("class=\"guard-line").contains("(63 contacts)");
    assertThat(client.get("/athlete/" + ilka.id() + "/load").body()).contains("36");
    // off L R L R, down from the first three on R L R (worked): left 3, right 4 in each of nine reps
    assertThat(client.get("/athlete/" + ilka.id() + "/load").body()).contains("<td>27</td><td>36</td>");
  }

  @Test
  void whileJumpingIsStoppedThereIsNoTape() {
    String care = client.get("/athlete/" + ilka.id() + "/care").body();
    client.post("/athlete/" + ilka.id() + "/hold", "csrf", Client.hidden(care, "csrf"), "token", Client.hidden(care, "token"), "note", "set by the physio (invented)", "date", "2026-05-12");
    assertThat(bench.loadDesk().day(ilka).held()).isTrue();
    assertThat(client.get(page).body()).contains("No take-offs.").doesNotContain("tape to sand").doesNotContain("mark-label");
  }
}
