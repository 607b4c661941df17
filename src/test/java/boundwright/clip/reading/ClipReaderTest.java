package boundwright.clip.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.clip.FoundClip;
import boundwright.clip.body.DeLeva;
import boundwright.clip.contact.Contact;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Track;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.clip.truth.TrueContact;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import boundwright.technique.FootContact;
import boundwright.technique.TeachingPoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Whole readings of made-up clips. The truth is our own; the free fall of 9.81 m/s2 is the outside measure. */
class ClipReaderTest {
  private static final Sequence ASKED = Sequence.parse("RRL RRL");

  private static TrueClip clip(String sequence, Noise noise, long seed) {
    return TrueClip.of(Sequence.parse(sequence), 2, 6.0, 240, noise, false, seed);
  }

  private static FoundClip found(TrueClip clip) {
    int n = clip.found().frames();
    return new FoundClip(new FilmFacts("h264", 1280, 720, 0, 1, 90000, n, n / 240.0, Double.NaN), 0, clip.found(), n, List.of());
  }

  private static Setup setup(TrueClip clip) {
    return new Setup(clip.marks(), new Setup.Pole(clip.poleFoot(), clip.poleTop(), clip.pole_m()), List.of(), 1, DeLeva.MALE);
  }

  private static ReadContact contactAt(ClipReading r, int i) {
    return r.contacts().get(i);
  }

  @Test
  void flightsFallFreelyAndLengthsAreTheTruth() {
    TrueClip clip = clip("RRL RRL", Noise.NONE, 3);
    ClipReading r = ClipReader.read(found(clip), setup(clip), List.of(), null);
    double[] g = r.flights().stream().mapToDouble(ReadFlight::fallen_ms2).filter(v -> !Double.isNaN(v)).sorted().toArray();
    assertThat(g).hasSizeGreaterThan(2);
    assertThat(g[g.length / 2]).as("standard free fall, published").isBetween(9.81 * 0.95, 9.81 * 1.05);
    assertThat(r.remarks()).noneMatch(s -> s.contains("m/s2"));
  }

  /** The take-off into the sand against the made-up athlete's own centre of mass at the true times: speeds to .15 m/s, heights and places to 6 cm. */
  @Test
  void theLastTakeOffIsThatOfTheMadeUpBody() {
    int read = 0;
    for (long seed = 3; seed < 9; seed++) {
      TrueClip clip = clip("RRL", Noise.NONE, seed);
      LastTakeOff t = ClipReader.read(found(clip), setup(clip), List.of(), null).lastTakeOff().orElse(null);
      if (t == null) {
        continue;
      }
      read++;
      double land = clip.athlete().mass().landingTime();
      TrueContact last = clip.athlete().mass().contacts().get(clip.athlete().mass().contacts().size() - 1);
      assertThat(t.height_m()).as("seed " + seed).isCloseTo(clip.athlete().centreOfMass(last.up()).y(), within(.06));
      assertThat(t.landingHeight_m()).as("seed " + seed).isCloseTo(clip.athlete().centreOfMass(land).y(), within(.06));
      assertThat(t.foot()).isEqualTo(last.foot());
      assertThat(t.speed_ms()).as("seed " + seed).isCloseTo(last.vxOut(), within(.15));
      assertThat(t.upSpeed_ms()).as("seed " + seed).isCloseTo(last.vyOut(), within(.15));
      assertThat(t.ahead_m()).as("seed " + seed).isCloseTo(last.xOut() - last.toeX(), within(.10));
    }
    assertThat(read).isGreaterThan(2);
    TrueClip clip = clip("RRL", Noise.NONE, 3);
    assertThat(ClipReader.read(found(clip), Setup.none(), List.of(), null).lastTakeOff()).as("no scale").isEmpty();
  }

  @Test
  void withoutMarksThereAreFeetAndTimesButNoLengths() {
    TrueClip clip = clip("RL x5", Noise.USUAL, 5);
    ClipReading with = ClipReader.read(found(clip), setup(clip), List.of(), null);
    ClipReading without = ClipReader.read(found(clip), Setup.none(), List.of(), null);
    assertThat(without.flights()).allMatch(f -> f.length_m() == null);
    assertThat(without.remarks()).anyMatch(s -> s.contains("no lengths"));
    assertThat(feet(without)).isEqualTo(feet(with));
  }

  private static List<Foot> feet(ClipReading r) {
    return r.contacts().stream().map(c -> c.contact().foot()).toList();
  }

