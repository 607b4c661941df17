package boundwright.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.clip.FoundClip;
import boundwright.clip.body.DeLeva;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.reading.ClipReader;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.Correction;
import boundwright.clip.reading.Setup;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.picture.BodyPicture.Cut;
import boundwright.picture.strip.RunwayStrip;
import boundwright.picture.strip.SeenStrip;
import boundwright.quantity.LengthUnit;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** The pictures of a made-up clip, held against the points and lengths that they are drawn from. */
class ClipPicturesTest {
  private static final TrueClip TRUTH = TrueClip.of(Sequence.parse("RRL"), 2, 6.0, 120, Noise.NONE, false, 3);

  private static FoundClip found(Track track) {
    int n = track.frames();
    return new FoundClip(new FilmFacts("h264", 1280, 720, 0, 1, 90_000, n, n / 120.0, Double.NaN), 4, track, n, List.of());
  }

  private static Setup marks() {
    return new Setup(TRUTH.marks(), new Setup.Pole(TRUTH.poleFoot(), TRUTH.poleTop(), TRUTH.pole_m()), List.of(), 1, DeLeva.MALE);
  }

  private static ClipReading read(Track track, Setup setup) {
    return ClipReader.read(found(track), setup, List.of(), Sequence.parse("RRL"));
  }

  @Test
  void pointsLieWhereTheyWereFoundAndTheStillIsCountedFromTheFilm() {
    ClipReading r = read(TRUTH.found(), marks());
    int frame = r.frameAt(r.begin(r.withNumber(2)));
    BodyPicture p = BodyPicture.of(found(TRUTH.found()), r, frame, Cut.NEAR);
    assertThat(p.still()).as("the film's frame, 4 before the track begins").isEqualTo(frame + 4);
    assertThat(p.dots()).hasSize(19);
    for (BodyPicture.Dot d : p.dots()) {
      Spot s = TRUTH.found().spot(d.point(), frame);
      assertThat(d.x()).isCloseTo(s.x(), within(0.01));
      assertThat(d.y()).isCloseTo(s.y(), within(0.01));
      assertThat(d.sure()).isTrue();
      assertThat(d.style()).isEqualTo(d.point().name().startsWith("LEFT") ? "left" : "right");
      assertThat(d.x()).isBetween(p.view().x(), p.view().x() + p.view().width());
      assertThat(d.y()).isBetween(p.view().y(), p.view().y() + p.view().height());
    }
    assertThat(p.bones()).extracting(BodyPicture.Bone::side).contains(Foot.LEFT, Foot.RIGHT);
  }

  @Test
  void aPointThatWasNotSeenIsPutBetweenAndHollow() {
    int frame = TRUTH.found().frames() / 2;
    Track gap = TRUTH.found().edit().erase(BodyPoint.RIGHT_WRIST, frame).build();
    BodyPicture p = BodyPicture.of(found(gap), read(gap, marks()), frame, Cut.WHOLE);
    BodyPicture.Dot wrist = p.dots().stream().filter(d -> d.point() == BodyPoint.RIGHT_WRIST).findFirst().orElseThrow();
    assertThat(wrist.style()).isEqualTo("right unsure");
    Spot truth = TRUTH.found().spot(BodyPoint.RIGHT_WRIST, frame);
    assertThat(Math.hypot(wrist.x() - truth.x(), wrist.y() - truth.y())).isLessThan(2);
  }

  @Test
  void theStripShowsEveryFootWithTheLengthsOfTheReading() {
    ClipReading r = read(TRUTH.found(), marks());
    RunwayStrip strip = Objects.requireNonNull(SeenStrip.of(r, 9.0, LengthUnit.METRES, RunwayStrip.Width.WIDE));
    int n = Objects.requireNonNull(r.match()).sequence().size();
    RunwayStrip.Row row = strip.rows().get(0);
    assertThat(row.prints().stream().map(RunwayStrip.Print::contact).distinct().toList()).hasSizeGreaterThanOrEqualTo(n);
    double first = row.prints().get(0).x();
    double second = row.prints().get(1).x();
    double perMetre = (row.ticks().get(0).x() - row.ticks().get(1).x()) / 1.0;
    double length = r.contacts().get(r.withNumber(2)).contact().place_m().p50() - r.contacts().get(r.withNumber(1)).contact().place_m().p50();
    assertThat((second - first) / perMetre).isCloseTo(length, within(0.01));
    assertThat(strip.said()).contains(LengthUnit.METRES.write(length));
    assertThat(row.prints().get(0).filled()).isEqualTo(r.contacts().get(r.withNumber(1)).contact().foot() == Foot.RIGHT);
    assertThat(SeenStrip.of(read(TRUTH.found(), Setup.none()), null, LengthUnit.METRES, RunwayStrip.Width.WIDE)).as("without marks").isNull();
  }

  @Test
  void framesAndContactsAreNamedByTime() {
    ClipReading r = read(TRUTH.found(), marks());
    for (int i = 0; i < r.contacts().size(); i++) {
      assertThat(r.contactAt(r.contacts().get(i).contact().middle_s())).isEqualTo(i);
      assertThat(r.sinceTouchdown(i, r.begin(i) + 0.02)).isCloseTo(0.02, within(1e-9));
    }
    for (int f = 0; f < TRUTH.found().frames(); f++) {
      assertThat(r.frameAt(r.time(f))).isEqualTo(f);
    }
    assertThat(r.frameAt(-5)).isZero();
    assertThat(r.frameAt(99)).isEqualTo(TRUTH.found().frames() - 1);
    int second = r.withNumber(2);
    Correction.ExchangeLegs legs = r.exchangeLegs(second);
    assertThat(legs.from_s()).isBetween(r.end(second - 1), r.begin(second));
    assertThat(legs.to_s()).isBetween(r.end(second), second + 1 < r.contacts().size() ? r.begin(second + 1) : 99);
  }

  @Test
  void theFilmsTagProposesItsSlowing() {
    FilmFacts shown30 = new FilmFacts("h264", 1280, 720, 0, 1, 90_000, 301, 10, 240);
    assertThat(shown30.slowedByTag()).isEqualTo(8);
    assertThat(new FilmFacts("h264", 1280, 720, 0, 1, 90_000, 301, 10, 30.5).slowedByTag()).isEqualTo(1);
    assertThat(new FilmFacts("h264", 1280, 720, 0, 1, 90_000, 301, 10, Double.NaN).slowedByTag()).isEqualTo(1);
  }
}
