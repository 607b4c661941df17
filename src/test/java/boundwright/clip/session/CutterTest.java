package boundwright.clip.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.clip.FoundClip;
import boundwright.clip.film.Film;
import boundwright.clip.film.Frame;
import boundwright.clip.film.Stretch;
import boundwright.clip.scan.ScanOrder;
import boundwright.clip.scan.Scanner;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.truth.PaintedRunner;
import boundwright.quantity.RefusedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A painted session of two athletes, one walking back while the other bounds, and somebody who stands about. Seed 11. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class CutterTest {
  @TempDir static Path folder;
  private static PaintedSession session;
  private static Path film;

  @BeforeAll
  static void paint() {
    PaintedRunner.weightsOrSkip();
    session = new PaintedSession(640, 360, 2, 1, 1, 11);
    film = folder.resolve("session.mp4");
    session.write(film, 30, 24);
  }

  private static List<FilmRep> cut(double from_s) {
    List<FilmRep> out = new ArrayList<>();
    Cutter.cut(
        new CutOrder(film, PaintedRunner.WEIGHTS, from_s, folder.resolve("stills")),
        new Cutter.Listener() {
          @Override
          public void reached(double time_s, double of_s) {}

          @Override
          public void rep(FilmRep rep) {
            out.add(rep);
          }
        });
    return out;
  }

  @Test
  void everyRepIsFoundNoneIsInventedAndItsRangeReadsAsAClip() {
    List<FilmRep> found = cut(0);
    assertThat(found).hasSameSizeAs(session.reps());
    for (int i = 0; i < found.size(); i++) {
      FilmRep r = found.get(i);
      PaintedSession.TrueRep truth = session.reps().get(i);
      // the first runs past somebody who stands there, and is taken up behind them
      assertThat(r.from_s()).isLessThan(truth.to_s() - 0.7);
      assertThat(r.to_s()).isBetween(truth.to_s() - 0.1, truth.to_s() + 2);
      assertThat(r.toTheRight()).isTrue();
      assertThat(r.stills()).hasSize(6).allSatisfy(t -> assertThat(CutOrder.still(folder.resolve("stills"), r.from_s(), t)).exists());
    }
    assertThat(found.get(0).clothes().unlike(found.get(1).clothes())).as("a blue shirt and a red one").isGreaterThan(0.4);
    FilmRep second = found.get(1);
    FoundClip clip =
        Scanner.scan(
            ScanOrder.of(film, PaintedRunner.WEIGHTS).withStretch(new Stretch(second.from_s(), second.to_s())).withBox(second.box(), 0), p -> {});
    assertThat(clip.track().time(0)).isBetween(second.from_s() - 1e-3, second.from_s() + 0.2);
    int seen = 0;
    for (int i = 0; i < clip.track().frames(); i++) {
      seen += clip.track().seen(BodyPoint.LEFT_HIP, i) ? 1 : 0;
    }
    assertThat(seen).isGreaterThan(clip.track().frames() * 3 / 4);
    // a kill in between: what began before is not cut again, what comes is
    assertThat(cut(session.reps().get(0).to_s() + 1.5)).singleElement().satisfies(r -> assertThat(r.to_s()).isCloseTo(second.to_s(), org.assertj.core.data.Offset.offset(0.3)));
  }

  @Test
  void aPartOfAFilmHasTheFramesOfThatPart() {
    try (Film part = Film.open(film, new Stretch(2.05, 2.55))) {
      List<Double> times = new ArrayList<>();
      for (Frame f = part.next(); f != null; f = part.next()) {
        assertThat(f.index()).isEqualTo(times.size());
        times.add(f.time_s());
      }
      assertThat(times).hasSize(15);
      assertThat(times.get(0)).isBetween(2.05, 2.05 + 1 / 30.0);
      assertThat(times.get(14)).isBetween(2.55 - 1 / 30.0, 2.55);
    }
    assertThatThrownBy(() -> Film.open(film, new Stretch(0, 61))).isInstanceOf(RefusedException.class).hasMessageContaining("61.0 s").hasMessageContaining("60 s");
    assertThatThrownBy(() -> new Stretch(3, 2)).isInstanceOf(RefusedException.class).hasMessageContaining("3.00");
  }

  @Test
  void whatIsNoFilmIsRefused() throws Exception {
    Path none = Files.writeString(folder.resolve("none.mp4"), "no film");
    assertThatThrownBy(() -> Cutter.cut(new CutOrder(none, PaintedRunner.WEIGHTS, 0, folder.resolve("s2")), new Cutter.Listener() {
      @Override
      public void reached(double time_s, double of_s) {}

      @Override
      public void rep(FilmRep rep) {}
    })).isInstanceOf(RefusedException.class).hasMessageContaining("none.mp4");
  }
}