  @Test
  void exchangingTheLegsByHandTurnsTheFootOver() {
    TrueClip clip = clip("RL x5", Noise.USUAL, 5);
    ClipReading before = ClipReader.read(found(clip), setup(clip), List.of(), null);
    ReadContact c = contactAt(before, 1);
    double from = contactAt(before, 0).contact().middle_s() + 0.05;
    double to = contactAt(before, 2).contact().middle_s() - 0.05;
    ClipReading after = ClipReader.read(found(clip), setup(clip), List.of(new Correction.ExchangeLegs(from, to)), null);
    double mid = c.contact().middle_s();
    ReadContact now =
        after.contacts().stream().filter(a -> Math.abs(a.contact().middle_s() - mid) < 0.05).findFirst().orElseThrow();
    assertThat(now.contact().foot()).isEqualTo(c.contact().foot().other());
    assertThat(now.contact().footSure()).isGreaterThan(0.99);
  }

  @Test
  void aTimeSetByHandMovesFlightAndContactWithIt() {
    TrueClip clip = clip("RL x5", Noise.USUAL, 5);
    ClipReading before = ClipReader.read(found(clip), setup(clip), List.of(), null);
    Contact c = contactAt(before, 1).contact();
    Estimate down = java.util.Objects.requireNonNull(c.touchdown_s());
    double later = down.p50() + 0.020;
    ClipReading after = ClipReader.read(found(clip), setup(clip), List.of(new Correction.Touchdown(c.middle_s(), later)), null);
    assertThat(contactAt(after, 1).fromHand()).isTrue();
    Estimate was = java.util.Objects.requireNonNull(before.flights().get(0).time_s());
    Estimate is = java.util.Objects.requireNonNull(after.flights().get(0).time_s());
    assertThat(is.p50() - was.p50()).isCloseTo(0.020, org.assertj.core.data.Offset.offset(1e-9));
  }

  @Test
  void aContactIsDroppedAndAddedAgain() {
    TrueClip clip = clip("RL x5", Noise.USUAL, 5);
    ClipReading before = ClipReader.read(found(clip), setup(clip), List.of(), null);
    Contact c = contactAt(before, 1).contact();
    List<Correction> all = new ArrayList<>(List.of(new Correction.DropContact(c.middle_s())));
    assertThat(ClipReader.read(found(clip), setup(clip), all, null).contacts()).hasSize(before.contacts().size() - 1);
    double down = java.util.Objects.requireNonNull(c.touchdown_s()).p50();
    double up = java.util.Objects.requireNonNull(c.toeOff_s()).p50();
    all.add(new Correction.AddContact(c.foot(), down, up));
    ClipReading again = ClipReader.read(found(clip), setup(clip), all, null);
    assertThat(feet(again)).isEqualTo(feet(before));
    assertThat(contactAt(again, 1).contact().place_m().p50()).isCloseTo(c.place_m().p50(), org.assertj.core.data.Offset.offset(0.05));
  }

  private static FoundClip without(TrueClip clip, BodyPoint... points) {
    Track.Builder out = clip.found().edit();
    for (BodyPoint p : points) {
      for (int i = 0; i < clip.found().frames(); i++) {
        out.erase(p, i);
      }
    }
    FoundClip all = found(clip);
    return new FoundClip(all.film(), 0, out.build(), all.networkFrames(), List.of());
  }

  @Test
  void aFootWithoutHeelsOrToesStandsWhereItsOtherEndStands() {
    TrueClip clip = clip("RL x5", Noise.NONE, 5);
    ClipReading heels = ClipReader.read(without(clip, BodyPoint.LEFT_TOE, BodyPoint.RIGHT_TOE), setup(clip), List.of(), null);
    ClipReading toes = ClipReader.read(without(clip, BodyPoint.LEFT_HEEL, BodyPoint.RIGHT_HEEL), setup(clip), List.of(), null);
    for (ClipReading r : List.of(heels, toes)) {
      assertThat(r.contacts()).isNotEmpty().allSatisfy(
          c -> {
            double place = c.contact().place_m().p50();
            double nearest = clip.athlete().mass().contacts().stream().mapToDouble(t -> Math.abs(t.toeX() - place)).min().orElseThrow();
            assertThat(nearest).isLessThan(c.contact().place_m().halfWidth() + 0.02);
          });
    }
    assertThat(contactAt(heels, 1).contact().place_m().halfWidth()).isGreaterThan(0.3);
  }

