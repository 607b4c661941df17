package boundwright.clip.real;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The judge of the reading is judged first: every kind of mistake is counted as what it is. */
class MatchingTest {
  private static final double FRAME_S = 1.0 / 30;
  @TempDir Path folder;

  @Test
  void countsEveryKindOfMistakeOnce() throws IOException {
    TruthFile truth =
        truth("contact R - 2", "contact L 10 20", "contact R 30 40", "contact L 50 60", "contact R 70 80", "contact L 90 -", "ignore 120 140", "landing 110");
    Matching.Result r =
        Matching.of(
            truth,
            List.of(
                found(Foot.RIGHT, Double.NaN, 3), // of the contact whose touchdown the film does not show
                found(Foot.LEFT, 12, 17), // right, 2 late, toe-off 3 early
                found(Foot.RIGHT, 34, 41), // off: 4 late
                found(Foot.RIGHT, 50, 60), // wrong foot
                found(Foot.LEFT, 63, 66), // extra
                found(Foot.RIGHT, 130, 135), // in a stretch that is not judged
                new Matching.Found(Foot.RIGHT, 111, Double.NaN, true)),
            FRAME_S);
    assertThat(r.known()).isEqualTo(5);
    assertThat(List.of(r.right(), r.off(), r.wrongFoot(), r.missed(), r.extra())).containsExactly(1, 1, 1, 2, 1);
    assertThat(r.touchdown()).containsExactly(2.0, 4.0);
    assertThat(r.toeOff()).containsExactly(-3.0, 1.0);
  }

  @Test
  void theSameFootIsPutTogetherBeforeANearerOtherFoot() throws IOException {
    Matching.Result r =
        Matching.of(truth("contact L 10 20"), List.of(found(Foot.RIGHT, 10, 20), found(Foot.LEFT, 12, 20)), FRAME_S);
    assertThat(List.of(r.right(), r.wrongFoot(), r.extra())).containsExactly(1, 0, 1);
  }

  @Test
  void aLandingOnBothFeetInMidFilmIsExtraAndSoIsAnythingInFilmOfNobody() throws IOException {
    List<Matching.Found> landing = List.of(new Matching.Found(Foot.LEFT, 10, 20, true));
    assertThat(Matching.of(truth("contact L 10 20"), landing, FRAME_S).extra()).isEqualTo(1);
    assertThat(Matching.of(truth("nobody"), List.of(found(Foot.LEFT, 10, 20)), FRAME_S).extra()).isEqualTo(1);
  }

  @Test
  void quickFilmIsNotJudgedFinerThanFortyMilliseconds() throws IOException {
    TruthFile truth = truth("contact L 100 140");
    assertThat(Matching.of(truth, List.of(found(Foot.LEFT, 109, 140)), 1.0 / 240).right()).isEqualTo(1);
    assertThat(Matching.of(truth, List.of(found(Foot.LEFT, 111, 140)), 1.0 / 240).right()).isZero();
  }

  /** Brown, Cai and DasGupta 2001, Statistical Science 16:101-133, give the formula (memory); the ends are worked by hand from it. */
  @Test
  void wilsonsInterval() {
    assertThat(RealFilms.wilsonInterval(33, 34)[0]).isCloseTo(0.851, within(0.001));
    assertThat(RealFilms.wilsonInterval(33, 34)[1]).isCloseTo(0.995, within(0.001));
    assertThat(RealFilms.wilsonInterval(0, 10)).satisfies(i -> assertThat(i[1]).isCloseTo(3.8415 / 13.8415, within(0.0001)));
  }

  @Test
  void writesWhatItReadsAndNamesALineItDoesNot() throws IOException {
    TruthFile truth = truth("slowed 2", "asked RRL", "contact R - 2", "contact L 6.5 22.5", "landing 30");
    Path again = Files.writeString(folder.resolve("again.txt"), truth.text("painted"));
    assertThat(TruthFile.read(again)).isEqualTo(truth);
    assertThatThrownBy(() -> truth("contact X 1 2")).isInstanceOf(RefusedException.class).hasMessageContaining("Line 1").hasMessageContaining("contact X 1 2");
    assertThatThrownBy(() -> truth("nobody", "contact R 1 2")).isInstanceOf(RefusedException.class);
  }

  private TruthFile truth(String... lines) throws IOException {
    return TruthFile.read(Files.write(folder.resolve("film.txt"), List.of(lines)));
  }

  private static Matching.Found found(Foot foot, double down, double up) {
    return new Matching.Found(foot, down, up, false);
  }
}
