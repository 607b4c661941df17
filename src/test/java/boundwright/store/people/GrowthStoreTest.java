package boundwright.store.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.approach.ApproachAnswer;
import boundwright.athlete.Athlete;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Surface;
import boundwright.athlete.growth.GrowthAnswer;
import boundwright.athlete.growth.GrowthSettings;
import boundwright.athlete.growth.Measurement;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.Sex;
import boundwright.flight.FlightModel;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.load.Answer;
import boundwright.load.Finding;
import boundwright.load.Finding.Rule;
import boundwright.quantity.RefusedException;
import boundwright.store.AthleteFile;
import boundwright.store.Fixtures;
import boundwright.store.Stores;
import boundwright.store.Workbench;
import boundwright.store.view.Seen;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Heights in the database, who sees them, and what the limits of a day make of them. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class GrowthStoreTest {
  private static final LocalDate TODAY = Fixtures.TODAY;
  private static final Person GIRL = new Person(TODAY.minusYears(12), Sex.FEMALE);

  @TempDir Path dir;
  private Workbench w;
  private Athlete ada;
  private Athlete bo;

  @BeforeEach
  void open() {
    w = Workbench.open(dir, Fixtures.CLOCK);
    ada = w.athletes().add(Fixtures.athlete("Ada Longshore"));
    bo = w.athletes().add(Fixtures.athlete("Bo Farfield"));
  }

  @AfterEach
  void close() {
    w.close();
  }

  private static Measurement height(LocalDate day, double metres) {
    return new Measurement(0, day, metres, null, null, "coach");
  }

  /** A year of heights, the last of them {@code ago} weeks ago. */
  private void grows(Athlete who, double cmAYear, int ago) {
    for (int k = 6; k >= 0; k--) {
      w.growth().add(who, height(TODAY.minusWeeks(ago + 8L * k), Math.round(1500 + 10 * cmAYear * 8 * (6 - k) / 52.18) / 1000.0));
    }
  }

  private void bounds(Athlete who, int contacts) {
    for (int k = 0; k < contacts / 10; k++) {
      w.logbook().log(new Rep(0, who.id(), TODAY, Sequence.parse("RL x5"), 0, Surface.GRASS, List.of(), 25.0, null, null, List.of()));
    }
  }

  private Optional<Finding> finding(Workbench bench, Athlete who, Rule rule) {
    return bench.loadDesk().days(List.of(ada, bo)).getOrDefault(who.id(), bench.loadDesk().day(who)).soFar().findings().stream().filter(f -> f.rule() == rule).findFirst();
  }

  @Test
  void whatWasMeasuredComesBackAndAWrongEntryIsTakenOut() {
    Measurement first = w.growth().add(ada, new Measurement(0, TODAY.minusDays(60), 1.523, 0.79, 41.5, "physiotherapist"));
    Measurement second = w.growth().add(ada, height(TODAY, 1.534));
    assertThat(w.growth().answer(ada.id()).measured()).containsExactly(first, second);
    assertThat(w.growth().answer(bo.id()).measured()).isEmpty();
    assertThatThrownBy(() -> w.growth().remove(bo, first.id())).isInstanceOf(RefusedException.class).hasMessageContaining("not in the list of Bo");
    w.growth().remove(ada, second.id());
    assertThat(w.growth().answer(ada.id()).measured()).containsExactly(first);
  }

  @Test
  void slipsAreRefusedAndNothingIsLost() {
    w.people().keep(ada.id(), GIRL);
    w.growth().add(ada, height(TODAY.minusDays(60), 1.52));
    for (Measurement wrong :
        List.of(
            height(TODAY.plusDays(1), 1.53), height(TODAY, 1.25), height(TODAY, 1.80), height(TODAY.minusDays(60), 1.48), height(TODAY.minusDays(120), 1.56),
            height(GIRL.born() == null ? TODAY : GIRL.born().minusDays(1), 0.9))) {
      assertThatThrownBy(() -> w.growth().add(ada, wrong)).as(wrong.toString()).isInstanceOf(RefusedException.class);
    }
    assertThat(w.growth().answer(ada.id()).measured()).hasSize(1);
    w.growth().add(ada, height(TODAY, 1.492)); // 2.8 cm shorter: a bad day of measuring is believed
    assertThat(w.growth().answer(ada.id()).measured()).hasSize(2);
  }

  @Test
  void settingsAreKeptAndChangeWhatIsSaid() {
    grows(ada, 6, 0);
    assertThat(w.growth().settings()).isEqualTo(GrowthSettings.DEFAULT);
    assertThat(w.growth().answer(ada.id()).fast()).isNull();
    w.growth().keep(new GrowthSettings(5, 2, 10));
    assertThat(w.growth().settings()).isEqualTo(new GrowthSettings(5, 2, 10));
    assertThat(w.growth().answer(ada.id()).fast()).isNotNull();
  }

  @Test
  void whileGrowingFastTheLimitsAreThoseWithWhichAGrowingAthleteStarts() {
    bounds(ada, 70);
    bounds(bo, 70);
    assertThat(finding(w, ada, Rule.GROWING_CONTACTS)).isEmpty();
    grows(ada, 9, 0);
    Finding fast = finding(w, ada, Rule.GROWING_CONTACTS).orElseThrow();
    assertThat(fast.answer()).as("60 contacts: Johnson et al. 2011, as in the limits").isEqualTo(Answer.REFUSED);
    assertThat(fast.limit()).isEqualTo(60);
    assertThat(fast.said()).contains("while growing fast, about 8.", "by the height of 2026-05-12", "above the 7.0 of the settings");
    assertThat(finding(w, bo, Rule.GROWING_CONTACTS)).as("nobody else's").isEmpty();
    GrowthAnswer known = w.growth().answer(ada.id());
    w.growth().remove(ada, Objects.requireNonNull(known.last()).id());
    known.measured().stream().limit(6).forEach(m -> w.growth().remove(ada, m.id()));
    assertThat(finding(w, ada, Rule.GROWING_CONTACTS)).as("a kept answer is worked out again when heights go").isEmpty();
  }

  @Test
  void ofSomebodyWhoIsGrownUpNothingIsConcluded() {
    bounds(ada, 70);
    grows(ada, 9, 0);
    assertThat(finding(w, ada, Rule.GROWING_CONTACTS)).isPresent();
    w.people().keep(ada.id(), new Person(TODAY.minusYears(20), Sex.FEMALE));
    assertThat(finding(w, ada, Rule.GROWING_CONTACTS)).as("a birth date changes kept answers").isEmpty();
  }

  @Test
  void whoeverMayNotKnowOfBodiesHearsTheAnswerAndNotTheReason() {
    bounds(ada, 70);
    w.people().keep(ada.id(), GIRL);
    grows(ada, 9, 0);
    Workbench reader = w.seen(Seen.WITHOUT_BODIES);
    assertThat(reader.growth().answer(ada.id()).measured()).isEmpty();
    assertThat(reader.growth().answer(ada.id()).measureOn()).as("nobody's age shows").isNull();
    assertThat(reader.growth().fast(List.of(ada.id()), TODAY)).isEmpty();
    assertThat(finding(reader, ada, Rule.GROWING_CONTACTS)).isEmpty();
    Finding withheld = finding(reader, ada, Rule.WITHHELD).orElseThrow();
    assertThat(withheld.answer()).isEqualTo(Answer.REFUSED);
    assertThat(withheld.said()).doesNotContain("grow");
    assertThatThrownBy(() -> reader.growth().add(ada, height(TODAY, 1.6))).isInstanceOf(RefusedException.class);
    Workbench own = w.seen(Seen.only(ada.id()));
    assertThat(own.growth().answer(ada.id()).measured()).hasSize(7);
    assertThat(w.seen(Seen.only(bo.id())).growth().answer(ada.id()).measured()).isEmpty();
  }

  @Test
  void flightsWanderMoreWhileSomebodyGrowsFastWhateverTheOrderInWhichItBecameKnown() {
    bounds(ada, 20);
    bounds(bo, 20);
    LocalDate later = TODAY.plusDays(20);
    Sequence drill = Sequence.parse("RL x5");
    double before = w.logbook().model(ada).forecast(drill, 0, Surface.GRASS, later).landing().halfWidth();
    grows(ada, 9, 0);
    FlightModel after = w.logbook().model(ada);
    assertThat(after.forecast(drill, 0, Surface.GRASS, later).landing().halfWidth()).as("learned again when the heights came").isGreaterThan(1.005 * before);
    assertThat(FlightModel.fromBytes(after.toBytes())).as("kept with the model").contains(after);
    grows(bo, 5, 0);
    assertThat(w.logbook().model(bo).forecast(drill, 0, Surface.GRASS, later).landing().halfWidth()).isEqualTo(before);
    w.growth().keep(new GrowthSettings(4, 2, 12));
    assertThat(w.logbook().model(bo)).as("the setting says what is fast").isNotEqualTo(w.logbook().before(bo));
    assertThat(w.logbook().model(bo).forecast(drill, 0, Surface.GRASS, later).landing().halfWidth()).isGreaterThan(1.005 * before);
    w.growth().keep(GrowthSettings.DEFAULT);
    assertThat(w.logbook().model(bo).forecast(drill, 0, Surface.GRASS, later).landing().halfWidth()).isEqualTo(before);
  }

  @Test
  void theRunUpPageSaysThatStepsAreLonger() {
    w.athletes().addRunUp(ada.id(), new MeasuredRunUp(0, 12, 20.0, null, TODAY.minusWeeks(40)));
    ApproachAnswer before = w.approachDesk().answer(ada, 12, null, 0.1);
    grows(ada, 8, 0);
    ApproachAnswer after = w.approachDesk().answer(ada, 12, null, 0.1);
    assertThat(after.plan().startMark_m().p50() / before.plan().startMark_m().p50()).as("8 cm a year for 40 weeks are 4 % of 1.5 m").isBetween(1.01, 1.06);
    assertThat(after.plan().startMark_m().halfWidth()).isGreaterThan(before.plan().startMark_m().halfWidth());
    assertThat(after.from()).contains("since the last measured run-up, of " + TODAY.minusWeeks(40), "less surely. Measure a run-up.");
    assertThat(w.seen(Seen.WITHOUT_BODIES).approachDesk().answer(ada, 12, null, 0.1).plan()).as("the same marks").isEqualTo(after.plan());
    assertThat(w.seen(Seen.WITHOUT_BODIES).approachDesk().answer(ada, 12, null, 0.1).from()).doesNotContain("Grown");
  }

  @Test
  void onlyThePeopleWhoAreAskedForAreRead() {
    w.people().keep(ada.id(), GIRL);
    w.people().keep(bo.id(), GIRL);
    grows(ada, 9, 13);
    grows(bo, 9, 13);
    List<Long> one = List.of(ada.id());
    for (List<String> asked : List.of(Stores.asked(w, () -> w.growth().fast(one, TODAY)), Stores.asked(w, () -> w.growth().due(one)))) {
      assertThat(asked).as("heights, settings, people").hasSize(3);
      assertThat(asked).filteredOn(sql -> sql.contains("FROM person")).singleElement().satisfies(sql -> assertThat(sql).contains("WHERE athlete_id IN"));
    }
    assertThat(w.growth().fast(one, TODAY)).containsOnlyKeys(ada.id());
    assertThat(w.growth().due(List.of(ada.id(), bo.id()))).containsExactlyInAnyOrder(ada.id(), bo.id());
    w.people().keep(bo.id(), new Person(TODAY.minusYears(20), Sex.FEMALE));
    assertThat(w.growth().fast(List.of(ada.id(), bo.id()), TODAY)).as("an age counts for its own athlete").containsOnlyKeys(ada.id());
    assertThat(w.seen(Seen.only(ada.id())).growth().fast(List.of(ada.id(), bo.id()), TODAY)).containsOnlyKeys(ada.id());
    assertThat(w.growth().fast(List.of(), TODAY)).isEmpty();
  }

  @Test
  void itGoesWithTheAthlete() {
    grows(ada, 6, 0);
    grows(bo, 6, 0);
    assertThat(new AthleteFile(w).of(ada).getOrDefault("body_measurement", Collections.emptyList())).hasSize(7);
    w.erase(ada.id());
    assertThat(w.growth().answer(ada.id()).measured()).isEmpty();
    assertThat(w.growth().answer(bo.id()).measured()).hasSize(7);
  }
}