  /** What the camera never shows leaves values open or is refused in a sentence; nothing else may come of it. */
  @Test
  void whateverIsNeverSeenIsReadOrRefused() {
    TrueClip clip = TrueClip.of(Sequence.parse("RL x2"), 1, 6.0, 60, Noise.USUAL, false, 5);
    List<List<BodyPoint>> hidden = new ArrayList<>();
    for (Joint j : Joint.values()) {
      BodyPoint left = BodyPoint.of(j, Foot.LEFT);
      BodyPoint right = BodyPoint.of(j, Foot.RIGHT);
      hidden.addAll(List.of(List.of(left), List.of(right), List.of(left, right)));
    }
    hidden.add(List.of(BodyPoint.LEFT_HEEL, BodyPoint.LEFT_TOE));
    hidden.add(List.of(BodyPoint.LEFT_HEEL, BodyPoint.RIGHT_HEEL, BodyPoint.LEFT_TOE, BodyPoint.RIGHT_TOE));
    hidden.add(List.of(BodyPoint.values()));
    for (List<BodyPoint> points : hidden) {
      FoundClip blind = without(clip, points.toArray(BodyPoint[]::new));
      for (Setup setup : List.of(setup(clip), Setup.none())) {
        try {
          ClipReader.read(blind, setup, List.of(), ASKED);
        } catch (RefusedException e) {
          assertThat(e.getMessage()).as("without %s", points).matches("(?s).{20,}\\.");
        }
      }
    }
  }

  @Test
  void aContactOfAFootThatWasNeverSeenIsRefused() {
    TrueClip clip = clip("RL x5", Noise.NONE, 5);
    FoundClip blind = without(clip, BodyPoint.LEFT_HEEL, BodyPoint.LEFT_TOE);
    assertThatThrownBy(() -> ClipReader.read(blind, setup(clip), List.of(new Correction.AddContact(Foot.LEFT, 0.5, 0.62)), null))
        .isInstanceOf(RefusedException.class).hasMessageContaining("Neither heel nor toe of the left foot");
  }

  @Test
  void whatCannotHoldIsRefusedInASentence() {
    TrueClip clip = clip("RL x5", Noise.USUAL, 5);
    FoundClip found = found(clip);
    Setup setup = setup(clip);
    assertThatThrownBy(() -> ClipReader.read(found, setup, List.of(new Correction.DropContact(99)), null))
        .isInstanceOf(RefusedException.class).hasMessageContaining("no contact at 99.000 s");
    assertThatThrownBy(() -> ClipReader.read(found, setup, List.of(new Correction.AddContact(Foot.LEFT, 0.5, 0.4)), null))
        .isInstanceOf(RefusedException.class).hasMessageContaining("cannot end at 0.400 s");
    List<GroundMarks.Mark> turned = new ArrayList<>();
    for (GroundMarks.Mark m : clip.marks()) {
      turned.add(new GroundMarks.Mark(m.picture(), -m.at_m()));
    }
    Collections.reverse(turned);
    assertThatThrownBy(() -> ClipReader.read(found, Setup.ground(turned), List.of(), null))
        .isInstanceOf(RefusedException.class).hasMessageContaining("wrong way round");
    assertThatThrownBy(() -> Setup.ground(clip.marks().subList(0, 1))).isInstanceOf(RefusedException.class).hasMessageContaining("2 marks");
  }

  @Test
  void aFlightLongerThanAnybodyFliesIsCalledAMissedContact() {
    TrueClip clip = clip("RL x5", Noise.USUAL, 5);
    ClipReading whole = ClipReader.read(found(clip), setup(clip), List.of(), null);
    assertThat(whole.remarks()).noneMatch(r -> r.contains("was missed there"));
    double middle = contactAt(whole, 4).contact().middle_s();
    ClipReading without = ClipReader.read(found(clip), setup(clip), List.of(new Correction.DropContact(middle)), null);
    assertThat(without.remarks()).filteredOn(r -> r.contains("was missed there")).hasSize(1);
  }

