package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.approach.board.GapEntry;
import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.jump.CombinedTable;
import boundwright.jump.Event;
import boundwright.jump.takeoff.LongJump;
import boundwright.jump.takeoff.TakeOff;
import boundwright.meet.Attempt;
import boundwright.meet.BoardDistance;
import boundwright.meet.Combined;
import boundwright.meet.CombinedWind;
import boundwright.meet.Entrant;
import boundwright.meet.MeetAim;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.meet.Scoring;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The long jump in the store: it comes back as it was and is never mixed with the triple jump. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class LongJumpStoreTest {
  @TempDir Path dir;
  private Workbench w;
  private Athlete ada;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    ada = w.athletes().byName("Ada Longshore").orElseGet(() -> w.athletes().add(Fixtures.athlete("Ada Longshore")));
  }

  @AfterEach
  void close() {
    w.close();
  }

  private LongJump jump(boolean speeds) {
    TakeOff t = speeds ? new TakeOff(8.9, .41, 8.13, 2.97, 1.19, .63, null) : null;
    return new LongJump(0, ada.id(), Fixtures.TODAY, speeds ? Foot.LEFT : Foot.RIGHT, speeds ? 16 : null, 6.12, speeds ? .07 : null, t, "into the wind");
  }

  private MeetSheet decathlon() {
    MeetRules rules = MeetRules.DEFAULT.of(new Combined(CombinedTable.DECATHLON, CombinedWind.NONE_ABOVE_FOUR_OR_AVERAGE), 3);
    return MeetSheet.of("Invented decathlon", Fixtures.TODAY, BoardDistance.of(Event.LONG_JUMP).get(1), Scoring.DECATHLON, rules);
  }

  @Test
  void whatIsKeptComesBackToTheLastBit() {
    LongJump one = w.longJumps().add(jump(true));
    LongJump two = w.longJumps().add(jump(false));
    GapEntry gap = w.boardLog().add(new GapEntry(0, ada.id(), Fixtures.TODAY, Event.LONG_JUMP, .06, 0, 6.2, ""));
    RunThroughEntry run = w.runThroughs().add(new RunThroughEntry(0, ada.id(), Fixtures.TODAY, Event.LONG_JUMP, RunThrough.toGap(14, 27.1, .08, null, null), ""));
    MeetSheet meet = w.meets().add(decathlon());
    Entrant who = w.meets().enter(meet.id(), new Entrant(0, ada.id(), ada.name()));
    w.meets().add(meet.id(), who.id(), new Attempt(Event.LONG_JUMP, ada.name(), 1, Attempt.Result.VALID, 6.21, 1.2, .04, 0), "");
    w.close();
    open();
    assertThat(w.longJumps().longJumps(ada.id())).containsExactly(one, two);
    assertThat(w.boardLog().gaps(ada.id())).containsExactly(gap);
    assertThat(w.runThroughs().runThroughs(ada.id())).containsExactly(run);
    MeetSheet back = w.meets().byId(meet.id()).orElseThrow();
    assertThat(back.rules()).isEqualTo(decathlon().rules());
    assertThat(back.scoring()).isEqualTo(Scoring.DECATHLON);
    assertThat(back.attempts()).singleElement().satisfies(a -> assertThat(a.attempt().event()).isEqualTo(Event.LONG_JUMP));
    Athlete bo = w.athletes().add(Fixtures.athlete("Bo Farfield"));
    LongJump others = w.longJumps().add(new LongJump(0, bo.id(), Fixtures.TODAY, Foot.LEFT, null, 5.5, null, null, ""));
    w.athletes().erase(bo.id());
    assertThat(w.longJumps().longJumps(bo.id())).as("erased with the athlete: " + others.id()).isEmpty();
    assertThat(w.longJumps().removeLongJump(ada.id(), one.id())).contains(one);
    assertThat(w.longJumps().longJumps(ada.id())).containsExactly(two);
  }

  /** The same log of the two events, the long jump's foot 20 cm further back: each tells of its own only. */
  @Test
  void theTwoEventsAreNeverMixed() {
    for (int i = 0; i < 8; i++) {
      double off = .01 * i;
      w.boardLog().add(new GapEntry(0, ada.id(), Fixtures.TODAY, .05 + off, 0, 12.1 - off, ""));
      w.boardLog().add(new GapEntry(0, ada.id(), Fixtures.TODAY, Event.LONG_JUMP, .25 + off, 0, 5.6 - off, ""));
      w.runThroughs().add(new RunThroughEntry(0, ada.id(), Fixtures.TODAY, RunThrough.toGap(12, 24, .05 + off, null, null), ""));
      w.runThroughs().add(new RunThroughEntry(0, ada.id(), Fixtures.TODAY, Event.LONG_JUMP, RunThrough.toGap(16, 33, .25 + off, null, null), ""));
    }
    var triple = w.aimDesk().answer(ada, null, 6);
    var lng = w.aimDesk().answer(ada, Event.LONG_JUMP, null, 6);
    assertThat(triple.seen()).hasSize(8);
    assertThat(lng.board().mean_m().p50() - triple.board().mean_m().p50()).isBetween(.17, .22);
    assertThat(Objects.requireNonNull(lng.effective()).mean_m().p50()).isBetween(5.8, 5.9);
    assertThat(w.approachDesk().answer(ada, null, null, .1).plan().steps()).isEqualTo(12);
    assertThat(w.approachDesk().answer(ada, Event.LONG_JUMP, null, null, .1).plan().steps()).isEqualTo(16);
    assertThat(w.approachDesk().answer(ada, Event.LONG_JUMP, null, null, .1).runs()).hasSize(8).allMatch(r -> r.event() == Event.LONG_JUMP);
  }

  /** With the same form and no mark yet, the decathlon's attempts are aimed for more carefully than those of the event alone. */
  @Test
  void inACombinedEventTheNextAttemptIsForPoints() {
    for (int i = 0; i < 12; i++) {
      w.boardLog().add(new GapEntry(0, ada.id(), Fixtures.TODAY, Event.LONG_JUMP, .05 + .02 * i, 0, 5.7 + .04 * (i % 4), ""));
    }
    MeetSheet part = w.meets().add(decathlon());
    MeetSheet alone =
        w.meets().add(MeetSheet.of("Invented open", Fixtures.TODAY, BoardDistance.of(Event.LONG_JUMP).get(0), Scoring.LONG_JUMP_MEN, new MeetRules(
            Event.LONG_JUMP, null, 3, 3, 8, MeetRules.DEFAULT.order(), MeetRules.DEFAULT.measure(), 60)));
    w.meets().enter(part.id(), new Entrant(0, ada.id(), ada.name()));
    w.meets().enter(alone.id(), new Entrant(0, ada.id(), ada.name()));
    MeetAim points = w.meetDesk().aim(w.meets().byId(part.id()).orElseThrow(), ada);
    MeetAim longest = w.meetDesk().aim(w.meets().byId(alone.id()).orElseThrow(), ada);
    assertThat(points.purpose()).isEqualTo("the most points of the decathlon");
    assertThat(points.words(LengthUnit.METRES)).contains("foul chance");
    assertThat(Objects.requireNonNull(points.advice()).aim_m()).isGreaterThan(Objects.requireNonNull(longest.advice()).aim_m());
  }

  @Test
  void anEventWithAttemptsStaysAndOthersAttemptsAreRefused() {
    MeetSheet meet = w.meets().add(decathlon());
    Entrant who = w.meets().enter(meet.id(), new Entrant(0, ada.id(), ada.name()));
    assertThatThrownBy(() -> w.meets().add(meet.id(), who.id(), Attempt.valid(ada.name(), 1, 12), ""))
        .isInstanceOf(RefusedException.class).hasMessageContaining("triple jump");
    w.meets().add(meet.id(), who.id(), Attempt.valid(Event.LONG_JUMP, ada.name(), 1, 6), "");
    MeetSheet other = new MeetSheet(meet.id(), "x", Fixtures.TODAY, "club", 9, null, MeetRules.DEFAULT, List.of(), List.of());
    assertThatThrownBy(() -> w.meets().update(other)).isInstanceOf(RefusedException.class).hasMessageContaining("long jump").hasMessageContaining("stays");
    assertThat(w.meets().byId(meet.id()).orElseThrow().event()).isEqualTo(Event.LONG_JUMP);
  }

  /** A long jump is one contact of the foot it was noted for, a triple jump three (worked). */
  @Test
  void aLongJumpIsOneContactOfItsFoot() {
    w.longJumps().add(jump(true));
    w.longJumps().add(jump(false));
    w.boardLog().add(new GapEntry(0, ada.id(), Fixtures.TODAY, Event.LONG_JUMP, .1, 0, 5.9, ""));
    var day = Objects.requireNonNull(w.workLog.since(List.of(ada), Fixtures.TODAY).get(ada.id())).get(0);
    assertThat(day.work().stream().mapToInt(x -> x.contacts()).sum()).as("the board's is one of the two measured").isEqualTo(2);
    assertThat(day.work().stream().mapToInt(x -> x.contacts(Foot.LEFT)).sum()).isEqualTo(1);
    assertThat(w.workLog.first(List.of(ada))).containsEntry(ada.id(), Fixtures.TODAY);
  }

  /** Run-throughs whose last step is 1.90 m from a toe 8 cm behind the line: the second last contact falls at 1.98 m (worked). */
  @Test
  void theSecondLastContactHasItsTape() {
    for (int i = 0; i < 12; i++) {
      List<Double> at = List.of(Double.NaN, Double.NaN, 6.18, 4.13, 1.98, .08);
      w.runThroughs().add(new RunThroughEntry(0, ada.id(), Fixtures.TODAY, Event.LONG_JUMP, new RunThrough(6, 10.6, at, null, null), ""));
    }
    assertThat(w.approachDesk().answer(ada, Event.LONG_JUMP, null, null, .08).secondLast_m().p50()).isBetween(1.95, 2.01);
  }
}
