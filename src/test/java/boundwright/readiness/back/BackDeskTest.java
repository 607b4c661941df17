package boundwright.readiness.back;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.athlete.growth.Measurement;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.Answer;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.account.DayLoad;
import boundwright.load.back.BackStep;
import boundwright.load.back.Stages;
import boundwright.load.back.WayBack;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.readiness.LadderDesk;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestProtocol;
import boundwright.readiness.TestScore;
import boundwright.store.Fixtures;
import boundwright.store.Stores;
import boundwright.store.Workbench;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A way back from its beginning, with a real store: what it is begun with, what a stage asks, who is named. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class BackDeskTest {
  private static final LocalDate TODAY = Fixtures.TODAY;
  private static final LocalDate BEGUN = TODAY.minusDays(10);

  @TempDir Path dir;
  private Workbench w;
  private BackDesk desk;
  private Athlete ada;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    ada = w.athletes().add(Fixtures.athlete("Ada"));
    desk = w.backDesk();
  }

  @AfterEach
  void close() {
    w.close();
  }

  private void bounded(LocalDate day, int reps) {
    for (int i = 0; i < reps; i++) {
      w.logbook().log(new Rep(0, ada.id(), day, Sequence.parse("RL x5"), 0, Surface.GRASS, List.of(), 20.0, null, null, List.of()));
    }
  }

  /** Eight weeks of Mondays and Thursdays, four reps of ten contacts each; the last day 30 days before it begins. */
  private void usualWeeks() {
    for (int week = 0; week < 8; week++) {
      LocalDate end = BEGUN.minusDays(30 + 7L * week);
      bounded(end, 4);
      bounded(end.minusDays(3), 4);
    }
  }

  private BackDesk.Beginning asked(String by) {
    return new BackDesk.Beginning(Foot.RIGHT, BEGUN, Stages.USUAL, null, by);
  }

  private WayBack begun() {
    usualWeeks();
    MedicalHold hold = w.care().openHold(ada.id(), new MedicalHold(0, BEGUN.minusDays(29), "Set by the physio", null, null));
    w.care().endHold(ada.id(), hold.id(), "Dr Sedge", BEGUN);
    return desk.begin(ada, asked(""));
  }

  @Test
  void itBeginsWithTheLogsOwnWeekAndTheCliniciansName() {
    WayBack way = begun();
    assertThat(way.clearance()).isEqualTo(new WayBack.Clearance("Dr Sedge", BEGUN, true));
    assertThat(way.daysOff()).isEqualTo(29);
    DayLoad day = w.workLog().since(List.of(ada), BEGUN.minusDays(31)).getOrDefault(ada.id(), List.of()).get(0);
    double each = w.loadDesk().weights(ada, BEGUN).of(day).units(Foot.RIGHT);
    assertThat(way.formerUnits()).as("two days a week of the same").isCloseTo(2 * each, within(1e-9));
    BackLook look = desk.look(ada, way.id(), LengthUnit.METRES);
    assertThat(look.trains()).containsExactlyInAnyOrder(BEGUN.minusDays(30).getDayOfWeek(), BEGUN.minusDays(33).getDayOfWeek());
    assertThat(look.chances().came()).isEqualTo(16);
    assertThat(look.chances().missed()).isZero();
    assertThat(look.dates()).isNotNull().satisfies(d -> assertThat(d.earliest()).isAfterOrEqualTo(BEGUN.plusWeeks(13)));
    assertThat(look).isEqualTo(desk.look(ada, way.id(), LengthUnit.METRES));
  }

  @Test
  void whileAHoldStandsNoneBeginsAndWithoutOneSomebodyIsNamed() {
    usualWeeks();
    assertThatThrownBy(() -> desk.begin(ada, asked(" "))).isInstanceOf(RefusedException.class).hasMessageContaining("Name who says");
    MedicalHold hold = w.care().openHold(ada.id(), new MedicalHold(0, BEGUN.minusDays(29), "Set by the physio", null, null));
    assertThatThrownBy(() -> desk.begin(ada, asked("The coach")))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("Medical hold " + hold.id())
        .hasMessageContaining("Set by the physio")
        .hasMessageContaining("named clinician");
    w.care().endHold(ada.id(), hold.id(), "Dr Sedge", BEGUN);
    assertThat(desk.begin(ada, asked("The coach")).clearance().by()).as("the clinician's name stands, not the coach's").isEqualTo("Dr Sedge");
    Athlete bo = w.athletes().add(Fixtures.athlete("Bo"));
    assertThatThrownBy(() -> desk.begin(bo, asked("The coach"))).isInstanceOf(RefusedException.class).hasMessageContaining("former week is not known");
  }

  @Test
  void whoeverTheLogDoesNotKnowHeardOfTheHoldFirstAndIsOffSinceItBegan() {
    MedicalHold hold = w.care().openHold(ada.id(), new MedicalHold(0, BEGUN.minusDays(37), "Set by the physio", null, null));
    for (Double former : new Double[] {null, 90.0}) {
      assertThatThrownBy(() -> desk.begin(ada, new BackDesk.Beginning(Foot.RIGHT, BEGUN, Stages.USUAL, former, "")))
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining("Medical hold " + hold.id());
    }
    w.care().endHold(ada.id(), hold.id(), "Dr Sedge", BEGUN.minusDays(2));
    WayBack way = desk.begin(ada, new BackDesk.Beginning(Foot.RIGHT, BEGUN, Stages.USUAL, 90.0, ""));
    assertThat(way.daysOff()).as("a test of the days off is none from before them").isEqualTo(37);
    Athlete bo = w.athletes().add(Fixtures.athlete("Bo"));
    assertThat(desk.begin(bo, new BackDesk.Beginning(Foot.RIGHT, BEGUN, Stages.USUAL, 90.0, "Dr Sedge")).daysOff()).as("nothing is known").isZero();
  }

  @Test
  void nobodyIsReadyForMoreStepsWhileALegIsOnItsWayBack() {
    usualWeeks();
    assertThat(w.ladderDesk().answers(ada)).noneMatch(a -> a.why().contains("way back"));
    WayBack way = begun();
    assertThat(w.ladderDesk().answers(ada)).allSatisfy(a -> assertThat(a.why()).contains("Not there: load (a leg on its way back)."));
    assertThat(w.ladderDesk().squad(List.of(ada)).get(0).need()).as("within its stage it may train").isEqualTo(LadderDesk.Need.WAITING);
    desk.end(ada, way.id(), TODAY, "Dr Sedge", "settled");
    assertThat(w.ladderDesk().answers(ada)).noneMatch(a -> a.why().contains("way back"));
  }

  @Test
  void noDatesAreToldWhileAHoldStands() {
    WayBack way = begun();
    assertThat(desk.look(ada, way.id(), LengthUnit.METRES).dates()).isNotNull();
    w.care().openHold(ada.id(), new MedicalHold(0, TODAY, "invented", null, null));
    BackLook held = desk.look(ada, way.id(), LengthUnit.METRES);
    assertThat(held.dates()).as("it begins again, nobody knows when").isNull();
    assertThat(held.path()).as("no loaded days either").isEmpty();
  }

  @Test
  void aStepIsEarnedByTwoCleanDaysAndAWeek() {
    WayBack way = begun();
    assertThatThrownBy(() -> desk.step(ada, way.id(), BackStep.Kind.ON, "Coach Reed", "feels fresh"))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("0 of 2");
    bounded(BEGUN, 1);
    bounded(BEGUN.plusDays(3), 1);
    Pain asked = w.care().addPain(ada.id(), new Pain(0, BEGUN.plusDays(3), "left shin", 2, null, false));
    assertThat(desk.look(ada, way.id(), LengthUnit.METRES).cleanDays()).as("nobody asked next morning").containsExactly(BEGUN);
    w.care().setSettled(ada.id(), asked.id(), true);
    BackLook look = desk.look(ada, way.id(), LengthUnit.METRES);
    assertThat(look.cleanDays()).containsExactly(BEGUN, BEGUN.plusDays(3));
    assertThat(look.mayStep()).isTrue();
    assertThat(desk.step(ada, way.id(), BackStep.Kind.ON, "Coach Reed", "").stage()).isEqualTo(1);
    assertThat(desk.look(ada, way.id(), LengthUnit.METRES).state().stage()).isEqualTo(1);
    assertThatThrownBy(() -> desk.step(ada, way.id(), BackStep.Kind.ON, "Coach Reed", "")).isInstanceOf(RefusedException.class);
    w.care().addPain(ada.id(), new Pain(0, TODAY, "left shin", 6, null, false));
    assertThat(desk.look(ada, way.id(), LengthUnit.METRES).state().stage()).as("one back, by itself").isZero();
    assertThatThrownBy(() -> desk.step(ada, way.id(), BackStep.Kind.BACK, "Coach Reed", "")).isInstanceOf(RefusedException.class).hasMessageContaining("first stage");
    w.care().openHold(ada.id(), new MedicalHold(0, TODAY, "invented", null, null));
    assertThat(desk.look(ada, way.id(), LengthUnit.METRES).todaySaid()).contains("nothing today").contains("named clinician");
  }

  /** As the guard judges it: a pain that it refuses stops bounding for its seven days, a stage that begins tomorrow gives nothing today. */
  @Test
  void whatIsTooMuchGivesTheLegNothingToday() {
    WayBack way = begun();
    assertThat(desk.look(ada, way.id(), LengthUnit.METRES).mostToday()).isPositive();
    Pain sign = w.care().addPain(ada.id(), new Pain(0, TODAY, "left shin", 1, true, true));
    MedicalHold opened = w.care().care(ada.id(), TODAY).standing(TODAY).orElseThrow();
    w.care().endHold(ada.id(), opened.id(), "Dr Sedge", TODAY);
    rests(way, "begins on " + TODAY.plusDays(1));
    assertThat(sign.refer()).isTrue();
    w.care().addPain(ada.id(), new Pain(0, TODAY, "left shin", 7, null, false));
    rests(way, "Pain 7 of 10, left shin, on " + TODAY);
  }

  @Test
  void aPainOfThreeDaysAgoThatIsRefusedStillGivesNothing() {
    WayBack way = begun();
    w.care().addPain(ada.id(), new Pain(0, TODAY.minusDays(3), "left shin", 7, true, false));
    assertThat(w.loadDesk().day(ada).answer()).isEqualTo(Answer.REFUSED);
    rests(way, "refer to licensed medical staff");
  }

  private void rests(WayBack way, String why) {
    BackLook look = desk.look(ada, way.id(), LengthUnit.METRES);
    assertThat(look.mostToday()).isZero();
    assertThat(look.todaySaid()).startsWith("Rest the leg").contains(why).doesNotContain("Up to");
    assertThat(look.mayStep()).isFalse();
  }

  /** A wrong start share is mended by ending it and beginning again on the same day. */
  @Test
  void oneThatIsEndedAndBegunAgainOnTheSameDayGoesByItsOwnFigures() {
    WayBack wrong = begun();
    desk.end(ada, wrong.id(), BEGUN, "Coach Reed", "wrong start");
    WayBack right = desk.begin(ada, new BackDesk.Beginning(Foot.RIGHT, BEGUN, new Stages(0.5, 0.2), 123.0, "Dr Sedge"));
    BackLook look = desk.look(ada, right.id(), LengthUnit.METRES);
    assertThat(look.leg().formerUnits()).isEqualTo(123);
    assertThat(look.leg().stages()).isEqualTo(new Stages(0.5, 0.2));
    bounded(BEGUN, 4);
    bounded(BEGUN.plusDays(3), 4);
    assertThat(desk.step(ada, right.id(), BackStep.Kind.ON, "Coach Reed", "").stage()).isEqualTo(1);
    assertThat(desk.look(ada, right.id(), LengthUnit.METRES).state().stage()).isEqualTo(1);
  }

  /** Weeks of training before a long absence tell of the weekdays, however long ago they were. */
  @Test
  void theHabitIsLookedForWhereItWas() {
    for (int week = 0; week < 8; week++) {
      bounded(BEGUN.minusDays(400 + 7L * week), 4);
    }
    WayBack way = desk.begin(ada, asked("Dr Sedge"));
    BackLook look = desk.look(ada, way.id(), LengthUnit.METRES);
    assertThat(look.trains()).containsExactly(BEGUN.minusDays(400).getDayOfWeek());
    assertThat(look.chances().came()).isEqualTo(8);
    assertThat(look.chances().missed()).isZero();
  }

  /** As the guard grades it: a settled 2 of somebody who grows fast by their heights is felt, and no clean day. */
  @Test
  void painOfSomebodyWhoGrowsFastIsGradedAsTheGuardDoes() {
    WayBack way = begun();
    for (int k = 0; k < 6; k++) {
      w.growth().add(ada, new Measurement(0, TODAY.minusWeeks(40 - 8L * k), 1.50 + 0.02 * k, null, null, "coach"));
    }
    bounded(BEGUN, 1);
    Pain pain = w.care().addPain(ada.id(), new Pain(0, BEGUN, "left shin", 2, true, false));
    assertThat(w.care().care(ada.id(), TODAY).limited()).isTrue();
    assertThat(pain.felt(w.care().guard().limits().pain(), true).grade()).isNotEqualTo(pain.felt(w.care().guard().limits().pain(), false).grade());
    assertThat(desk.look(ada, way.id(), LengthUnit.METRES).cleanDays()).doesNotContain(BEGUN);
  }

  private void five(Foot leg, LocalDate day, double metres) {
    w.tests().add(new TestScore(0, ada.id(), BackAsk.five(leg), 0, metres, null, day, TestProtocol.usual(TestKind.SINGLE_LEG_RIGHT, Surface.GRASS)));
  }

  /** One stage from the end, so that the test is asked; the error is the published 11 % of the squad's mean (7-11 % of a hop, read). */
  @Test
  void theTestIsHeldAgainstTheLegsOwnScoresAndTheirTypicalError() {
    usualWeeks();
    WayBack way = desk.begin(ada, new BackDesk.Beginning(Foot.RIGHT, BEGUN, new Stages(0.8, 0.25), 40.0, "Dr Sedge"));
    bounded(BEGUN, 5);
    bounded(BEGUN.plusDays(4), 5);
    assertThat(test(way).met()).isEqualTo(BackAsk.Met.CANNOT_TELL);
    assertThat(test(way).said()).contains("cannot be told").contains("Test the left leg").contains("licensed medical staff");
    assertThatThrownBy(() -> desk.step(ada, way.id(), BackStep.Kind.ON, "Coach Reed", "")).isInstanceOf(RefusedException.class).hasMessageContaining("write why");
    five(Foot.RIGHT, BEGUN.minusDays(60), 9.8);
    five(Foot.RIGHT, BEGUN.minusDays(50), 10.2);
    assertThat(test(way).met()).isEqualTo(BackAsk.Met.NOT_YET);
    assertThat(test(way).said()).contains("10.00 m").contains("at least 8.88 m"); // 10.0 - 0.11 x 10.2, the latest score's
    five(Foot.RIGHT, TODAY.minusDays(1), 8.5);
    assertThat(test(way).met()).isEqualTo(BackAsk.Met.BELOW);
    assertThatThrownBy(() -> desk.step(ada, way.id(), BackStep.Kind.ON, "Coach Reed", "all the same")).isInstanceOf(RefusedException.class).hasMessageContaining("below");
    five(Foot.RIGHT, TODAY, 9.6);
    assertThat(test(way).met()).isEqualTo(BackAsk.Met.YES);
    assertThat(desk.step(ada, way.id(), BackStep.Kind.ON, "Coach Reed", "").stage()).isEqualTo(1);
    BackLook look = desk.look(ada, way.id(), LengthUnit.METRES);
    assertThat(look.reached()).isTrue();
    assertThat(look.todaySaid()).contains("licensed medical staff agree");
    desk.end(ada, way.id(), TODAY, "Dr Sedge", "the former week");
    assertThat(desk.look(ada, way.id(), LengthUnit.METRES).runs()).isFalse();
  }

  private BackAsk test(WayBack way) {
    return desk.look(ada, way.id(), LengthUnit.METRES).asks().stream().filter(BackAsk::test).findFirst().orElseThrow();
  }

  @Test
  void testsAreAskedBeforeHalfBeforeTheLongerRestAndBeforeTheEnd() {
    Stages s = Stages.USUAL; // .3 .33 .363 .399 .439 .483 .531 .585 .643 .707 .778 .856 .942
    assertThat(IntStream.range(0, s.count()).filter(k -> BackAsk.tests(s, k))).containsExactly(5, 8, 12);
  }
}
