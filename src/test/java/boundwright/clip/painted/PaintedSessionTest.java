package boundwright.clip.painted;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.clip.real.TruthFile;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.truth.Body;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/** What the painted scenes say of themselves is so. */
class PaintedSessionTest {
  @Test
  void repsFollowOneAnotherAndStartAtTheEdgeOfThePicture() {
    for (long seed = 1; seed <= 5; seed++) {
      PaintedSession s = new PaintedSession(600, seed, 1280, 720);
      List<PaintedSession.Doing> reps = s.doings().stream().filter(d -> d.what().equals("rep")).toList();
      assertThat(reps).as("seed %d", seed).hasSizeGreaterThan(5);
      assertThat(reps.stream().map(PaintedSession.Doing::who).distinct().count()).isGreaterThan(3);
      double before = 0;
      for (PaintedSession.Doing d : reps) {
        assertThat(d.from()).as("seed %d", seed).isGreaterThan(before);
        assertThat(d.to() - d.from()).isBetween(1.0, 8.0);
        before = d.shown_to();
        Body first = d.person().at().apply(d.from());
        double x = s.camera().project(first.at(BodyPoint.LEFT_HIP)[0], 1, 0).x();
        assertThat(Math.min(x, 1280 - x)).as("seed %d: comes in at the edge [px]", seed).isLessThan(10);
      }
    }
  }

  /** Counted by hand from the data's own description: a cut of 340 frames at 120 Hz, a walk. Runs only where the data lie. */
  @Test
  void openMotionIsReadAsItsOwnDescriptionHasIt() throws IOException {
    Optional<Path> data = OpenMotion.file();
    Assumptions.assumeTrue(data.isPresent(), "Not checked, because the open motion is not here.");
    OpenMotion walk = OpenMotion.of(data.get(), "002_01_0");
    assertThat(walk.length_s()).isCloseTo(339 / 120.0, within(1e-9));
    assertThat(walk.way() / walk.length_s()).as("a walk [m/s]").isCloseTo(1.34, within(0.03));
    List<TruthFile.Known> contacts = walk.contacts(60);
    assertThat(contacts).hasSizeBetween(6, 8);
    for (int i = 1; i < contacts.size(); i++) {
      assertThat(contacts.get(i).foot()).as("walking changes the foot").isNotEqualTo(contacts.get(i - 1).foot());
    }
    Body b = walk.body(1);
    assertThat(b.at(BodyPoint.LEFT_HIP)[1]).as("hips stand about a leg above the ground [m]").isBetween(0.75, 1.1);
    assertThat(Math.min(b.at(BodyPoint.LEFT_TOE)[1], b.at(BodyPoint.RIGHT_TOE)[1])).isBetween(-0.05, 0.1);
  }
}
