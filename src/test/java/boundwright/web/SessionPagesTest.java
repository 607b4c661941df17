package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.clip.Box;
import boundwright.clip.day.SessionDesk;
import boundwright.clip.day.SessionFilm;
import boundwright.clip.desk.ClipState;
import boundwright.clip.session.Clothes;
import boundwright.clip.session.CutOrder;
import boundwright.clip.session.Cutter;
import boundwright.clip.session.FilmRep;
import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.store.engine.DataPlace;
import java.io.ByteArrayInputStream;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A session's film on its pages, with a made-up cutter. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class SessionPagesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
  private static final FilmRep REP =
      new FilmRep(62.1, 66.9, 62.75, new Box(1, 2, 3, 4), false, 4.1, 0.2, true, 0.93, Clothes.UNKNOWN, List.of(62.8, 66.0));

  @TempDir Path folder;
  private Workbench bench;
  private WebServer server;
  private Client client;
  private Athlete ilka;

  @BeforeEach
  void open() {
    bench =
        Workbench.open(
            DataPlace.of(folder), DAY,
            (order, progress) -> {
              throw new RefusedException("The film is dark.");
            },
            SessionPagesTest::cut);
    server = WebServer.start(bench, "127.0.0.1", 0);
    client = new Client(server.port());
    ilka = bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.INTERMEDIATE, Foot.RIGHT, 4));
    bench.sessions().start();
    bench.clips().start();
  }

  private static int cut(CutOrder order, Cutter.Listener listener) {
    listener.rep(REP);
    listener.reached(120, 120);
    return 1;
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  private String film() {
    SessionFilm film =
        bench.sessions()
            .take(
                LocalDate.of(2026, 5, 12), "tuesday.mp4", new ByteArrayInputStream(new byte[] {1}), new SessionDesk.Asked(null, 2, Surface.TRACK, null));
    while (bench.sessions().film(film.id()).state() != ClipState.READ) {
      LockSupport.parkNanos(5_000_000);
    }
    return "/clips/session/" + film.id();
  }

  @Test
  void theFilmShowsEachRepAsTheCommandLineSaysIt() {
    assertThat(client.get("/clips/session").body()).contains("Take the film");
    String page = client.get(film()).body();
    assertThat(page).contains(REP.said()).contains("1:02.8 to 1:06.9, to the left, 93 % sure").contains("Ilka Sandfoot");
    assertThat(client.get("/clips/session").body()).contains("tuesday.mp4");
  }

  @Test
  void nobodyIsReadBeforeTheySaidYes() {
    String film = film();
    String token = Client.hidden(client.get(film).body(), "csrf");
    long rep = bench.sessions().sheet(1).rows().get(0).rep().id();
    HttpResponse<String> asked = client.post("/clips/session/rep/" + rep + "/name", "csrf", token, "athlete", Long.toString(ilka.id()));
    assertThat(asked.statusCode()).isEqualTo(422);
    assertThat(asked.body()).contains("Nobody has recorded that Ilka Sandfoot may be filmed").contains("They said yes: read it");
    HttpResponse<String> named =
        client.post("/clips/session/rep/" + rep + "/name", "csrf", token, "athlete", Long.toString(ilka.id()), "may", "yes");
    assertThat(named.statusCode()).isEqualTo(200);
    while (bench.sessions().sheet(1).rows().get(0).working()) {
      LockSupport.parkNanos(5_000_000);
    }
    assertThat(client.get(film).body()).contains("The film is dark.").contains("not them");
    HttpResponse<String> nod = client.post("/clips/session/rep/" + rep + "/nod", "csrf", token);
    assertThat(nod.statusCode()).isEqualTo(422);
  }

  @Test
  void whatIsNotThereIsSaidInWords() {
    assertThat(client.get("/clips/session/77").statusCode()).isEqualTo(404);
    assertThat(client.get("/clips/session/rep/77").statusCode()).isEqualTo(404);
    assertThat(client.get("/clips/session/x").body()).contains("Choose a film from the list");
  }
}
