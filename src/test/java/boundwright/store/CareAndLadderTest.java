package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.athlete.person.Person;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.load.Answer;
import boundwright.load.Band;
import boundwright.load.Finding;
import boundwright.load.GuardLimits;
import boundwright.load.GuardOverride;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.LegCare;
import boundwright.load.Season;
import boundwright.load.account.ContactTimes;
import boundwright.load.account.LoadScale;
import boundwright.load.rating.SessionRating;
import boundwright.quantity.RefusedException;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateAnswer.Decision;
import boundwright.readiness.GateRules;
import boundwright.readiness.RungDecision;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.JdbiException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Care of the legs and the ladder come back after the folder was closed, and what is kept for good cannot be taken out. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class CareAndLadderTest {
  private static final LocalDate TODAY = Fixtures.TODAY;

  @TempDir Path dir;
  private Workbench w;
  private long ada;
  private long bo;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    ada = w.athletes().byName("Ada").orElseGet(() -> w.athletes().add(Fixtures.athlete("Ada"))).id();
    bo = w.athletes().byName("Bo").orElseGet(() -> w.athletes().add(Fixtures.athlete("Bo"))).id();
  }

  @AfterEach
  void close() {
    w.close();
  }

  private void again() {
    w.close();
    open();
  }

  private static Pain pain(LocalDate date, int level, boolean refer) {
    return new Pain(0, date, "left shin", level, null, refer);
  }

  @Test
  void nothingIsKnownAtFirst() {
    assertThat(w.care().care(ada, TODAY)).isEqualTo(LegCare.NONE);
    assertThat(w.care().guard()).isEqualTo(GuardSettings.DEFAULT);
    assertThat(w.ladder().rules()).isEqualTo(GateRules.DEFAULT);
    assertThat(w.ladder().rungs(ada)).isEmpty();
    assertThat(w.care().overrides(ada, 10)).isEmpty();
    assertThat(w.care().ratings(ada, LocalDate.MIN)).isEmpty();
  }

  @Test
  void growingAndPainsOfTheLastSixtyDaysComeBack() {
    w.care().setGrowing(ada, true, null);
    w.care().setGrowing(ada, true, TODAY.minusDays(80));
    w.care().addPain(ada, pain(TODAY.minusDays(61), 3, false));
    Pain old = w.care().addPain(ada, pain(TODAY.minusDays(60), 4, false));
    Pain now = w.care().addPain(ada, new Pain(0, TODAY, "right heel", 2, true, false));
    w.care().addPain(bo, pain(TODAY, 7, false));
    w.care().setSettled(ada, old.id(), false);
    again();
    LegCare care = w.care().care(ada, TODAY);
    assertThat(care.growing()).isTrue();
    assertThat(care.firstSession()).isEqualTo(TODAY.minusDays(80));
    assertThat(care.pains()).containsExactly(new Pain(old.id(), TODAY.minusDays(60), "left shin", 4, false, false), now);
    assertThat(care.holds()).isEmpty();
    assertThat(w.care().care(ada, TODAY.minusDays(1)).pains()).doesNotContain(now);
    assertThatThrownBy(() -> w.care().setSettled(bo, old.id(), true)).isInstanceOf(RefusedException.class).hasMessageContaining("not in this athlete's");
  }

  @Test
  void underSixteenByTheBirthDateIsGrowingUntilTheCoachJudgesOtherwise() {
    w.people().keep(ada, new Person(TODAY.minusYears(16).plusDays(1), null));
    w.people().keep(bo, new Person(TODAY.minusYears(16), null));
    again();
    assertThat(w.care().care(ada, TODAY).growing()).as("sixteen tomorrow").isTrue();
    assertThat(w.care().care(ada, TODAY.plusDays(1)).growing()).isFalse();
    assertThat(w.care().cares(List.of(ada, bo), TODAY).get(bo)).satisfies(c -> assertThat(c == null || c.growing()).as("sixteen today").isFalse());
    w.care().setGrowing(ada, false, null);
    w.care().setGrowing(bo, true, null);
    assertThat(w.care().care(ada, TODAY).growing()).as("as the coach judges").isFalse();
    assertThat(w.care().care(bo, TODAY).growing()).isTrue();
  }

  @Test
  void aBirthDateAloneLowersTheLimitsOfAChild() {
    Athlete athlete = w.athletes().byId(ada).orElseThrow();
    assertThat(w.loadDesk().day(athlete).soFar().findings()).noneMatch(f -> f.rule() == Finding.Rule.GROWING_CONTACTS);
    w.logbook().log(new Rep(0, ada, TODAY, Sequence.parse("RL x5"), 0, Surface.GRASS, List.of(), 20.0, null, null, List.of()));
    w.people().keep(ada, new Person(TODAY.minusYears(11), null));
    assertThat(w.loadDesk().day(athlete).soFar().findings())
        .filteredOn(f -> f.rule() == Finding.Rule.GROWING_CONTACTS)
        .singleElement()
        .satisfies(f -> assertThat(f.said()).contains("caution above 50, refused above 60"));
  }

  @Test
  void whoIsReadyReadsTheBodyOnce() {
    Athlete athlete = w.athletes().byId(ada).orElseThrow();
    assertThat(Stores.asked(w, () -> w.ladderDesk().answers(athlete))).filteredOn(sql -> sql.contains("FROM medical_hold")).hasSize(1);
    w.care().setGrowing(ada, true, null);
    assertThat(Stores.asked(w, () -> w.ladderDesk().squad(w.athletes().all()))).filteredOn(sql -> sql.contains("FROM medical_hold")).hasSize(1);
  }

  @Test
  void aSignToReferOpensAHoldAndOneThatLastsIsEnough() {
    Athlete athlete = w.athletes().byId(ada).orElseThrow();
    w.care().addPain(ada, pain(TODAY.minusDays(3), 2, true));
    w.care().addPain(ada, pain(TODAY.minusDays(1), 2, true));
    again();
    List<MedicalHold> holds = w.care().care(ada, TODAY).holds();
    assertThat(holds).singleElement().satisfies(h -> assertThat(h.from()).isEqualTo(TODAY.minusDays(3)));
    assertThat(w.loadDesk().day(athlete).soFar().held()).isTrue();
    w.care().endHold(ada, holds.get(0).id(), " Dr  Sedge ", TODAY);
    assertThat(w.care().care(ada, TODAY).holds()).containsExactly(new MedicalHold(holds.get(0).id(), TODAY.minusDays(3), holds.get(0).note(), "Dr Sedge", TODAY));
    assertThat(w.loadDesk().day(athlete).soFar().held()).isFalse();
    w.care().addPain(ada, pain(TODAY, 1, true));
    assertThat(w.care().care(ada, TODAY).holds()).hasSize(2);
    assertThat(w.loadDesk().day(athlete).soFar().held()).isTrue();
  }

  @Test
  void painAndHoldGoInTogetherOrNotAtAll() {
    Stores.refuseRows(w, "medical_hold");
    assertThatThrownBy(() -> w.care().addPain(ada, pain(TODAY, 6, true))).isInstanceOf(RefusedException.class);
    assertThat(w.care().care(ada, TODAY)).isEqualTo(LegCare.NONE);
  }

  @Test
  void onlyANamedClinicianAndADateEndAHoldAndOnlyOnce() {
    MedicalHold hold = w.care().openHold(ada, new MedicalHold(0, TODAY.minusDays(2), "Set by the physio", null, null));
    assertThatThrownBy(() -> w.care().endHold(ada, hold.id(), "  ", TODAY)).isInstanceOf(RefusedException.class).hasMessageContaining("clinician's name");
    assertThatThrownBy(() -> w.care().endHold(ada, hold.id(), "Dr Sedge", TODAY.minusDays(3))).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> w.care().endHold(bo, hold.id(), "Dr Sedge", TODAY)).isInstanceOf(RefusedException.class);
    assertThat(w.care().care(ada, TODAY).holds()).containsExactly(hold);
    w.care().endHold(ada, hold.id(), "Dr Sedge", TODAY);
    assertThatThrownBy(() -> w.care().endHold(ada, hold.id(), "The coach", TODAY)).isInstanceOf(RefusedException.class).hasMessageContaining("Dr Sedge");
    assertThatThrownBy(() -> w.care().openHold(ada, new MedicalHold(0, TODAY, "", "Dr Sedge", TODAY))).isInstanceOf(RefusedException.class);
  }

  @Test
  void theDatabaseItselfLetsNothingUnsay() {
    MedicalHold hold = w.care().openHold(ada, new MedicalHold(0, TODAY, "Set by the physio", null, null));
    w.care().keep(override("Two jumps left, feels fresh", TODAY));
    w.ladder().keep(decision(DrillFamily.ALTERNATE, 4, 6, Decision.ADD_TWO_STEPS, ""));
    for (String sql :
        List.of(
            "DELETE FROM medical_hold",
            "UPDATE medical_hold SET note = 'x'",
            "UPDATE medical_hold SET from_date = '2030-01-01', cleared_by = 'x', cleared_on = '2030-01-01'",
            "UPDATE medical_hold SET cleared_by = ' ', cleared_on = '2030-01-01'",
            "UPDATE medical_hold SET cleared_by = 'x'",
            "DELETE FROM guard_override",
            "UPDATE guard_override SET reason = 'x'",
            "DELETE FROM rung_decision",
            "UPDATE rung_decision SET reason = 'x'")) {
      assertThatThrownBy(() -> w.database().write(h -> h.execute(sql)))
          .as(sql)
          .isInstanceOf(RefusedException.class)
          .hasCauseInstanceOf(JdbiException.class);
    }
    w.care().endHold(ada, hold.id(), "Dr Sedge", TODAY);
    assertThatThrownBy(() -> w.database().write(h -> h.execute("UPDATE medical_hold SET cleared_by = 'me'"))).isInstanceOf(RefusedException.class);
    assertThat(w.care().care(ada, TODAY).holds()).extracting(MedicalHold::clearedBy).containsExactly("Dr Sedge");
  }

  private GuardOverride override(String reason, LocalDate date) {
    return new GuardOverride(0, ada, date, Finding.Rule.RAMP, Answer.CAUTION, "Rise of 12 per cent.", reason);
  }

  @Test
  void overridesComeBackNewestFirst() {
    for (int i = 0; i < 4; i++) {
      w.care().keep(override("Reason number " + i, TODAY.minusDays(i % 2)));
    }
    again();
    assertThat(w.care().overrides(ada, 3)).extracting(GuardOverride::reason).containsExactly("Reason number 2", "Reason number 0", "Reason number 3");
    assertThat(w.care().overrides(bo, 3)).isEmpty();
    GuardOverride first = w.care().overrides(ada, 1).get(0);
    assertThat(first).isEqualTo(new GuardOverride(first.id(), ada, TODAY, Finding.Rule.RAMP, Answer.CAUTION, "Rise of 12 per cent.", "Reason number 2"));
  }

  @Test
  void aRatingOfTheSameDayReplacesTheOneBefore() {
    w.care().keep(new SessionRating(ada, TODAY.minusDays(2), 7, 60));
    w.care().keep(new SessionRating(ada, TODAY, 3, 40));
    w.care().keep(new SessionRating(ada, TODAY, 4.5, 45));
    again();
    assertThat(w.care().ratings(ada, TODAY.minusDays(1))).containsExactly(new SessionRating(ada, TODAY, 4.5, 45));
    assertThat(w.care().ratings(ada, TODAY.minusDays(2))).hasSize(2).first().isEqualTo(new SessionRating(ada, TODAY.minusDays(2), 7, 60));
  }

  @Test
  void everyLimitOfTheGuardComesBackWithItsUnit() {
    Map<Season, Map<Level, Band>> sessions = new EnumMap<>(Season.class);
    int n = 11;
    for (Season s : Season.values()) {
      Map<Level, Band> row = new EnumMap<>(Level.class);
      for (Level l : Level.KNOWN) {
        row.put(l, new Band(n++, n++ + 0.5));
      }
      sessions.put(s, row);
    }
    GuardSettings settings =
        new GuardSettings(
            new GuardLimits(sessions, new Band(31, 32), 33, 34, 45, 46, new Band(35, 36), 37, 38, new Band(39, 40), 41, 42, 43, 44, new Band(1, 3)),
            new LoadScale(6.5, new ContactTimes(0.25, 0.18), 2, 25));
    w.care().keep(settings);
    again();
    assertThat(w.care().guard()).isEqualTo(settings);
    assertThat(Stores.setting(w, "guard.spacing.refuse")).isEqualTo("36.0 h");
    assertThat(w.settings().settings().setContacts()).as("other settings are left alone").isEqualTo(10);
  }

  @Test
  void whatTheGateAsksComesBack() {
    GateRules rules = 
        new GateRules(
            new GateRules.Clean(28, 15, 7, 0.72, 0.04, 0.7, 0.85, 3, 5, 0.8),
            new GateRules.Stay(10, 24, 12),
            new GateRules.Loss(5, 9, 0.08, 0.6),
            new GateRules.Speed(0.06, 0.04),
            new GateRules.Fading(0.04, 0.96, 0.65));
    w.ladder().keep(rules);
    again();
    assertThat(w.ladder().rules()).isEqualTo(rules);
  }

  @Test
  void rulesKeptByAnOlderProgramAreStillReadAndStricterOnesStay() {
    oldRule("gate.days", "21");
    oldRule("gate.reps", "15");
    oldRule("gate.share_above", "0.85");
    oldRule("gate.share_chance", "0.9");
    oldRule("gate.longer_chance", "0.99");
    oldRule("gate.go_back_reps", "10");
    GateRules rules = w.ladder().rules();
    assertThat(rules.clean().reps()).isEqualTo(15);
    assertThat(rules.clean().shareAbove()).isEqualTo(0.85);
    assertThat(rules.clean().shareChance()).isEqualTo(0.9);
    assertThat(rules.loss().reps()).isEqualTo(10);
    assertThat(rules.speed().error()).as("surer than the default").isEqualTo(0.01, within(1e-12));
    assertThat(rules.days()).as("the old default, written with anything that was kept").isEqualTo(GateRules.DEFAULT.days());
    oldRule("gate.longer_chance", "0.9");
    assertThat(w.ladder().rules().speed().error()).as("less sure than the default").isEqualTo(GateRules.DEFAULT.speed().error());
  }

  private void oldRule(String key, String number) {
    w.database().write(h -> h.createUpdate("INSERT INTO setting (key, number, unit) VALUES (:k, :n, '1') ON CONFLICT (key) DO UPDATE SET number = excluded.number").bind("k", key).bind("n", Double.parseDouble(number)).execute());
  }

  private RungDecision decision(DrillFamily family, int from, int to, Decision gate, String reason) {
    return new RungDecision(0, ada, family, TODAY, from, to, gate, reason);
  }

  @Test
  void aDecisionMovesItsFamilyOnlyAndIsKept() {
    w.ladder().keep(decision(DrillFamily.ALTERNATE, 4, 6, Decision.ADD_TWO_STEPS, ""));
    w.ladder().keep(decision(DrillFamily.ALTERNATE, 6, 4, Decision.STAY, "Looks tired in the hips"));
    w.ladder().keep(decision(DrillFamily.COMBINATION, 4, 2, Decision.GO_BACK, ""));
    again();
    assertThat(w.ladder().rungs(ada)).containsExactlyInAnyOrderEntriesOf(Map.of(DrillFamily.ALTERNATE, 4, DrillFamily.COMBINATION, 2));
    assertThat(w.ladder().rungs(bo)).isEmpty();
    assertThat(w.ladder().decisions(ada, 2)).extracting(RungDecision::reason).containsExactly("", "Looks tired in the hips");
    assertThat(w.ladder().decisions(ada, 9)).hasSize(3).last().satisfies(d -> assertThat(d.gate()).isEqualTo(Decision.ADD_TWO_STEPS));
    Athlete athlete = w.athletes().byId(ada).orElseThrow();
    assertThat(w.ladderDesk().rung(athlete, DrillFamily.SINGLE_LEG)).isEqualTo(athlete.rung());
    assertThat(w.ladderDesk().rung(athlete, DrillFamily.COMBINATION)).isEqualTo(2);
  }
}
