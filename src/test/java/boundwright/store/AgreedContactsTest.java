package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Surface;
import boundwright.clip.FoundClip;
import boundwright.clip.body.DeLeva;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.desk.ClipState;
import boundwright.clip.desk.Lessons;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.learn.Comparison;
import boundwright.clip.learn.Figures;
import boundwright.clip.learn.Label;
import boundwright.clip.learn.LabelBytes;
import boundwright.clip.learn.Taught;
import boundwright.clip.propose.ContactNet;
import boundwright.clip.reading.Correction;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.reading.Setup;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What becomes a label, what takes it away, and which weights read which clip. A real database and real files; only the film is made up. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class AgreedContactsTest {
  private static final TrueClip TRUTH = TrueClip.of(Sequence.parse("RRL"), 0, 6.0, 30, Noise.NONE, false, 3);
  private static final FoundClip FOUND =
      new FoundClip(
          new FilmFacts("h264", 1280, 720, 0, 1, 90000, TRUTH.found().frames(), TRUTH.found().frames() / 30.0, Double.NaN), 0, TRUTH.found(),
          TRUTH.found().frames(), List.of());

  @TempDir Path dir;
  private Workbench w;
  private long ada;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK, (order, progress) -> FOUND);
    ada = w.athletes().add(Fixtures.athlete("Ada")).id();
    desk().start();
  }

  @AfterEach
  void close() {
    w.close();
  }

  private ClipDesk desk() {
    return w.clips();
  }

  private Lessons lessons() {
    return desk().lessons();
  }

  private long read() throws InterruptedException {
    long id = desk().take(ada, null, "a.mp4", new ByteArrayInputStream(new byte[] {1}), Sequence.parse("RRL"), 0, Surface.TRACK, null).id();
    for (int i = 0; i < 6000 && desk().clip(id).state() != ClipState.READ; i++) {
      Thread.sleep(10);
    }
    assertThat(desk().clip(id).state()).isEqualTo(ClipState.READ);
    return id;
  }

  private Path file(long id) {
    return dir.resolve("clips").resolve(Long.toString(id)).resolve("agreed.label");
  }

  /** The first contact's touchdown set two frames later. */
  private double touchdownLater(long id) {
    ReadContact c = desk().reading(id).contacts().get(1);
    Estimate down = Objects.requireNonNull(c.contact().touchdown_s());
    double to = FOUND.track().time(FOUND.track().nearest(down.p50()) + 2);
    desk().correct(id, new Correction.Touchdown(c.contact().middle_s(), to));
    return to;
  }

  @Test
  void onlyWhatACoachAgreedToIsALabelAndAnotherCorrectionTakesItBack() throws Exception {
    long id = read();
    assertThat(lessons().all()).isEmpty();
    double to = touchdownLater(id);
    assertThat(file(id)).as("corrected, but not agreed to").doesNotExist();
    desk().agree(id);
    Label label = Objects.requireNonNull(lessons().all().get(0).label());
    assertThat(label.putRight()).isTrue();
    assertThat(label.stands()).hasSize(desk().reading(id).contacts().size());
    Label.End set = label.stands().get(1).down();
    assertThat(set.time_s()).isEqualTo(to);
    assertThat(set.byHand()).isTrue();
    assertThat(label.stands().get(0).down().byHand()).isFalse();
    assertThat(label.points().track().frames()).as("enough to train again without the film").isEqualTo(FOUND.track().frames());
    assertThat(lessons().putRight(desk().all())).isEqualTo(1);
    desk().undo(id);
    assertThat(desk().agreed(id)).isFalse();
    desk().agree(id);
    assertThat(Objects.requireNonNull(lessons().all().get(0).label()).putRight()).as("only accepted").isFalse();
    assertThat(lessons().putRight(desk().all())).isZero();
    touchdownLater(id);
    assertThat(file(id)).doesNotExist();
  }

  @Test
  void takingBackAnotherSpeedReadingAgainRemovingAndErasingTakeTheLabelAway() throws Exception {
    long id = read();
    desk().setup(id, new Setup(TRUTH.marks(), new Setup.Pole(TRUTH.poleFoot(), TRUTH.poleTop(), TRUTH.pole_m()), List.of(), 1, DeLeva.MALE));
    desk().log(id, List.of());
    assertThat(desk().agreed(id)).as("logging from a session's list is no look at every contact").isFalse();
    desk().agree(id);
    desk().unlog(id);
    assertThat(file(id)).doesNotExist();
    desk().agree(id);
    desk().setup(id, desk().clip(id).setup().slowedBy(2));
    assertThat(file(id)).doesNotExist();
    desk().agree(id);
    assertThat(Objects.requireNonNull(lessons().all().get(0).label()).slowed()).isEqualTo(2);
    desk().retry(id, null, 0);
    assertThat(file(id)).doesNotExist();
    long second = read();
    desk().agree(second);
    desk().remove(second);
    assertThat(file(second)).doesNotExist();
    long third = read();
    desk().agree(third);
    byte[] kept = Files.readAllBytes(file(third));
    List<Map<String, @Nullable Object>> export = Objects.requireNonNull(new AthleteFile(w).of(w.athletes().byId(ada).orElseThrow()).get("agreed_contacts"));
    assertThat(export).hasSize(1);
    String text = String.valueOf(export.get(0).get("file"));
    assertThat(Base64.getDecoder().decode(text)).as("the export has the whole label").isEqualTo(kept);
    assertThat(LabelBytes.read(kept, "a").stands()).isNotEmpty();
    desk().removeAll(ada);
    w.athletes().erase(ada);
    assertThat(file(third)).doesNotExist();
    assertThat(lessons().all()).isEmpty();
  }

  @Test
  void aDamagedLabelIsSaidAndNobodyLearnsFromAthletesWhoMayNotBeFilmed() throws Exception {
    long id = read();
    desk().agree(id);
    assertThatThrownBy(() -> lessons().learn(1, a -> false, (what, share) -> {}))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("0 whose contacts were agreed")
        .hasMessageContaining("Left out: 1 clip of athletes");
    byte[] bytes = Files.readAllBytes(file(id));
    bytes[bytes.length / 2] ^= 1;
    Files.write(file(id), bytes);
    assertThat(lessons().all()).hasSize(1).allSatisfy(l -> {
      assertThat(l.label()).isNull();
      assertThat(l.trouble()).contains("damaged").contains("say once more");
    });
  }

  private void candidate(ContactNet net, int faultsAfter, List<Long> clips) throws IOException {
    Figures before = new Figures(50, 46, 0, 0, 4, 0, 0, Double.NaN);
    Figures after = new Figures(50, 50 - faultsAfter, 0, 0, faultsAfter, 0, 0, Double.NaN);
    Figures madeUp = new Figures(100, 99, 0, 0, 1, 0, 0, Double.NaN);
    Taught t = new Taught(net, Fixtures.TODAY, 1, clips, 1, new Comparison(8, false, before, after, 0, 2, 4, madeUp, madeUp));
    Files.createDirectories(dir.resolve("clips").resolve("learned"));
    Files.write(dir.resolve("clips").resolve("learned").resolve("candidate.weights"), t.bytes());
  }

  /** Knows nothing of any foot, so that a clip read with it shows that it was used. */
  private static ContactNet blind() {
    float[][] zero = ContactNet.shipped().arrays();
    for (float[] a : zero) {
      Arrays.fill(a, 0);
    }
    return ContactNet.shipped().with(zero);
  }

  private List<String> remarks(long id) {
    return desk().reading(id).remarks();
  }

  @Test
  void whatWasLearnedReadsClipsOnlyOnceTakenNeverThoseThatAHandTouchedAndOneCommandGoesBack() throws Exception {
    long untouched = read();
    long touched = read();
    touchdownLater(touched);
    desk().agree(touched);
    int contacts = desk().reading(touched).contacts().size();
    assertThatThrownBy(() -> lessons().take()).isInstanceOf(RefusedException.class).hasMessageContaining("Nothing was learned yet");
    candidate(blind(), 5, List.of(touched));
    assertThatThrownBy(() -> lessons().take())
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("they read worse")
        .hasMessageContaining("4 before, 5 after, in 50 touchdowns");
    candidate(blind(), 2, List.of(touched, 999L));
    assertThatThrownBy(() -> lessons().take()).isInstanceOf(RefusedException.class).hasMessageContaining("learned from 1 clip removed or changed since");
    candidate(blind(), 2, List.of(touched));
    assertThat(desk().reading(untouched).contacts()).as("a candidate reads nothing").hasSize(contacts);
    lessons().take();
    assertThat(desk().reading(untouched).contacts()).isEmpty();
    assertThat(remarks(untouched)).anyMatch(r -> r.startsWith("Feet as taught on this machine on " + Fixtures.TODAY + " (1 clip)"));
    assertThat(desk().reading(touched).contacts()).as("corrections meet the contacts that they were made for").hasSize(contacts);
    assertThat(remarks(touched)).noneMatch(r -> r.contains("taught"));

    // a clip that a hand touched while they were in use keeps them, also when they are forgotten
    desk().correct(untouched, new Correction.AddContact(boundwright.footfall.Foot.RIGHT, FOUND.track().time(10), FOUND.track().time(14)));
    assertThat(lessons().forget()).isTrue();
    assertThat(lessons().inUse()).isEmpty();
    assertThat(desk().reading(untouched).contacts()).hasSize(1);
    desk().undo(untouched);
    assertThat(desk().reading(untouched).contacts()).hasSize(contacts);
    assertThat(lessons().forget()).as("no clip keeps the weights any more, so their file goes").isTrue();
    assertThat(lessons().forget()).isFalse();
  }

  @Test
  void damagedWeightsFallBackLoudly() throws Exception {
    long id = read();
    int contacts = desk().reading(id).contacts().size();
    long other = read();
    desk().agree(other);
    candidate(blind(), 2, List.of(other));
    String sum = lessons().take().sum();
    Path file = dir.resolve("clips").resolve("learned").resolve(sum + ".weights");
    byte[] bytes = Files.readAllBytes(file);
    bytes[bytes.length / 2] ^= 1;
    Files.write(file, bytes);
    w.close();
    w = Stores.open(dir, Fixtures.CLOCK, (order, progress) -> FOUND);
    assertThat(desk().reading(id).contacts()).hasSize(contacts);
    assertThat(remarks(id)).anyMatch(r -> r.contains("cannot be used (its checksum is another): those that came with the program read this clip"));
    assertThatThrownBy(() -> lessons().inUse()).isInstanceOf(RefusedException.class).hasMessageContaining("clip learn --forget");
    Files.delete(file);
    assertThat(remarks(id)).anyMatch(r -> r.contains("are not there any more"));
    lessons().forget();
    assertThat(remarks(id)).noneMatch(r -> r.contains("taught"));
  }
}
