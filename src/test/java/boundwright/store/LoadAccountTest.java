package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.approach.board.GapEntry;
import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.jump.JumpEntry;
import boundwright.jump.MeasuredContact;
import boundwright.jump.MeasuredJump;
import boundwright.jump.Phase;
import boundwright.jump.Phases;
import boundwright.load.Answer;
import boundwright.load.DayVerdict;
import boundwright.load.Finding.Rule;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.Room;
import boundwright.load.Season;
import boundwright.load.SeasonStart;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LastWeek;
import boundwright.load.account.LegLoad;
import boundwright.load.account.OtherWork;
import boundwright.load.account.Work;
import boundwright.meet.Attempt;
import boundwright.meet.BoardDistance;
import boundwright.meet.Entrant;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.engine.Schema;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.flywaydb.core.Flyway;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteDataSource;

/** Everything that any room logged comes into the one account, on the real database. Counts are worked by hand. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class LoadAccountTest {
  private static final LocalDate TODAY = Fixtures.TODAY;

  @TempDir Path dir;
  private Workbench w;
  private Athlete ada;

  private void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    ada = w.athletes().add(new Athlete(0, "Ada Fenn", Level.ADVANCED, Foot.LEFT, 6));
  }

  @AfterEach
  void close() {
    w.close();
  }

  private static Rep rep(Athlete a, LocalDate date, String letters, int steps, Outcome outcome, @Nullable Integer after) {
    return new Rep(0, a.id(), date, Sequence.parse(letters), steps, Surface.GRASS, List.of(), null, outcome, after, null, false, List.of());
  }

  private LegLoad today() {
    DayLoad day = w.loadDesk().history(ada, 0).days().stream().filter(d -> d.date().equals(TODAY)).findFirst().orElseThrow();
    return w.loadDesk().weights(ada, TODAY).of(day);
  }

  /** Six attempts and four run-throughs from the left: 6 x 2 + 4 = 16 left, 6 right, 22 in all (worked). */
  @Test
  void aMeetComesIntoTheAccountOnTheLegsAsJumped() {
    open();
    MeetSheet sheet = w.meets().add(MeetSheet.of("Invented meet", TODAY, BoardDistance.ALL.get(4), null, MeetRules.DEFAULT));
    Entrant entrant = w.meets().enter(sheet.id(), new Entrant(0, ada.id(), "Ada Fenn"));
    for (int round = 1; round <= 5; round++) {
      w.meets().add(sheet.id(), entrant.id(), round == 2 ? Attempt.foul("Ada Fenn", round) : Attempt.valid("Ada Fenn", round, 11.2), "");
    }
    w.meets().add(sheet.id(), entrant.id(), Attempt.pass("Ada Fenn", 6), "");
    w.meets().add(sheet.id(), entrant.id(), Attempt.valid("Ada Fenn", 6, 11.4), "");
    for (int i = 0; i < 4; i++) {
      w.runThroughs().add(new RunThroughEntry(0, ada.id(), TODAY, RunThrough.toGap(16, 33, 0.1, null, null), ""));
    }
    LegLoad load = today();
    assertThat(load.jumps()).isEqualTo(22);
    assertThat(load.left()).isEqualTo(16);
    assertThat(load.right()).isEqualTo(6);
    DayVerdict day = w.loadDesk().day(ada);
    assertThat(day.soFar().contacts()).isEqualTo(22);
    assertThat(day.answer()).as("a meet is not refused").isNotEqualTo(Answer.REFUSED);
    w.meets().undo(sheet.id());
    assertThat(today().jumps()).as("a pass counts nothing").isEqualTo(19);
  }

  /** An abandoned rep counts up to where it broke off; a measured jump with its own speeds; a jump logged twice once. */
  @Test
  void repsJumpsAndTakeOffsComeIntoTheAccount() {
    open();
    w.logbook().log(rep(ada, TODAY, "RL x5", 0, Outcome.IN, null));
    w.logbook().log(rep(ada, TODAY, "RL x5", 0, Outcome.ABANDONED, 3));
    assertThat(today().jumps()).isEqualTo(13);
    List<MeasuredContact> contacts =
        List.of(
            new MeasuredContact(Phase.HOP, 9.2, 8.8, -0.3, 2.4), new MeasuredContact(Phase.STEP, 8.8, 7.9, -2.6, 1.9),
            new MeasuredContact(Phase.JUMP, 7.9, 6.8, -2.2, 2.2));
    MeasuredJump.Body body = new MeasuredJump.Body(1.15, 0.98, 0.7);
    MeasuredJump jump = new MeasuredJump(contacts, List.of(body, body, body), 0.05);
    w.jumpLog().add(new JumpEntry(0, ada.id(), TODAY, 16, jump.phases(), jump, ""));
    w.jumpLog().add(new JumpEntry(0, ada.id(), TODAY, null, new Phases(4.9, 4.0, 4.8, null, Phases.From.BOARD), null, ""));
    for (int i = 0; i < 3; i++) {
      w.boardLog().add(new GapEntry(0, ada.id(), TODAY, 0.08, 0, 13.4, ""));
    }
    w.boardLog().add(new GapEntry(0, ada.id(), TODAY, null, 0, null, ""));
    // 13 bounds, three jumps (the larger of two measured and three at the board), one contact at the board
    assertThat(today().jumps()).isEqualTo(13 + 3 * 3 + 1);
    Work measured =
        w.loadDesk().history(ada, 0).days().get(0).work().stream().filter(x -> !x.measured().isEmpty()).findFirst().orElseThrow();
    assertThat(measured.measured().get(1).down()).isEqualTo(2.6);
    assertThat(measured.measured().get(1).up()).isEqualTo(1.9);
  }

  @Test
  void otherWorkAndTheCoachsWordsComeBackAndGoWithTheAthlete() {
    open();
    OtherWork boxes = w.load().add(new OtherWork(0, ada.id(), TODAY, OtherWork.Kind.BOXES, 20, 0.4));
    w.load().add(new OtherWork(0, ada.id(), TODAY.minusDays(2), OtherWork.Kind.SPORT, 45, 6));
    w.load().add(new OtherWork(0, ada.id(), TODAY, OtherWork.Kind.BOUNDS, 11, 4));
    w.load().keep(ada.id(), new LastWeek(TODAY, 80));
    w.load().keep(ada.id(), new LastWeek(TODAY, 90));
    w.load().keep(new SeasonStart(null, TODAY.minusDays(30), Season.OFF_SEASON));
    w.load().keep(new SeasonStart(ada.id(), TODAY.minusDays(3), Season.OFF_SEASON));
    w.load().keep(new SeasonStart(ada.id(), TODAY.minusDays(3), Season.IN_SEASON));
    w.close();
    w = Stores.open(dir, Fixtures.CLOCK);
    assertThat(w.load().otherWork(ada.id(), TODAY.minusDays(2))).hasSize(3).contains(boxes);
    assertThat(w.load().lastWeeks()).containsEntry(ada.id(), new LastWeek(TODAY, 90));
    assertThat(SeasonStart.on(w.load().seasons(), ada.id(), TODAY)).contains(Season.IN_SEASON);
    assertThat(SeasonStart.on(w.load().seasons(), ada.id() + 1, TODAY)).contains(Season.OFF_SEASON);
    assertThat(today().jumps()).isEqualTo(31);
    assertThat(today().right()).isEqualTo(26);
    assertThat(today().left()).isEqualTo(25);
    assertThat(w.load().removeOtherWork(ada.id() + 1, boxes.id())).isEmpty();
    assertThat(w.load().removeOtherWork(ada.id(), boxes.id())).contains(boxes);
    w.athletes().erase(ada.id());
    assertThat(w.load().otherWork(ada.id(), TODAY.minusDays(9))).isEmpty();
    assertThat(w.load().lastWeeks()).isEmpty();
    assertThat(w.load().seasons()).hasSize(1);
  }

  /** So far and with the plan, today and on a day to come; what was done of the plan is not counted twice. */
  @Test
  void theDayIsJudgedInTwoHalvesAndAPlannedDayToo() {
    open();
    w.settings().keep(new DayPlan("Bounding", List.of(new Drill(Sequence.parse("RL x5"), 0, 2, 4, false))));
    w.logbook().log(rep(ada, TODAY, "RL x5", 0, Outcome.IN, null));
    DayVerdict day = w.loadDesk().day(ada);
    assertThat(day.soFar().contacts()).isEqualTo(10);
    assertThat(day.withPlan().contacts()).isEqualTo(80);
    assertThat(day.planned()).isTrue();
    assertThat(day.notKnownYet()).isTrue();
    assertThat(day.withPlan().findings()).noneMatch(f -> f.rule() == Rule.OWN_WEEKS);
    DayVerdict later = w.loadDesk().day(ada, TODAY.plusDays(8));
    assertThat(later.soFar().contacts()).isZero();
    assertThat(later.withPlan().contacts()).isEqualTo(80);
    assertThat(later.notKnownYet()).as("by then the log is a week old").isFalse();
    assertThat(Objects.requireNonNull(w.loadDesk().days(List.of(ada)).get(ada.id())).said()).isEqualTo(day.said());
    w.care().openHold(ada.id(), new MedicalHold(0, TODAY, "set by the physician", null, null));
    assertThat(w.loadDesk().day(ada).held()).isTrue();
    assertThat(w.loadDesk().day(ada).reason()).startsWith("On medical hold");
    assertThat(w.loadDesk().day(ada).rooms()).allSatisfy(r -> assertThat(r.beforeRefused()).isZero());
  }

  /** Law: whatever is logged today, in whichever room, never raises the room left. */
  @Test
  void loggingNeverRaisesTheRoomLeft() {
    open();
    long seed = 20_261_129L;
    Random random = new Random(seed);
    for (int ago = 30; ago >= 3; ago -= 3) {
      for (int i = 0; i < 4; i++) {
        w.logbook().log(rep(ada, TODAY.minusDays(ago), "RL x5", 2 * random.nextInt(4), Outcome.IN, null));
      }
    }
    List<Room> before = w.loadDesk().day(ada).rooms();
    assertThat(before.get(0).contacts()).isPositive();
    for (int i = 0; i < 12; i++) {
      log(random);
      List<Room> now = w.loadDesk().day(ada).rooms();
      for (int s = 0; s < now.size(); s++) {
        assertThat(now.get(s).contacts()).as("seed %d, step %d", seed, i).isLessThanOrEqualTo(before.get(s).contacts());
      }
      before = now;
    }
  }

  private void log(Random random) {
    switch (random.nextInt(4)) {
      case 0 -> w.load().add(new OtherWork(0, ada.id(), TODAY, OtherWork.Kind.SPRINT, 100, 0));
      case 1 -> w.runThroughs().add(new RunThroughEntry(0, ada.id(), TODAY, RunThrough.toGap(14, 30, 0.1, null, null), ""));
      case 2 -> w.boardLog().add(new GapEntry(0, ada.id(), TODAY, 0.1, 0, 12.9, ""));
      default ->
          w.logbook()
              .log(
                  new Rep(
                      0, ada.id(), TODAY, Sequence.parse("RRL x2"), 4, Surface.GRASS, List.of(), 14 + 3 * random.nextDouble(), Outcome.IN, null, null,
                      false, List.of()));
    }
  }

  /** The undated part of the year of an older program holds from long ago on; the guard's other limits stay. */
  @Test
  @SqliteFile("a file of an older program, of which PostgreSQL has none")
  void theSwitchOfAnOlderProgramIsNotLost() throws SQLException {
    SQLiteDataSource source = new SQLiteDataSource();
    source.setUrl("jdbc:sqlite:" + dir.resolve(Schema.FILE_NAME));
    Flyway.configure().dataSource(source).locations("classpath:db/migration").target("4").load().migrate();
    try (Connection c = source.getConnection();
        Statement s = c.createStatement()) {
      s.execute("INSERT INTO setting VALUES ('guard.season', NULL, NULL, 'PRE_SEASON')");
      s.execute("INSERT INTO setting VALUES ('guard.hard.contacts', 77, '1', NULL)");
      s.execute("INSERT INTO setting VALUES ('guard.ramp.caution', 12, '%', NULL)");
    }
    w = Stores.open(dir, Fixtures.CLOCK);
    assertThat(SeasonStart.ofSquad(w.load().seasons(), TODAY)).contains(Season.PRE_SEASON);
    assertThat(w.care().guard().limits().hardContacts()).isEqualTo(77);
    assertThat(w.care().guard().limits().ownPercent().caution()).isEqualTo(12);
    assertThat(w.care().guard().limits().startWeek()).isEqualTo(120);
  }

  /** Contacts of clips replace the contact times of the setting from the next day on, while the rep is there. */
  @Test
  void contactTimesOfClipsAreLearned() {
    open();
    Rep rep = w.logbook().log(rep(ada, TODAY.minusDays(1), "RL x5", 4, Outcome.IN, null));
    w.database()
        .write(
            h ->
                h.execute(
                    "INSERT INTO clip (id, athlete_id, date, file_name, approach_steps, surface, state, per_mille, film_kept, box_frame, slowed, mass_model,"
                        + " rep_id, added) VALUES (5, ?, ?, 'a.mp4', 4, 'TRACK', 'READ', 1000, 0, 0, 1, 'MALE', ?, '2026-05-11T10:00:00Z')",
                    ada.id(), TODAY.minusDays(1).toString(), rep.id()));
    new SqlClips(w.database()).contactTimes(5, new ArrayList<>(List.of(0.25, Double.NaN, 0.26)));
    assertThat(w.load().timed(List.of(ada.id()), TODAY).get(ada.id())).hasSize(2);
    double usual = w.care().guard().scale().times().bounding(4);
    assertThat(w.loadDesk().weights(ada, TODAY).scale().times().bounding(4)).isGreaterThan(usual);
    assertThat(w.loadDesk().weights(ada, TODAY.minusDays(1)).scale().times().bounding(4)).as("not on the day itself").isCloseTo(usual, within(1e-12));
    w.logbook().undo(ada.id(), rep.id());
    assertThat(w.load().timed(List.of(ada.id()), TODAY)).isEmpty();
  }
}
