package boundwright.clip.session;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.clip.truth.PaintedRunner;
import boundwright.clip.warp.HeldSession;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A painted rep followed by hand, with shake and a shutter of 20 ms, then the swing back. Seed 1: the rep lasts from 5.64 to 10.68 s, then the athlete
 * walks on. More of the kind: {@code bench/clip held-session} and {@code bench/session-film film}.
 */
class HeldCutterTest {
  @TempDir
  @SuppressWarnings("NullAway.Init") // JUnit fills the folder in
  Path folder;

  @Test
  void aRepThatThePhoneFollowsIsFoundOnceAndWalkingOnIsNone() throws Exception {
    PaintedRunner.weightsOrSkip();
    Path film = folder.resolve("held.mp4");
    HeldSession.write(film, 40, 15, 1, List.of("fps=15", "size=640x360", "scale=0.5", "shake=1", "shutter=20"));
    List<FilmRep> found = new ArrayList<>();
    Cutter.cut(
        new CutOrder(film, PaintedRunner.WEIGHTS, 0, null),
        new Cutter.Listener() {
          @Override
          public void reached(double time_s, double of_s) {}

          @Override
          public void rep(FilmRep rep) {
            found.add(rep);
          }
        });
    assertThat(found).singleElement().satisfies(r -> {
      assertThat(r.toTheRight()).isTrue();
      assertThat(r.run_s()).isBetween(5.64, 8.5);
      assertThat(r.to_s()).isBetween(10.68 - 0.2, 10.68 + 2);
    });
  }
}
