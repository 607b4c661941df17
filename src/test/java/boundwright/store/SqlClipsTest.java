package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Surface;
import boundwright.clip.Box;
import boundwright.clip.FoundClip;
import boundwright.clip.body.DeLeva;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipState;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.reading.Correction;
import boundwright.clip.reading.Setup;
import boundwright.clip.scale.GroundMarks;
import boundwright.clip.scale.PlaneMap;
import boundwright.clip.scan.FoundBytes;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is kept of a clip comes back as it was. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class SqlClipsTest {
  static final List<Correction> EVERY_KIND =
      List.of(
          new Correction.MovePoint(12, BodyPoint.LEFT_HEEL, new Spot(100.25, 1.0 / 3)),
          new Correction.ExchangeLegs(0.1, 0.30000000000000004),
          new Correction.AddContact(Foot.LEFT, 0.5, 0.62),
          new Correction.AddContact(Foot.RIGHT, 0.9, 1.01),
          new Correction.Touchdown(0.55, 0.51),
          new Correction.ToeOff(0.55, 0.61),
          new Correction.DropContact(0.95),
          new Correction.ExchangeLegs(0.1, 0.2));
  static final Setup MARKED =
      new Setup(
          List.of(new GroundMarks.Mark(new Spot(700, 610), 3), new GroundMarks.Mark(new Spot(10.5, 600), 0)),
          new Setup.Pole(new Spot(300, 605), new Spot(301, 400), 2.05),
          List.of(
              new PlaneMap.Known(new Spot(1, 2), new Spot(0, 0)), new PlaneMap.Known(new Spot(3, 4), new Spot(0, 2)),
              new PlaneMap.Known(new Spot(5, 6), new Spot(5, 2)), new PlaneMap.Known(new Spot(7, 8), new Spot(5, -0.1))),
          8, DeLeva.FEMALE);

  @TempDir Path dir;
  private Workbench w;
  private SqlClips clips;
  private long ada;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    clips = new SqlClips(w.database());
    ada = w.athletes().add(Fixtures.athlete("Ada")).id();
  }

  @AfterEach
  void close() {
    w.close();
  }

  private void reopen() {
    w.close();
    w = Stores.open(dir, Fixtures.CLOCK);
    clips = new SqlClips(w.database());
  }

  /** A clip with as little as there can be. */
  static ClipRecord plain(long athlete) {
    return new ClipRecord(
        0, athlete, Fixtures.TODAY, "a.mov", null, 0, Surface.GRASS, null, ClipState.WAITING, 0, null, true, null, 0, Setup.none(), List.of(), 0,
        Fixtures.CLOCK.instant());
  }

  private static ClipRecord numbered(ClipRecord c, long id) {
    return new ClipRecord(
        id, c.athleteId(), c.date(), c.fileName(), c.sequence(), c.approachSteps(), c.surface(), c.markToSand_m(), c.state(), c.perMille(),
        c.trouble(), c.filmKept(), c.box(), c.boxFrame(), c.setup(), c.corrections(), c.repId(), c.added());
  }

  static FoundClip found(String sequence, long seed) {
    TrueClip clip = TrueClip.of(Sequence.parse(sequence), 2, 6.0, 120, Noise.USUAL, false, seed);
    int n = clip.found().frames();
    return new FoundClip(
        new FilmFacts("h264", 1280, 720, 0, 1, 90000, n, n / 120.0, Double.NaN), 3, clip.found(), n, List.of("A second person was seen."));
  }

  @Test
  void everyFieldComesBackAfterTheProgramWasClosed() {
    Rep rep = w.logbook().log(Fixtures.tap(ada, Fixtures.TODAY));
    ClipRecord full =
        new ClipRecord(
            0, ada, Fixtures.TODAY.minusDays(3), "IMG 1 \u00e4 '.MOV", Sequence.parse("RRL x2"), 4, Surface.TRACK, 11.75, ClipState.REFUSED, 431,
            "The film is dark.", false, new Box(1.5, 2, 30, 40.25), 17, MARKED, EVERY_KIND, rep.id(), Fixtures.CLOCK.instant().plusNanos(1));
    ClipRecord kept = clips.add(full);
    ClipRecord bare = clips.add(plain(ada));
    assertThat(kept).isEqualTo(numbered(full, kept.id()));
    reopen();
    assertThat(clips.find(kept.id())).contains(kept);
    assertThat(clips.find(bare.id())).contains(numbered(plain(ada), bare.id()));
    assertThat(clips.all()).containsExactly(bare, kept);
  }

  @Test
  void clipsOfAnAthleteAreTheirsAlone() {
    long bo = w.athletes().add(Fixtures.athlete("Bo")).id();
    ClipRecord first = clips.add(plain(ada));
    clips.add(plain(bo));
    ClipRecord second = clips.add(plain(ada));
    assertThat(clips.of(ada)).containsExactly(second, first);
    assertThat(clips.of(99)).isEmpty();
  }

  @Test
  void marksAndCorrectionsAreReplacedAsAWholeAndReadableAsTheyStand() {
    long id = clips.add(plain(ada)).id();
    clips.corrections(id, EVERY_KIND);
    clips.setup(id, MARKED);
    assertThat(clips.find(id).orElseThrow().corrections()).isEqualTo(EVERY_KIND);
    assertThat(clips.find(id).orElseThrow().setup()).isEqualTo(MARKED);
    List<String> said =
        w.database()
            .read(h -> h.createQuery("SELECT kind || ' ' || coalesce(point, foot, '') FROM clip_correction ORDER BY place").mapTo(String.class).list());
    assertThat(said).startsWith("MOVE_POINT LEFT_HEEL", "EXCHANGE_LEGS ", "ADD_CONTACT L", "ADD_CONTACT R");
    clips.corrections(id, EVERY_KIND.subList(0, 2));
    clips.setup(id, Setup.none());
    assertThat(clips.find(id).orElseThrow().corrections()).isEqualTo(EVERY_KIND.subList(0, 2));
    assertThat(clips.find(id).orElseThrow().setup()).isEqualTo(Setup.none());
  }

  @Test
  void bodyPointsComeBackAndMakeTheClipRead() {
    long id = clips.add(plain(ada)).id();
    assertThat(clips.points(id)).isEmpty();
    FoundClip found = found("RRL", 4);
    clips.found(id, found);
    reopen();
    assertThat(FoundBytes.of(clips.points(id).orElseThrow())).isEqualTo(FoundBytes.of(found));
    assertThat(clips.find(id).orElseThrow().state()).isEqualTo(ClipState.READ);
    FoundClip again = found("RL x2", 5);
    clips.found(id, again);
    assertThat(FoundBytes.of(clips.points(id).orElseThrow())).isEqualTo(FoundBytes.of(again));
  }

  @Test
  void onlyAClipThatIsWantedIsClaimedAndOnlyOneBeingReadMovesOn() {
    long id = clips.add(plain(ada)).id();
    assertThat(clips.progress(id, 10)).as("waiting").isFalse();
    assertThat(clips.claim(id)).isTrue();
    assertThat(clips.progress(id, 250)).isTrue();
    assertThat(clips.find(id).orElseThrow().perMille()).isEqualTo(250);
    assertThat(clips.claim(id)).as("taken up again after the program stopped").isTrue();
    clips.state(id, ClipState.CANCELLED, 0, null);
    assertThat(clips.progress(id, 300)).isFalse();
    assertThat(clips.claim(id)).isFalse();
    clips.found(id, found("RRL", 4));
    assertThat(clips.claim(id)).isFalse();
  }

  @Test
  void aChangeOfAClipThatIsNotThereDoesNothing() {
    clips.found(7, found("RRL", 4));
    clips.setup(7, MARKED);
    clips.corrections(7, EVERY_KIND);
    clips.box(7, new Box(1, 2, 3, 4), 5);
    clips.state(7, ClipState.READ, 0, null);
    clips.logged(7, 0);
    clips.filmGone(7);
    clips.remove(7);
    assertThat(clips.claim(7)).isFalse();
    assertThat(clips.progress(7, 1)).isFalse();
    assertThat(clips.points(7)).isEmpty();
    assertThat(clips.all()).isEmpty();
  }

  @Test
  void aClipOfNobodyIsRefused() {
    assertThatThrownBy(() -> clips.add(plain(99))).isInstanceOf(RefusedException.class).hasMessageContaining("not in the store");
    assertThat(clips.all()).isEmpty();
  }

  @Test
  void aRepThatIsTakenBackElsewhereSetsTheClipFree() {
    Rep rep = w.logbook().log(Fixtures.tap(ada, Fixtures.TODAY));
    long id = clips.add(plain(ada)).id();
    clips.logged(id, rep.id());
    w.logbook().undo(ada, rep.id());
    assertThat(clips.find(id).orElseThrow().repId()).isZero();
  }

  @Test
  void erasingAnAthleteTakesTheirClipsOutOfTheFileItself() throws Exception {
    long bo = w.athletes().add(Fixtures.athlete("Bo")).id();
    ClipRecord his = clips.add(plain(bo));
    ClipRecord hers =
        clips.add(
            new ClipRecord(
                0, ada, Fixtures.TODAY, "invented-film-name.mov", null, 0, Surface.GRASS, null, ClipState.WAITING, 0, null, true, null, 0, MARKED,
                EVERY_KIND, 0, Fixtures.CLOCK.instant()));
    clips.found(hers.id(), found("RRL", 4));
    assertThat(count("clip_points") + count("clip_mark") + count("clip_correction")).isEqualTo(1 + 8 + 8);
    w.athletes().erase(ada);
    assertThat(clips.all()).containsExactly(his);
    assertThat(count("clip_points") + count("clip_mark") + count("clip_correction")).isZero();
    w.close();
    Stores.assertNotInFile(dir, "invented-film-name");
  }

  private int count(String table) {
    return w.database().read(h -> h.createQuery("SELECT count(*) FROM " + table).mapTo(Integer.class).one());
  }

  @Test
  void theNumberOfARemovedClipNeverComesBack() {
    clips.add(plain(ada));
    long last = clips.add(plain(ada)).id();
    clips.remove(last);
    assertThat(clips.add(plain(ada)).id()).isGreaterThan(last);
  }

  @Test
  void filmsAreKeptUntilTheCoachSaysOtherwise() {
    assertThat(clips.keepFilms()).isTrue();
    clips.keepFilms(false);
    reopen();
    assertThat(clips.keepFilms()).isFalse();
    clips.keepFilms(true);
    assertThat(clips.keepFilms()).isTrue();
  }
}
