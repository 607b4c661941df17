package boundwright.clip.learn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.clip.learn.School.Pupil;
import boundwright.clip.propose.ContactNet;
import boundwright.clip.propose.Proposer;
import boundwright.clip.reading.Setup;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A short seeded share of {@code bench/clip learn}: the truth is the simulator's; what is reached is own output. */
class TeachingTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 29);

  private static Figures read(List<Label> labels, ContactNet net) {
    Proposer p = new Proposer(net, "");
    return labels.stream().map(l -> Score.of(l, Setup.none(), p)).reduce(Figures.NONE, Figures::and);
  }

  @Test
  void aFinderThatIsReadBadlyIsReadBetterOnClipsSetAsideAndNothingIsForgotten() throws InterruptedException {
    List<Label> teach = Styles.labels(8, 3000, 30, Styles.BOTH_ON_ONE_LEG);
    List<Label> stop = Styles.labels(2, 4000, 30, Styles.BOTH_ON_ONE_LEG);
    List<Label> aside = Styles.labels(5, 5000, 30, Styles.BOTH_ON_ONE_LEG);
    ContactNet shipped = ContactNet.shipped();
    ContactNet taught = new Trainer(shipped, 40).train(1, teach, stop, s -> {});
    Figures before = read(aside, shipped);
    Figures after = read(aside, taught);
    assertThat(before.faults()).as("read badly before: %s", before).isGreaterThan(before.known() / 4);
    assertThat(after.faults()).as("%s, before %s", after, before).isLessThan(before.faults());
    List<Label> madeUp = MadeUp.checks().stream().map(MadeUp::label).limit(3).toList();
    assertThat(read(madeUp, taught).faults()).isLessThanOrEqualTo(read(madeUp, shipped).faults() + 1);
  }

  @Test
  void theSameClipsAndSeedGiveTheSameWeightsAndAnInterruptGivesNone() throws InterruptedException {
    List<Label> teach = Styles.labels(2, 3000, 30, Styles.BOTH_ON_ONE_LEG);
    List<Label> stop = Styles.labels(1, 4000, 30, Styles.BOTH_ON_ONE_LEG);
    Trainer trainer = new Trainer(ContactNet.shipped(), 4);
    byte[] one = trainer.train(7, teach, stop, s -> {}).bytes();
    byte[] two = trainer.train(7, teach, stop, s -> {}).bytes();
    byte[] other = trainer.train(8, teach, stop, s -> {}).bytes();
    assertThat(Arrays.equals(one, two)).isTrue();
    assertThat(Arrays.equals(one, other)).isFalse();
    Thread.currentThread().interrupt();
    assertThatThrownBy(() -> trainer.train(7, teach, stop, s -> {})).isInstanceOf(InterruptedException.class);
  }

  private static List<Pupil> pupils(int clips, int athletes) {
    Label label = Styles.label(0, 3000, 30, Styles.BOTH_ON_ONE_LEG);
    return IntStream.range(0, clips).mapToObj(i -> new Pupil(100 + i, i % athletes, label, Setup.none())).collect(Collectors.toList());
  }

  @Test
  void whatIsSetAsideHangsOnNumbersOnlyAndWholeAthletesGoTogetherWhereThereAreEnough() {
    List<Pupil> few = pupils(10, 3);
    List<Pupil> turned = new ArrayList<>(few);
    java.util.Collections.reverse(turned);
    assertThat(School.whole(few)).isFalse();
    assertThat(School.groups(few)).hasSize(10).isEqualTo(School.groups(turned));
    List<Pupil> many = pupils(12, 4);
    assertThat(School.whole(many)).isTrue();
    assertThat(School.groups(many)).hasSize(4).allSatisfy(g -> assertThat(g.stream().map(Pupil::athlete).distinct()).hasSize(1));
  }

  @Test
  void tooFewClipsAreRefusedWithTheLeastNumber() {
    assertThatThrownBy(() -> School.learn(pupils(7, 2), 1, (what, share) -> {}))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("7 whose contacts were agreed")
        .hasMessageContaining("At least 8 and 4");
  }

  private static Figures figures(int known, int right, int missed) {
    return new Figures(known, right, known - right - missed, 0, missed, 0, 0, Double.NaN);
  }

  @Test
  void theVerdictIsWorseOnOneMoreFaultAndBetterOnlyWhereTheIntervalSaysSo() {
    Figures good = figures(100, 99, 1);
    List<Comparison.Group> worse = List.of(new Comparison.Group(figures(6, 6, 0), figures(6, 5, 1)), new Comparison.Group(figures(6, 6, 0), figures(6, 6, 0)));
    assertThat(Comparison.of(2, false, worse, good, good, 1).verdict()).isEqualTo(Comparison.Verdict.WORSE);
    List<Comparison.Group> one = new ArrayList<>();
    List<Comparison.Group> all = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      one.add(new Comparison.Group(figures(6, 5, 1), figures(6, i == 0 ? 6 : 5, i == 0 ? 0 : 1)));
      all.add(new Comparison.Group(figures(6, 4, 2), figures(6, 6, 0)));
    }
    Comparison untold = Comparison.of(8, false, one, good, good, 1);
    assertThat(untold.verdict()).isEqualTo(Comparison.Verdict.UNTOLD);
    assertThat(untold.said()).contains("Too few clips to tell");
    Comparison better = Comparison.of(8, false, all, good, good, 1);
    assertThat(better.verdict()).isEqualTo(Comparison.Verdict.BETTER);
    // 2 of 6 in every clip: whatever is drawn, 33.3 in 100 fewer (worked)
    assertThat(better.gain_low()).isEqualTo(better.gain_high()).isBetween(33.3, 33.4);
    assertThat(Comparison.of(8, false, all, good, figures(100, 97, 3), 1).verdict()).isEqualTo(Comparison.Verdict.WORSE);
  }

  @Test
  void taughtWeightsComeBackFromTheirFileAndADamagedOrForeignOneIsKnown() throws IOException {
    Figures f = figures(50, 45, 5);
    Taught taught =
        new Taught(ContactNet.shipped(), DAY, 5, List.of(3L, 8L), 1, new Comparison(2, true, f, f, -1, 0, 1, f, f));
    byte[] file = taught.bytes();
    Taught back = Taught.read(file);
    assertThat(back.bytes()).isEqualTo(file);
    assertThat(back.clips()).containsExactly(3L, 8L);
    for (int at : new int[] {0, 40, file.length / 2, file.length - 1}) {
      byte[] bad = file.clone();
      bad[at] ^= 4;
      assertThatThrownBy(() -> Taught.read(bad)).as("byte %d", at).isInstanceOf(IOException.class);
    }
    assertThatThrownBy(() -> Taught.read(Arrays.copyOf(file, 20))).isInstanceOf(IOException.class);
    byte[] content = Arrays.copyOf(file, file.length - 32);
    content[7] = 9;
    assertThatThrownBy(() -> Taught.read(Sealed.with(content))).isInstanceOf(IOException.class).hasMessageContaining("form 9");
    content[7] = 1;
    content[20] = 'f';
    assertThatThrownBy(() -> Taught.read(Sealed.with(content))).isInstanceOf(IOException.class).hasMessageContaining("other weights");
  }

  @Test
  void aLabelComesBackFromItsFile() {
    Label label = Styles.label(1, 3000, 30, Styles.BOTH_ON_ONE_LEG);
    Label back = LabelBytes.read(LabelBytes.of(label), "a.label");
    assertThat(back.stands()).isEqualTo(label.stands());
    assertThat(back.exchanged()).isEqualTo(label.exchanged());
    assertThat(back.points().track().times()).isEqualTo(label.points().track().times());
    byte[] bad = LabelBytes.of(label);
    bad[60] ^= 1;
    assertThatThrownBy(() -> LabelBytes.read(bad, "a.label")).isInstanceOf(RefusedException.class).hasMessageContaining("a.label are damaged");
  }

  /** Goals by hand of one clip (worked): a foot stands in the samples between its ends, nothing counts outside the stretch. */
  @Test
  void aLessonSaysWhoStandsInEachSample() {
    Label label = Styles.label(1, 3000, 30, Styles.BOTH_ON_ONE_LEG);
    Lesson lesson = new Varied(label).plain();
    double wide = label.period_s() / 40;
    for (int i = 0; i < lesson.samples().size(); i++) {
      double t = lesson.samples().times()[i];
      boolean inside = t >= label.from_s() && t <= label.to_s();
      assertThat(lesson.worth()[i] > 0 && !inside).isFalse();
      for (Label.Stand s : label.stands()) {
        if (!s.bothFeet() && t > s.down().time_s() + wide && t < s.up().time_s() - wide) {
          assertThat(lesson.goal()[s.foot() == boundwright.footfall.Foot.LEFT ? 0 : 1][i]).isEqualTo(1);
          assertThat(lesson.renamed().goal()[s.foot() == boundwright.footfall.Foot.LEFT ? 1 : 0][i]).isEqualTo(1);
        }
      }
    }
  }
}
