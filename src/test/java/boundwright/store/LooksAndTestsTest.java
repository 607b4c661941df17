package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.groups.Tuple.tuple;

import boundwright.athlete.Athlete;
import boundwright.athlete.KnownMark;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Surface;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.load.Answer;
import boundwright.load.Finding;
import boundwright.load.GuardOverride;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.Season;
import boundwright.load.SeasonStart;
import boundwright.load.account.LastWeek;
import boundwright.load.account.OtherWork;
import boundwright.load.rating.SessionRating;
import boundwright.quantity.RefusedException;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateAnswer.Decision;
import boundwright.readiness.RungDecision;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestProtocol;
import boundwright.readiness.TestScore;
import boundwright.runway.CoachSettings;
import boundwright.technique.Fault;
import boundwright.technique.FaultTick;
import boundwright.technique.LookRepository.SecondLook;
import boundwright.technique.Teaching;
import boundwright.track.Group;
import boundwright.track.Tap;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Faults, second looks and test scores come back, and everything of a person goes with the person. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class LooksAndTestsTest {
  @TempDir Path dir;
  private Workbench w;
  private Athlete ada = Fixtures.athlete("Ada");

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    ada = w.athletes().byName("Ada").orElseGet(() -> w.athletes().add(Fixtures.athlete("Ada")));
  }

  @AfterEach
  void close() {
    w.close();
  }

  private void again() {
    w.close();
    open();
  }

  private Rep judged(List<String> faults) {
    Rep tap = Fixtures.tap(ada.id(), Fixtures.TODAY);
    return new Rep(0, ada.id(), tap.date(), Sequence.parse("RRL x2"), 4, Surface.TRACK, List.of(), null, tap.outcome(), null, true, faults);
  }

  @Test
  void whatIsTaughtIsKeptAndTheHeelLeadsUntilThen() {
    assertThat(w.looks().teaching()).isEqualTo(Teaching.DEFAULT);
    w.looks().keep(new Teaching(8));
    assertThat(w.looks().teaching()).isEqualTo(new Teaching(8));
    w.looks().keep(Teaching.DEFAULT);
    assertThat(w.looks().teaching()).isEqualTo(Teaching.DEFAULT);
  }

  @Test
  void whetherARepWasJudgedComesBack() {
    Rep clean = w.logbook().log(judged(List.of()));
    Rep faulty = w.logbook().log(judged(List.of("toe-up@3", "knee-up")));
    Rep not = w.logbook().log(Fixtures.tap(ada.id(), Fixtures.TODAY));
    again();
    assertThat(w.reps().inOrder(ada.id())).containsExactly(clean, faulty, not).extracting(Rep::judged).containsExactly(true, true, false);
  }

  @Test
  void repsFromADayOnComeOldestFirst() {
    Rep third = w.logbook().log(Fixtures.tap(ada.id(), Fixtures.TODAY));
    Rep first = w.logbook().log(Fixtures.tap(ada.id(), Fixtures.TODAY.minusDays(3)));
    Rep second = w.logbook().log(Fixtures.tap(ada.id(), Fixtures.TODAY.minusDays(2)));
    assertThat(w.reps().since(ada.id(), Fixtures.TODAY.minusDays(2))).containsExactly(second, third);
    assertThat(w.reps().since(ada.id(), Fixtures.TODAY.minusDays(3))).containsExactly(first, second, third);
    assertThat(w.reps().since(ada.id(), Fixtures.TODAY.plusDays(1))).isEmpty();
  }

  @Test
  void ownFaultsAreKeptByKeyAndTicksOutliveThem() {
    Fault wobble = Fault.named("Ankle wobbles", "The ankle gives", "", "Firm ankle", "Ankle hops");
    w.looks().keep(Fault.named("zigzag line", "", "", "", ""));
    w.looks().keep(new Fault(wobble.key(), "Old name", "", "", "", ""));
    w.looks().keep(wobble);
    Rep rep = w.logbook().log(judged(List.of(wobble.key() + "@2")));
    again();
    assertThat(w.looks().ownFaults()).extracting(Fault::label).containsExactly("Ankle wobbles", "zigzag line");
    assertThat(w.looks().ownFaults().get(0)).isEqualTo(wobble);
    w.looks().removeFault(wobble.key());
    assertThat(w.looks().ownFaults()).hasSize(1);
    assertThat(w.reps().inOrder(ada.id())).containsExactly(rep);
  }

  @Test
  void noFaultIsCalledClean() {
    assertThatThrownBy(() -> w.looks().keep(Fault.named("Clean", "", "", "", ""))).isInstanceOf(RefusedException.class).hasMessageContaining("nothing was wrong");
    assertThatThrownBy(() -> w.logbook().log(judged(List.of("clean")))).isInstanceOf(RefusedException.class);
    assertThat(w.reps().inOrder(ada.id())).isEmpty();
  }

  @Test
  void aSecondLookReplacesThatOfTheSameObserverAndGoesWithItsRep() {
    Rep one = w.logbook().log(judged(List.of()));
    Rep two = w.logbook().log(judged(List.of("knee-up")));
    w.looks().keep(new SecondLook(two.id(), "KS", List.of()));
    w.looks().keep(new SecondLook(one.id(), "ks", List.of(FaultTick.of("toe-up"))));
    SecondLook last = new SecondLook(one.id(), " KS ", List.of(new FaultTick("toe-up", 6), FaultTick.of("knee-up")));
    w.looks().keep(last);
    w.looks().keep(new SecondLook(one.id(), "Zoë", List.of()));
    again();
    assertThat(w.looks().secondLooks(ada.id()))
        .containsExactly(last, new SecondLook(one.id(), "Zoë", List.of()), new SecondLook(two.id(), "KS", List.of()));
    assertThatThrownBy(() -> w.looks().keep(new SecondLook(one.id(), "KS", List.of(new FaultTick("toe-up", 7)))))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("6 contacts");
    w.logbook().undo(ada.id(), one.id());
    assertThat(w.looks().secondLooks(ada.id())).extracting(SecondLook::repId).containsExactly(two.id());
    assertThatThrownBy(() -> w.looks().keep(new SecondLook(one.id(), "KS", List.of()))).isInstanceOf(RefusedException.class).hasMessageContaining("Rep number");
  }

  private TestScore score(TestKind kind, int steps, double value, @Nullable Double runUp, int daysAgo) {
    return new TestScore(0, ada.id(), kind, steps, value, runUp, Fixtures.TODAY.minusDays(daysAgo), TestProtocol.usual(kind, Surface.GRASS));
  }

  @Test
  void scoresComeBackWithTheirProtocolOldestFirst() {
    TestScore newer = w.tests().add(score(TestKind.STANDING_FIVE, 0, 10.4, null, 2));
    TestScore run =
        w.tests()
            .add(new TestScore(0, ada.id(), TestKind.TIMED_RUN_UP, 6, 6.61, 9.9, Fixtures.TODAY, new TestProtocol(Surface.TRACK, "spikes", "walk in", 1, "wind behind")));
    TestScore older = w.tests().add(score(TestKind.STANDING_FIVE, 0, 10.1, null, 9));
    Athlete bo = w.athletes().add(Fixtures.athlete("Bo"));
    TestScore others = w.tests().add(new TestScore(0, bo.id(), TestKind.STANDING_FIVE, 0, 12, null, Fixtures.TODAY, newer.protocol()));
    again();
    assertThat(w.tests().of(ada.id())).containsExactly(older, newer, run);
    assertThat(w.tests().all(TestKind.STANDING_FIVE)).containsExactly(older, newer, others);
    w.tests().remove(bo.id(), older.id());
    assertThat(w.tests().of(ada.id())).hasSize(3);
    w.tests().remove(ada.id(), older.id());
    assertThat(w.tests().of(ada.id())).containsExactly(newer, run);
    assertThatThrownBy(() -> w.tests().add(new TestScore(0, 99, TestKind.STANDING_FIVE, 0, 12, null, Fixtures.TODAY, newer.protocol())))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("not in the store");
  }

  private double standingTen() {
    return w.logbook().model(ada).forecast(Sequence.parse("RL x5"), 0, Surface.GRASS, Fixtures.TODAY).landing().p50();
  }

  @Test
  void aScoreIsAlsoWhatTheModelStartsFromAndOnlyOnce() {
    w.logbook().log(Fixtures.tap(ada.id(), Fixtures.TODAY));
    double bare = standingTen();
    w.athletes().addKnownMark(ada.id(), new KnownMark(0, KnownMark.Kind.STANDING_TRIPLE, 0, 7.4, Fixtures.TODAY.minusDays(2)));
    TestScore same = w.tests().add(score(TestKind.STANDING_TRIPLE, 0, 7.4, null, 2));
    TestScore ten = w.tests().add(score(TestKind.STANDING_TEN, 0, 33, null, 5));
    w.tests().add(score(TestKind.SINGLE_LEG_LEFT, 0, 11, null, 5));
    w.tests().add(score(TestKind.TIMED_RUN_UP, 6, 6.6, 9.87, 5));
    w.tests().add(score(TestKind.TIMED_RUN_UP, 4, 6.1, null, 5));
    assertThat(w.athletes().profile(ada).knownMarks())
        .extracting(KnownMark::kind, KnownMark::distance_m)
        .containsExactly(
            tuple(KnownMark.Kind.STANDING_TEN, 33.0), tuple(KnownMark.Kind.STANDING_TRIPLE, 7.4));
    assertThat(w.athletes().profile(ada).runUps()).containsExactly(new MeasuredRunUp(0, 6, 9.87, 6.6, Fixtures.TODAY.minusDays(5)));
    double tested = standingTen();
    assertThat(tested).as("a standing ten of 33 m moves the forecast of the same drill").isGreaterThan(bare + 0.5);
    w.logbook().relearn(ada.id());
    assertThat(standingTen()).isEqualTo(tested);
    w.tests().remove(ada.id(), ten.id());
    assertThat(standingTen()).isLessThan(tested);
    w.tests().remove(ada.id(), same.id());
    assertThat(w.athletes().profile(ada).knownMarks()).as("what was entered as a mark stays").hasSize(1);
  }

  @Test
  void erasingAnAthleteErasesEverythingOfThem() throws Exception {
    Athlete bo = w.athletes().add(Fixtures.athlete("Bo"));
    for (Athlete a : List.of(ada, bo)) {
      String token = String.format("%032x", a.id());
      Rep rep = w.track().log(a, new Tap(token, Fixtures.tap(a.id(), Fixtures.TODAY), true), CoachSettings.DEFAULT).rep();
      w.load().add(new OtherWork(0, a.id(), Fixtures.TODAY, OtherWork.Kind.SPRINT, 120, 0));
      w.load().keep(a.id(), new LastWeek(Fixtures.TODAY, 80));
      w.load().keep(new SeasonStart(a.id(), Fixtures.TODAY, Season.IN_SEASON));
      w.looks().keep(new SecondLook(rep.id(), "Wendelgard " + a.name(), List.of()));
      w.tests().add(new TestScore(0, a.id(), TestKind.STANDING_FIVE, 0, 12, null, Fixtures.TODAY, TestProtocol.usual(TestKind.STANDING_FIVE, Surface.GRASS)));
      w.care().setGrowing(a.id(), true, null);
      w.care().addPain(a.id(), new Pain(0, Fixtures.TODAY, "Wendelgard " + a.name(), 6, null, true));
      w.care().openHold(a.id(), new MedicalHold(0, Fixtures.TODAY, "Wendelgard " + a.name(), null, null));
      w.care().endHold(a.id(), w.care().care(a.id(), Fixtures.TODAY).holds().get(0).id(), "Wendelgard " + a.name(), Fixtures.TODAY);
      w.care().keep(new SessionRating(a.id(), Fixtures.TODAY, 5, 60));
      w.care()
          .keep(new GuardOverride(0, a.id(), Fixtures.TODAY, Finding.Rule.RAMP, Answer.CAUTION, "said", "Wendelgard " + a.name()));
      w.ladder().keep(new RungDecision(0, a.id(), DrillFamily.ALTERNATE, Fixtures.TODAY, 4, 2, Decision.STAY, "Wendelgard " + a.name()));
    }
    w.attendance().keep(new Group(0, "Tuesday", Set.of(ada.id(), bo.id())));
    w.attendance().keepHere(Fixtures.TODAY, Set.of());
    // a test score made the program forget what it had learned; asking learns it again, so that there is something to erase
    for (Athlete a : List.of(ada, bo)) {
      assertThat(w.logbook().model(a).reps()).isEqualTo(1);
    }
    List<String> personal = new ArrayList<>(w.database().counts().rows().keySet());
    personal.removeAll(
        List.of(
            "setting", "drill", "own_fault", "known_mark", "run_up",
            // jumps and meets are erased in JumpsAndMeetsTest and LongJumpStoreTest; run_jump in RunJumpStoreTest
            "measured_jump", "jump_contact", "long_jump", "run_jump", "run_through", "board_gap", "meet", "meet_entrant", "meet_attempt", "meet_day",
            // distances by approach steps are erased in FullRunStoreTest; the weather of a day names nobody
            "jump_distance", "day_weather",
            // ways back are erased in WaysBackTest
            "way_back", "way_back_step",
            // clips are erased in SqlClipsTest; a job names no person; the squad's snapshot in SquadSnapshotTest
            "clip", "clip_points", "clip_mark", "clip_correction", "contact_time", "job", "squad_prior",
            // films of sessions are erased in SqlSessionsTest, birth dates and answers in PeopleTest, heights in GrowthStoreTest
            "session_film", "session_rep", "person", "consent", "body_measurement",
            // seasons, plans and calendars' secrets are erased in SqlSeasonsTest
            "season", "season_member", "season_version", "season_year", "season_edition", "season_member_before", "calendar_secret",
            // phones are of those whom the coach let in, and are shut out on their own page
            "phone", "phone_code",
            // who can log in, and what was done by number, never by name
            "club", "account", "membership", "account_link", "account_session", "wrong_try", "noted", "passkey", "passkey_challenge",
            "department_bond", "department_visit",
            // a plan, a group and a form's token name no person; what two phones said of an attempt is in JumpsAndMeetsTest
            "squad_group", "day_plan", "day_drill", "taken", "meet_beside",
            // who was erased is in RestoreTest; a count names nobody
            "erasure", "written", "changed", "import_file", "import_rep", "import_athlete", "import_meet",
            "import_entrant", "import_attempt", "import_group", "import_member", "import_filled", "import_columns", "transfer_offer"));
    assertThat(personal).hasSizeGreaterThanOrEqualTo(11);
    assertThat(personal).allSatisfy(t -> assertThat(count(t)).as(t).isGreaterThanOrEqualTo(2));
    w.athletes().erase(ada.id());
    assertThat(personal).allSatisfy(t -> assertThat(count(t)).as(t).isBetween(1, 2));
    assertThat(count("medical_hold")).isEqualTo(2);
    assertThat(count("athlete")).isEqualTo(1);
    assertThat(w.looks().secondLooks(bo.id())).hasSize(1);
    w.close();
    try (var files = Files.list(dir)) {
      assertThat(files.filter(Files::isRegularFile))
          .allSatisfy(f -> assertThat(new String(Files.readAllBytes(f), StandardCharsets.ISO_8859_1)).doesNotContain("Wendelgard Ada"));
    }
    open();
  }

  private int count(String table) {
    return w.database().read(h -> h.createQuery("SELECT count(*) FROM " + table).mapTo(Integer.class).one());
  }
}
