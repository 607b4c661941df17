package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.athlete.person.Scope;
import boundwright.clip.Box;
import boundwright.clip.FoundClip;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.day.SessionDesk;
import boundwright.clip.day.SessionFilm;
import boundwright.clip.day.SessionRep;
import boundwright.clip.day.SessionSheet;
import boundwright.clip.desk.ClipState;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.reading.Setup;
import boundwright.clip.session.Clothes;
import boundwright.clip.session.CutOrder;
import boundwright.clip.session.Cutter;
import boundwright.clip.session.FilmRep;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import boundwright.track.Deed;
import boundwright.track.Made;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A session's film from its coming in to the log, with a made-up cutter and made-up body points on the real database. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class SqlSessionsTest {
  private static final TrueClip TRUTH = TrueClip.of(Sequence.parse("RRL"), 2, 6.0, 120, Noise.USUAL, false, 3);
  private static final double[] RUNS = {20, 95, 150, 230};

  @TempDir Path dir;
  private Workbench w;
  private Athlete ada;
  private Athlete bo;
  private final List<Double> begunAt = new CopyOnWriteArrayList<>();
  private volatile boolean breaksOff;
  private volatile CameraPath camera = CameraPath.stood();

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK, (order, progress) -> found(), this::cut);
    if (w.athletes().all().isEmpty()) {
      w.athletes().add(Fixtures.athlete("Ada"));
      w.athletes().add(Fixtures.athlete("Bo"));
    }
    ada = w.athletes().byName("Ada").orElseThrow();
    bo = w.athletes().byName("Bo").orElseThrow();
    w.sessions().start();
    w.clips().start();
  }

  @AfterEach
  void close() {
    w.close();
  }

  private FoundClip found() {
    int n = TRUTH.found().frames();
    return new FoundClip(new FilmFacts("h264", 1280, 720, 0, 1, 90000, n, n / 120.0, Double.NaN), 0, TRUTH.found(), n, List.of(), camera);
  }

  /** Finds four reps, a shirt for each of two athletes in turn; breaks off after the second if it is told to. */
  private int cut(CutOrder order, Cutter.Listener listener) {
    begunAt.add(order.from_s());
    for (int i = 0; i < RUNS.length; i++) {
      if (RUNS[i] < order.from_s()) {
        continue;
      }
      if (breaksOff && i == 2) {
        throw new RefusedException("Looking through film.mp4 ended without an answer.");
      }
      double[] share = new double[Clothes.BINS];
      share[i % 2 == 0 ? 1 : 7] = 1;
      share[28] = 1;
      FilmRep rep =
          new FilmRep(
              RUNS[i] - 1, RUNS[i] + 4, RUNS[i], new Box(10, 20, 30, 60.5), i % 2 == 0, 4.1, 0.2, true, 0.97, Clothes.of(share), List.of(RUNS[i], RUNS[i] + 2.5));
      for (double t : rep.stills()) {
        write(CutOrder.still(Objects.requireNonNull(order.stills()), rep.from_s(), t));
      }
      listener.rep(rep);
      listener.reached(RUNS[i] + 8, 300);
    }
    listener.reached(300, 300);
    return 7;
  }

  private static void write(Path still) {
    try {
      Files.createDirectories(still.getParent());
      Files.writeString(still, "picture");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private SessionFilm take() {
    return w.sessions()
        .take(
            Fixtures.TODAY, "tuesday.mp4", new ByteArrayInputStream("a film".getBytes(StandardCharsets.UTF_8)),
            new SessionDesk.Asked(Sequence.parse("RRL"), 2, Surface.TRACK, null));
  }

  private static void until(String what, BooleanSupplier done) {
    long end = System.nanoTime() + 60_000_000_000L;
    while (!done.getAsBoolean()) {
      assertThat(System.nanoTime()).as(what).isLessThan(end);
      LockSupport.parkNanos(5_000_000);
    }
  }

  private SessionFilm cutFilm() {
    SessionFilm film = take();
    until("cut", () -> w.sessions().film(film.id()).state() == ClipState.READ);
    return w.sessions().film(film.id());
  }

  private List<SessionSheet.Row> rows(SessionFilm film) {
    return w.sessions().sheet(film.id()).rows();
  }

  /** Taps reps of the day by a clock that is 1000 s on, each 5 s after its landing. */
  private List<Rep> tapped(Athlete... who) {
    List<Deed> deeds = new ArrayList<>();
    Instant zero = Fixtures.CLOCK.instant().minusSeconds(1000);
    for (int i = 0; i < who.length; i++) {
      Instant at = zero.plusMillis(Math.round(1000 * (RUNS[i] + 4 + 5)));
      deeds.add(new Deed.Done(String.format(Locale.ROOT, "%032x", i + 1), Fixtures.tap(who[i].id(), Fixtures.TODAY), new Made(at, 0)));
    }
    w.track().bring(deeds);
    List<Rep> out = new ArrayList<>(w.reps().inOrder(ada.id()));
    out.addAll(w.reps().inOrder(bo.id()));
    return out;
  }

  private SessionSheet.Row read(SessionFilm film, int at, Athlete who) {
    w.people().say(who.id(), Scope.FILM, true);
    w.sessions().name(rows(film).get(at).rep().id(), who);
    until("read", () -> !rows(film).get(at).working());
    long clip = rows(film).get(at).rep().clipId();
    w.clips().setup(clip, Setup.ground(TRUTH.marks()));
    return rows(film).get(at);
  }

  /** A reading that was kept in memory does not outlive what it was made with. */
  @Test
  void theTickThatTheCameraStoodGivesTheRepItsLengthsAndTakenBackTheyGo() {
    camera = CameraPath.of(CameraPath.Kind.PLAIN);
    SessionFilm film = cutFilm();
    SessionSheet.Row row = read(film, 0, ada);
    assertThat(row.seen()).isNull();
    long clip = row.rep().clipId();
    w.clips().setup(clip, w.clips().clip(clip).setup(), true);
    assertThat(rows(film).get(0).seen()).isNotNull();
    w.clips().setup(clip, w.clips().clip(clip).setup(), false);
    assertThat(rows(film).get(0).seen()).isNull();
  }

  @Test
  void whatWasCutIsKeptAndIsThereAfterTheProgramWasClosed() {
    SessionFilm film = cutFilm();
    List<SessionRep> before = rows(film).stream().map(SessionSheet.Row::rep).toList();
    assertThat(before).hasSize(4);
    assertThat(before.get(1).cut().box()).isEqualTo(new Box(10, 20, 30, 60.5));
    assertThat(before.get(1).cut().toTheRight()).isFalse();
    close();
    open();
    List<SessionRep> after = rows(film).stream().map(SessionSheet.Row::rep).toList();
    for (int i = 0; i < 4; i++) {
      assertThat(after.get(i)).usingRecursiveComparison().isEqualTo(before.get(i));
    }
    assertThat(w.sessions().still(after.get(0).id(), 1)).isPresent();
    assertThat(w.sessions().sheet(film.id()).bytes()).isEqualTo("a film".length() + 8L * "picture".length());
  }

  @Test
  void aCutThatBreaksOffGoesOnWhereItWas() {
    breaksOff = true;
    SessionFilm film = take();
    until("refused", () -> w.sessions().film(film.id()).state() == ClipState.REFUSED);
    assertThat(String.valueOf(w.sessions().film(film.id()).trouble())).contains("tuesday.mp4");
    assertThat(rows(film)).hasSize(2);
    breaksOff = false;
    w.sessions().goOn(film.id());
    until("cut", () -> w.sessions().film(film.id()).state() == ClipState.READ);
    assertThat(begunAt).containsExactly(0.0, RUNS[1] + 8);
    assertThat(rows(film)).hasSize(4);
  }

  @Test
  void nobodyIsReadWithoutConsentOrName() {
    SessionFilm film = cutFilm();
    SessionRep rep = rows(film).get(0).rep();
    assertThatThrownBy(() -> w.sessions().name(rep.id(), ada)).isInstanceOf(RefusedException.class).hasMessageContaining("Ada may be filmed");
    w.people().say(ada.id(), Scope.FILM, false);
    assertThatThrownBy(() -> w.sessions().name(rep.id(), ada)).isInstanceOf(RefusedException.class).hasMessageContaining("may not be filmed").hasMessageContaining("2026-05-12");
    assertThat(w.clips().all()).isEmpty();
    assertThatThrownBy(() -> w.sessions().nod(rep.id())).isInstanceOf(RefusedException.class).hasMessageContaining("Nobody is named");
    w.people().say(ada.id(), Scope.FILM, true);
    w.sessions().name(rep.id(), ada);
    assertThat(w.clips().all()).hasSize(1);
    assertThat(rows(film).get(1).maybe()).as("nobody may be proposed for what is named; the rest stays nobody's").isNotEmpty();
    assertThat(rows(film).get(1).rep().athleteId()).isNull();
  }

  @Test
  void clothesOfThisFilmProposeAndAreForgottenWithIt() {
    SessionFilm film = cutFilm();
    read(film, 0, bo);
    read(film, 1, ada);
    SessionSheet.Row third = rows(film).get(2);
    assertThat(third.maybe().get(0).athleteId()).isEqualTo(bo.id());
    assertThat(third.maybe().get(0).sure()).isGreaterThan(0.7);
    w.sessions().done(film.id());
    assertThat(rows(film)).allSatisfy(r -> assertThat(r.rep().cut().clothes().known()).isFalse());
  }

  @Test
  void aRepWithoutATapIsLoggedAndTakenBack() {
    SessionFilm film = cutFilm();
    SessionSheet.Row row = read(film, 0, ada);
    Rep kept = w.sessions().nod(row.rep().id());
    assertThat(w.reps().inOrder(ada.id())).containsExactly(kept);
    assertThat(kept.footprints_m()).isNotEmpty();
    assertThatThrownBy(() -> w.sessions().unname(row.rep().id())).isInstanceOf(RefusedException.class).hasMessageContaining("in the log already");
    w.sessions().takeBack(row.rep().id());
    assertThat(w.reps().inOrder(ada.id())).isEmpty();
  }

  @Test
  void aTappedRepGetsTheLengthsAndNoSecondRepIsLogged() {
    SessionFilm film = cutFilm();
    tapped(ada, bo, ada, bo);
    assertThat(w.sessions().sheet(film.id()).matched()).isTrue();
    SessionSheet.Row proposed = rows(film).get(0);
    assertThat(proposed.maybe().get(0).athleteId()).isEqualTo(ada.id());
    assertThat(proposed.maybe().get(0).sure()).isGreaterThan(0.8);
    SessionSheet.Row row = read(film, 0, ada);
    Rep tapped = w.reps().inOrder(ada.id()).get(0);
    assertThat(row.rep().tapRepId()).isEqualTo(tapped.id());
    Rep now = w.sessions().nod(row.rep().id());
    assertThat(w.reps().inOrder(ada.id())).hasSize(2);
    assertThat(now.id()).isEqualTo(tapped.id());
    assertThat(now.outcome()).isEqualTo(Outcome.IN);
    assertThat(w.reps().inOrder(ada.id()).get(0).footprints_m()).isEqualTo(now.footprints_m()).isNotEmpty();
    assertThat(rows(film).get(0).logged()).isTrue();
    w.sessions().takeBack(row.rep().id());
    assertThat(w.reps().inOrder(ada.id()).get(0)).isEqualTo(tapped);
    w.sessions().ownRep(row.rep().id());
    w.sessions().nod(row.rep().id());
    assertThat(w.reps().inOrder(ada.id())).hasSize(3);
  }

  @Test
  void whatIsLearnedIsTheSameAsIfTheTapHadHadItsLengths() {
    SessionFilm film = cutFilm();
    tapped(ada, bo, ada, bo);
    w.sessions().nod(read(film, 0, ada).rep().id());
    byte[] now = w.logbook().model(ada).toBytes();
    w.logbook().relearn(ada.id());
    assertThat(w.logbook().model(ada).toBytes()).isEqualTo(now);
  }

  @Test
  void erasingForgetsStillsReadingsAndTheFilmThatShowsThem() throws IOException {
    SessionFilm film = cutFilm();
    read(film, 0, ada);
    SessionRep rep = rows(film).get(0).rep();
    Path still = w.sessions().still(rep.id(), 0).orElseThrow();
    w.sessions().forget(ada.id());
    w.clips().removeAll(ada.id());
    w.athletes().erase(ada.id());
    assertThat(still).doesNotExist();
    assertThat(rows(film)).hasSize(3);
    assertThat(w.clips().all()).isEmpty();
    assertThat(w.sessions().film(film.id()).filmKept()).isFalse();
    assertThat(w.people().said(ada.id())).isEmpty();
    try (var files = Files.walk(dir.resolve("sessions"))) {
      assertThat(files.filter(p -> String.valueOf(p.getFileName()).startsWith("film."))).isEmpty();
    }
  }

  @Test
  void anEmptyFilmAndAFilmThatIsGoneAreRefused() {
    assertThatThrownBy(
            () -> w.sessions().take(Fixtures.TODAY, "a.mp4", new ByteArrayInputStream(new byte[0]), new SessionDesk.Asked(null, 2, Surface.TRACK, null)))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("0 bytes");
    SessionFilm film = cutFilm();
    w.sessions().dropFilm(film.id());
    w.people().say(ada.id(), Scope.FILM, true);
    assertThatThrownBy(() -> w.sessions().name(rows(film).get(0).rep().id(), ada)).isInstanceOf(RefusedException.class).hasMessageContaining("was dropped");
  }
}