  @Test
  void aFilmShownEightTimesSlowerReadsTheSame() {
    TrueClip clip = clip("RL x5", Noise.USUAL, 5);
    ClipReading plain = ClipReader.read(found(clip), setup(clip), List.of(), null);
    double[] slow = Arrays.stream(clip.found().times()).map(t -> 8 * t).toArray();
    FoundClip f = found(clip);
    FoundClip slowed = new FoundClip(f.film(), 0, clip.found().atTimes(slow), f.networkFrames(), List.of());
    Setup s = setup(clip);
    ClipReading read = ClipReader.read(slowed, new Setup(s.ground(), s.pole(), List.of(), 8, s.model()), List.of(), null);
    assertThat(feet(read)).isEqualTo(feet(plain));
    assertThat(java.util.Objects.requireNonNull(read.flights().get(1).time_s()).p50())
        .isCloseTo(java.util.Objects.requireNonNull(plain.flights().get(1).time_s()).p50(), org.assertj.core.data.Offset.offset(1e-6));
    ClipReading forgotten = ClipReader.read(slowed, s, List.of(), null);
    assertThat(forgotten.remarks()).as("a film whose slowing was not told").anyMatch(t -> t.contains("m/s2"));
  }

  @Test
  void findsTheSequenceAmongRunUpSteps() {
    double[] t = {0.11, 0.12, 0.30, 0.28, 0.33, Double.NaN};
    List<Foot> feet = Sequence.parse("LRLLLR").contacts();
    SequenceMatch asked = SequenceMatch.of(feet, t, true, Sequence.parse("LLL R"));
    assertThat(asked.first()).isEqualTo(2);
    assertThat(asked.wrongFeet()).isZero();
    SequenceMatch free = SequenceMatch.of(feet, t, true, null);
    assertThat(free.first()).isEqualTo(2);
    SequenceMatch wrong = SequenceMatch.of(feet, t, true, Sequence.parse("LLR R"));
    assertThat(wrong.first()).isEqualTo(2);
    assertThat(wrong.wrongFeet()).isEqualTo(1);
    SequenceMatch missing = SequenceMatch.of(feet.subList(2, 6), new double[] {0.3, 0.3, 0.3, Double.NaN}, false, ASKED);
    assertThat(missing.complete()).isFalse();
  }

  /** Classes at -1.6 and 8.0 degrees (Altman and Davis 2012; memory): a heel that leads is a fault only where the whole foot is taught. */
  @Test
  void strikesAreJudgedByWhatIsTaught() {
    TrueClip clip = clip("RRL RRL", Noise.USUAL, 4);
    ClipReading heel = ClipReader.read(found(clip), setup(clip), List.of(), ASKED);
    ClipReading whole = ClipReader.read(found(clip), setup(clip), List.of(), ASKED, FootContact.WHOLE_FOOT);
    List<PointVerdict> ofHeel = strikes(heel);
    List<PointVerdict> ofWhole = strikes(whole);
    assertThat(ofWhole).hasSameSizeAs(ofHeel).isNotEmpty();
    int first = Objects.requireNonNull(whole.match()).first();
    for (int i = 0; i < ofWhole.size(); i++) {
      ReadContact c = whole.contacts().get(first + ofWhole.get(i).contact() - 1);
      double half = Estimate.Z95 * 4;
      assertThat(ofWhole.get(i).finding() == PointVerdict.Finding.FAULT).as("foot at " + c.strikeDeg()).isEqualTo(c.strikeDeg() > 8 + half || c.strikeDeg() < -1.6 - half);
      assertThat(ofHeel.get(i).finding() == PointVerdict.Finding.FAULT).as("foot at " + c.strikeDeg()).isEqualTo(c.strikeDeg() < -1.6 - half);
      assertThat(ofWhole.get(i).wentWrong()).isEqualTo("not the whole foot");
    }
    assertThat(whole.verdicts()).filteredOn(v -> v.point() != TeachingPoint.HEEL_ROLLS).hasSameSizeAs(
        heel.verdicts().stream().filter(v -> v.point() != TeachingPoint.HEEL_ROLLS).toList());
    assertThat(whole.verdicts()).filteredOn(v -> v.point() == TeachingPoint.FOOT_UNDER).allMatch(v -> v.sentence().contains("is the cue"));
  }

  private static List<PointVerdict> strikes(ClipReading reading) {
    return reading.verdicts().stream().filter(v -> v.point() == TeachingPoint.HEEL_ROLLS).toList();
  }

  @Test
  void verdictsSayPointContactAndValue() {
    TrueClip clip = clip("RRL RRL", Noise.USUAL, 4);
    ClipReading r = ClipReader.read(found(clip), setup(clip), List.of(), ASKED);
    assertThat(r.verdicts()).isNotEmpty().allSatisfy(v -> {
      assertThat(v.contact()).isBetween(1, ASKED.size());
      assertThat(v.sentence()).doesNotContain("NaN");
    });
    assertThat(r.model()).contains("de Leva");
  }
}
