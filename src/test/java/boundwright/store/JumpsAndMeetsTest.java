package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.approach.aim.AimSettings;
import boundwright.approach.board.GapEntry;
import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.approach.run.RunUpSettings;
import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.jump.JumpEntry;
import boundwright.jump.JumpSettings;
import boundwright.jump.MeasureRule;
import boundwright.jump.MeasuredContact;
import boundwright.jump.MeasuredJump;
import boundwright.jump.Phase;
import boundwright.jump.Phases;
import boundwright.meet.Attempt;
import boundwright.meet.BoardDistance;
import boundwright.meet.Entrant;
import boundwright.meet.Hand;
import boundwright.meet.KeptAttempt;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSettings;
import boundwright.meet.MeetSheet;
import boundwright.meet.Scoring;
import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Jumps, run-throughs, gaps and meets come back after the folder was closed and opened again; undo and erasing reach all. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class JumpsAndMeetsTest {
  @TempDir Path dir;
  private Workbench w;
  private Athlete ada;
  private Athlete bo;

  @BeforeEach
  void open() {
    w = Stores.open(dir.resolve("squad"), Fixtures.CLOCK);
    ada = w.athletes().byName("Ada Fenn").orElseGet(() -> w.athletes().add(Fixtures.athlete("Ada Fenn")));
    bo = w.athletes().byName("Bo Reed").orElseGet(() -> w.athletes().add(Fixtures.athlete("Bo Reed")));
  }

  @AfterEach
  void close() {
    w.close();
  }

  private void again() {
    w.close();
    open();
  }

  private static MeasuredJump speeds() {
    return new MeasuredJump(
        List.of(
            new MeasuredContact(Phase.HOP, 9.1, 8.3, -0.31, 2.2),
            new MeasuredContact(Phase.STEP, 8.3, 7.5, -2.7, 1.65),
            new MeasuredContact(Phase.JUMP, 7.5, 6.4, -2.2, 2.1)),
        List.of(new MeasuredJump.Body(1.15, 0.98, 0.71), new MeasuredJump.Body(1.1, 0.97, 0.7), new MeasuredJump.Body(1.12, 0.6, 0.9)),
        0.07);
  }

  private JumpEntry jump(Athlete who, boolean measured) {
    Phases lengths = measured ? new Phases(5.31, 3.9, 4.62, 0.07, Phases.From.TOE) : Phases.of(5.2, 3.8, 4.5);
    return new JumpEntry(0, who.id(), Fixtures.TODAY, measured ? 14 : null, lengths, measured ? speeds() : null, "into the wind");
  }

  private RunThroughEntry run(Athlete who) {
    return new RunThroughEntry(
        0, who.id(), Fixtures.TODAY, new RunThrough(5, 9.1, List.of(Double.NaN, 6.33, 4.2, Double.NaN, -0.03), -1.3, 4.5), "");
  }

  private GapEntry gap(Athlete who) {
    return new GapEntry(0, who.id(), Fixtures.TODAY, 0.123, -0.15, 12.34, "new shoes");
  }

  private MeetSheet meet() {
    return w.meets()
        .add(
            new MeetSheet(
                0,
                "Back Field Open",
                Fixtures.TODAY,
                "girls, United States high school (about)",
                BoardDistance.ALL.get(3).distance_m(),
                Scoring.TRIPLE_JUMP_WOMEN,
                new MeetRules(3, 6, 2, MeetRules.FinalOrder.WORST_FIRST_ONCE, MeasureRule.QUARTER_INCH, 90),
                List.of(new Entrant(0, ada.id(), "Ada Fenn"), Entrant.rival("Bib 7"), Entrant.rival("Bib 12")),
                List.of()));
  }

  @Test
  void whatIsLoggedOfAnAthleteComesBackToTheLastBit() {
    JumpEntry measured = w.jumpLog().add(jump(ada, true));
    JumpEntry taped = w.jumpLog().add(jump(ada, false));
    JumpEntry other = w.jumpLog().add(jump(bo, true));
    RunThroughEntry run = w.runThroughs().add(run(ada));
    GapEntry gap = w.boardLog().add(gap(ada));
    GapEntry unseen = w.boardLog().add(new GapEntry(0, ada.id(), Fixtures.TODAY.minusDays(1), null, 0, null, ""));
    again();
    assertThat(w.jumpLog().jumps(ada.id())).containsExactly(measured, taped);
    assertThat(w.jumpLog().jumpsWithSpeeds()).containsOnlyKeys(ada.id(), bo.id());
    assertThat(w.jumpLog().jumpsWithSpeeds().get(ada.id())).containsExactly(measured);
    assertThat(w.jumpLog().jumps(bo.id())).containsExactly(other);
    assertThat(w.runThroughs().runThroughs(ada.id())).containsExactly(run);
    assertThat(w.boardLog().gaps(ada.id())).containsExactly(unseen, gap);
  }

  @Test
  void aRunOfWhichNothingWasSeenComesBack() {
    RunThroughEntry one = w.runThroughs().add(new RunThroughEntry(0, ada.id(), Fixtures.TODAY, RunThrough.toGap(1, 1.2, null, null, null), ""));
    RunThroughEntry many = w.runThroughs().add(new RunThroughEntry(0, ada.id(), Fixtures.TODAY, RunThrough.toGap(16, 31, null, null, null), ""));
    assertThat(w.runThroughs().runThroughs(ada.id())).containsExactly(one, many);
  }

  @Test
  void whatIsTakenBackIsGoneAndOnlyThat() {
    JumpEntry jump = w.jumpLog().add(jump(ada, true));
    JumpEntry kept = w.jumpLog().add(jump(ada, true));
    RunThroughEntry run = w.runThroughs().add(run(ada));
    GapEntry gap = w.boardLog().add(gap(ada));
    assertThat(w.jumpLog().removeJump(bo.id(), jump.id())).as("another athlete's").isEmpty();
    assertThat(w.jumpLog().removeJump(ada.id(), jump.id())).contains(jump);
    assertThat(w.jumpLog().removeJump(ada.id(), jump.id())).isEmpty();
    assertThat(w.runThroughs().removeRunThrough(ada.id(), run.id())).contains(run);
    assertThat(w.boardLog().removeGap(ada.id(), gap.id())).contains(gap);
    again();
    assertThat(w.jumpLog().jumps(ada.id())).containsExactly(kept);
    assertThat(w.runThroughs().runThroughs(ada.id())).isEmpty();
    assertThat(w.boardLog().gaps(ada.id())).isEmpty();
    assertThat(w.jumpLog().add(jump(ada, false)).id()).as("a number never comes back").isGreaterThan(kept.id());
  }

  @Test
  void nobodysJumpIsRefusedInASentence() {
    assertThatThrownBy(() -> w.boardLog().add(new GapEntry(0, 999, Fixtures.TODAY, 0.1, 0, null, "")))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("not in the store");
  }

  @Test
  void aMeetComesBackWithItsListAndAttempts() {
    MeetSheet meet = meet();
    long adas = meet.entrants().get(0).id();
    long bib7 = meet.entrants().get(1).id();
    KeptAttempt first = w.meets().add(meet.id(), adas, new Attempt("x", 1, Attempt.Result.VALID, 11.2345, 1.46, 0.08, -0.2), "tall");
    KeptAttempt foul = w.meets().add(meet.id(), bib7, new Attempt("x", 1, Attempt.Result.FOUL, null, null, null, 0), "");
    again();
    MeetSheet kept = w.meets().byId(meet.id()).orElseThrow();
    assertThat(kept).isEqualTo(w.meets().all().get(0));
    assertThat(kept.rules()).isEqualTo(meet.rules());
    assertThat(kept.scoring()).isEqualTo(Scoring.TRIPLE_JUMP_WOMEN);
    assertThat(kept.board().source()).isEqualTo(BoardDistance.ALL.get(3).source());
    assertThat(kept.entrants()).extracting(Entrant::name).containsExactly("Ada Fenn", "Bib 7", "Bib 12");
    assertThat(kept.attempts()).containsExactly(first, foul);
    assertThat(first.attempt().athlete()).isEqualTo("Ada Fenn");
    assertThat(w.meets().attemptsOf(ada.id())).singleElement().satisfies(a -> assertThat(a.kept()).isEqualTo(first));
    assertThat(w.meets().attemptsOf(bo.id())).isEmpty();
  }

  @Test
  void undoTakesTheLastEntryBackAndWhatItReplacedComesBack() {
    MeetSheet meet = meet();
    long adas = meet.entrants().get(0).id();
    KeptAttempt slip = w.meets().add(meet.id(), adas, Attempt.valid("x", 1, 12.10), "");
    KeptAttempt mended = w.meets().add(meet.id(), adas, Attempt.valid("x", 1, 11.20), "");
    assertThat(w.meets().byId(meet.id()).orElseThrow().attempts()).containsExactly(mended);
    again();
    assertThat(w.meets().undo(meet.id())).contains(mended);
    assertThat(w.meets().byId(meet.id()).orElseThrow().attempts()).containsExactly(slip);
    assertThat(w.meets().undo(meet.id())).contains(slip);
    assertThat(w.meets().undo(meet.id())).isEmpty();
  }

  @Test
  void takingAnAttemptOutTakesWhatItReplacedToo() {
    MeetSheet meet = meet();
    long adas = meet.entrants().get(0).id();
    w.meets().add(meet.id(), adas, Attempt.valid("x", 1, 12.10), "");
    KeptAttempt mended = w.meets().add(meet.id(), adas, Attempt.valid("x", 1, 11.20), "");
    KeptAttempt second = w.meets().add(meet.id(), adas, Attempt.pass("x", 2), "");
    w.meets().removeAttempt(meet.id() + 1, mended.id());
    assertThat(w.meets().byId(meet.id()).orElseThrow().attempts()).containsExactly(mended, second);
    w.meets().removeAttempt(meet.id(), mended.id());
    assertThat(w.meets().byId(meet.id()).orElseThrow().attempts()).containsExactly(second);
  }

  @Test
  void theRulesAreAskedBeforeAnythingIsKept() {
    MeetSheet meet = meet();
    long adas = meet.entrants().get(0).id();
    assertThatThrownBy(() -> w.meets().add(meet.id(), 999, Attempt.valid("x", 1, 12), ""))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("not on the list");
    for (int r = 1; r <= 3; r++) {
      w.meets().add(meet.id(), adas, Attempt.foul("x", r), "");
      w.meets().add(meet.id(), meet.entrants().get(1).id(), Attempt.valid("x", r, 11 + 0.1 * r), "");
      w.meets().add(meet.id(), meet.entrants().get(2).id(), Attempt.valid("x", r, 12 - 0.1 * r), "");
    }
    assertThatThrownBy(() -> w.meets().add(meet.id(), adas, Attempt.valid("x", 4, 12), ""))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("did not go on");
    assertThat(w.meets().byId(meet.id()).orElseThrow().attempts()).hasSize(9);
  }

  /** Mending an early mark can leave a later attempt that the rules would not have; it stays visible and can be mended. */
  @Test
  void anAttemptThatNoLongerFitsIsNotLost() {
    MeetSheet meet = meet();
    long adas = meet.entrants().get(0).id();
    for (int r = 1; r <= 3; r++) {
      w.meets().add(meet.id(), adas, Attempt.valid("x", r, 13), "");
      w.meets().add(meet.id(), meet.entrants().get(1).id(), Attempt.valid("x", r, 11), "");
      w.meets().add(meet.id(), meet.entrants().get(2).id(), Attempt.valid("x", r, 12), "");
    }
    w.meets().add(meet.id(), adas, Attempt.valid("x", 4, 13.5), "");
    for (int r = 1; r <= 3; r++) {
      w.meets().add(meet.id(), adas, Attempt.foul("x", r), "");
    }
    MeetSheet now = w.meets().byId(meet.id()).orElseThrow();
    assertThat(now.attempts()).hasSize(10);
    assertThat(now.meet().placings().get(0).athlete()).isEqualTo("Ada Fenn");
    assertThat(now.meet().goesOn()).doesNotContain("Ada Fenn");
  }

  @Test
  void theHeadOfAMeetCanBeMendedAndTheListStays() {
    MeetSheet meet = meet();
    w.meets().add(meet.id(), meet.entrants().get(0).id(), Attempt.valid("x", 1, 12), "");
    w.meets().update(new MeetSheet(meet.id(), "Moved", Fixtures.TODAY.plusDays(1), "club", 9, null, MeetRules.DEFAULT, List.of(), List.of()));
    again();
    MeetSheet kept = w.meets().byId(meet.id()).orElseThrow();
    assertThat(kept.name()).isEqualTo("Moved");
    assertThat(kept.scoring()).isNull();
    assertThat(kept.board().source().citation()).isEqualTo("entered by the coach");
    assertThat(kept.entrants()).hasSize(3);
    assertThat(kept.attempts()).hasSize(1);
    assertThatThrownBy(() -> w.meets().update(new MeetSheet(77, "No", Fixtures.TODAY, "club", 9, null, MeetRules.DEFAULT, List.of(), List.of())))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("Meet number 77");
  }

  @Test
  void eachStandsOnAListOnce() {
    MeetSheet meet = meet();
    assertThatThrownBy(() -> w.meets().enter(meet.id(), Entrant.rival("bib  7"))).isInstanceOf(RefusedException.class).hasMessageContaining("already");
    assertThatThrownBy(() -> w.meets().enter(meet.id(), new Entrant(0, ada.id(), "whatever"))).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> w.meets().enter(meet.id(), Entrant.rival("ADA FENN"))).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> w.meets().enter(meet.id(), new Entrant(0, 999L, "Ghost")))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("not in the store");
    Entrant bos = w.meets().enter(meet.id(), new Entrant(0, bo.id(), "whatever"));
    assertThat(bos.name()).isEqualTo("Bo Reed");
    assertThat(w.meets().byId(meet.id()).orElseThrow().entrants()).hasSize(4);
    w.meets().withdraw(meet.id(), bos.id());
    assertThat(w.meets().byId(meet.id()).orElseThrow().entrants()).hasSize(3);
    w.meets().add(meet.id(), meet.entrants().get(0).id(), Attempt.pass("x", 1), "");
    assertThatThrownBy(() -> w.meets().withdraw(meet.id(), meet.entrants().get(0).id()))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("has attempts");
  }

  @Test
  void aNewNameFollowsIntoTheMeetEvenWhenARivalIsCalledSo() {
    MeetSheet meet = meet();
    w.meets().add(meet.id(), meet.entrants().get(1).id(), Attempt.valid("x", 1, 11), "");
    w.athletes().update(new Athlete(ada.id(), "Bib 7", Level.INTERMEDIATE, Foot.RIGHT, 4));
    MeetSheet kept = w.meets().byId(meet.id()).orElseThrow();
    assertThat(kept.entrants()).extracting(Entrant::name).containsExactly("Bib 7", "Bib 7 (rival)", "Bib 12");
    assertThat(kept.meet().placings().get(0).athlete()).isEqualTo("Bib 7 (rival)");
    ada = w.athletes().byId(ada.id()).orElseThrow();
  }

  @Test
  void aMeetIsTakenOutWithAllThatIsInIt() {
    MeetSheet meet = meet();
    w.meets().add(meet.id(), meet.entrants().get(0).id(), Attempt.valid("x", 1, 12), "");
    w.meets().remove(meet.id());
    assertThat(w.meets().all()).isEmpty();
    assertThat(w.meets().attemptsOf(ada.id())).isEmpty();
    for (String table : List.of("meet_entrant", "meet_attempt")) {
      assertThat(w.database().<Integer>read(h -> h.createQuery("SELECT count(*) FROM " + table).mapTo(Integer.class).one())).as(table).isZero();
    }
  }

  /** The right to be forgotten: no row and no byte of the file holds the person any more; the rivals' marks stay. */
  @Test
  void erasingAPersonReachesJumpsRunsGapsAndMeets() throws Exception {
    Athlete gone = w.athletes().add(Fixtures.athlete("Quillon Verhagen"));
    w.jumpLog().add(jump(gone, true));
    w.runThroughs().add(run(gone));
    w.boardLog().add(new GapEntry(0, gone.id(), Fixtures.TODAY, 0.1, 0, null, "Quillon was tired"));
    MeetSheet meet = meet();
    Entrant entered = w.meets().enter(meet.id(), new Entrant(0, gone.id(), "x"));
    w.meets().add(meet.id(), entered.id(), Attempt.valid("x", 1, 12), "Quillon fell");
    w.meets().add(meet.id(), entered.id(), Attempt.valid("x", 1, 11.5), "Quillon stepped back", new Hand(0, List.of(), null));
    assertThat(w.meets().besides(meet.id())).hasSize(1);
    w.meets().add(meet.id(), meet.entrants().get(1).id(), Attempt.valid("x", 1, 11), "");
    JumpEntry stays = w.jumpLog().add(jump(ada, true));
    w.athletes().erase(gone.id());
    MeetSheet kept = w.meets().byId(meet.id()).orElseThrow();
    assertThat(kept.entrants()).extracting(Entrant::name).containsExactly("Ada Fenn", "Bib 7", "Bib 12");
    assertThat(kept.attempts()).hasSize(1);
    assertThat(w.meets().besides(meet.id())).isEmpty();
    assertThat(w.jumpLog().jumps(ada.id())).containsExactly(stays);
    List<String> left = new ArrayList<>();
    for (String table : List.of("measured_jump", "run_through", "board_gap", "meet_entrant")) {
      int rows =
          w.database()
              .read(h -> h.createQuery("SELECT count(*) FROM " + table + " WHERE athlete_id = " + gone.id()).mapTo(Integer.class).one());
      if (rows > 0) {
        left.add(table);
      }
    }
    assertThat(left).isEmpty();
    assertThat(w.database().<Integer>read(h -> h.createQuery("SELECT count(*) FROM jump_contact").mapTo(Integer.class).one())).isEqualTo(3);
    w.close();
    Stores.assertNotInFile(dir.resolve("squad"), "Quillon");
    open();
  }

  @Test
  void settingsComeBackAndWereTheDefaultsBefore() {
    assertThat(w.meets().settings()).isEqualTo(MeetSettings.DEFAULT);
    MeetSettings own =
        new MeetSettings(
            new JumpSettings(3),
            new RunUpSettings(0.15, 6, 2),
            new AimSettings(0.5, 0.3, 0.2),
            new MeetRules(4, 5, 12, MeetRules.FinalOrder.AS_DRAWN, MeasureRule.QUARTER_INCH, 45));
    w.meets().keep(own);
    again();
    assertThat(w.meets().settings()).isEqualTo(own);
  }
}
