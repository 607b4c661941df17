package boundwright.load;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LastWeek;
import boundwright.load.account.OtherWork;
import boundwright.load.account.Work;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

/** The room that is left is the guard turned round: laws on seeded random days, and the guard itself as the reference. */
class RoomTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 20);
  private static final List<Integer> STEPS = List.of(0, 4, 6, 12);

  private static Work random(Random r) {
    int steps = 2 * r.nextInt(7);
    return switch (r.nextInt(5)) {
      case 0 -> Work.jump(Work.Kind.MEET_JUMP, Foot.RIGHT, 16, Surface.TRACK, List.of());
      case 1 -> Work.runThrough(Foot.LEFT, 14, Surface.TRACK);
      case 2 -> new Work(Sequence.parse("R x6"), 1 + r.nextInt(3), steps, Surface.GRASS);
      case 3 -> new Work(Sequence.parse("RRL x2"), 1 + r.nextInt(3), steps, Surface.TRACK);
      default -> new Work(Sequence.parse("RL x5"), 1 + r.nextInt(3), steps, Surface.GRASS);
    };
  }

  private static OtherWork other(Random r) {
    OtherWork.Kind kind = List.of(OtherWork.Kind.values()).get(r.nextInt(5));
    return new OtherWork(0, 1, TODAY, kind, 10 + r.nextInt(40), kind == OtherWork.Kind.BOXES ? 0.3 : 5);
  }

  private static DayLoad more(DayLoad day, Random r) {
    List<OtherWork> all = new ArrayList<>(day.other());
    if (r.nextBoolean()) {
      all.add(other(r));
      return new DayLoad(day.date(), day.work(), all);
    }
    return day.with(List.of(random(r)));
  }

  private static History history(Random r) {
    List<DayLoad> days = new ArrayList<>();
    for (int ago = 40; ago >= 1; ago--) {
      if (r.nextInt(3) == 0) {
        List<Work> work = new ArrayList<>();
        for (int i = 0; i <= r.nextInt(8); i++) {
          work.add(random(r));
        }
        days.add(new DayLoad(TODAY.minusDays(ago), work));
      }
    }
    History log = History.of(days);
    return r.nextInt(4) == 0 ? new History(days, log.first(), new LastWeek(TODAY.minusDays(20), r.nextInt(200))) : log;
  }

  /** Adding work, today or in the six days before, never raises the room left, nor softens the answer. */
  @RepeatedTest(60)
  void addingWorkNeverRaisesTheRoomLeft(RepetitionInfo info) {
    long seed = 9000L + info.getCurrentRepetition();
    Random r = new Random(seed);
    Guard guard = new Guard(GuardLimits.DEFAULT, List.of(Season.values()).get(r.nextInt(3)));
    Level level = List.of(Level.values()).get(r.nextInt(4));
    LegCare care = r.nextInt(3) == 0 ? new LegCare(true, TODAY.minusWeeks(r.nextInt(40)), List.of(), List.of()) : LegCare.NONE;
    History history = history(r);
    DayLoad today = new DayLoad(TODAY, List.of());
    List<Room> before = guard.room(level, care, history, today, STEPS);
    Answer answer = Answer.ALLOWED;
    for (int i = 0; i < 6; i++) {
      if (i % 3 == 2) {
        history = earlier(history, r);
      } else {
        today = more(today, r);
      }
      List<Room> now = guard.room(level, care, history, today, STEPS);
      for (int s = 0; s < STEPS.size(); s++) {
        assertThat(now.get(s).contacts()).as("seed %d, step %d, %s", seed, i, STEPS.get(s)).isLessThanOrEqualTo(before.get(s).contacts());
        assertThat(now.get(s).beforeRefused()).as("seed %d, step %d", seed, i).isLessThanOrEqualTo(before.get(s).beforeRefused());
        assertThat(now.get(s).least()).as("seed %d, step %d", seed, i).isLessThanOrEqualTo(now.get(s).contacts());
        assertThat(now.get(s).most()).as("seed %d, step %d", seed, i).isGreaterThanOrEqualTo(now.get(s).contacts());
      }
      before = now;
      if (i % 3 != 2) {
        Answer after = guard.judge(level, care, history, today).answer();
        assertThat(after).as("seed %d, step %d", seed, i).isGreaterThanOrEqualTo(answer);
        answer = after;
      }
    }
  }

  private static History earlier(History history, Random r) {
    List<DayLoad> days = new ArrayList<>(history.days());
    LocalDate date = TODAY.minusDays(1 + r.nextInt(6));
    DayLoad old = days.stream().filter(d -> d.date().equals(date)).findFirst().orElse(new DayLoad(date, List.of()));
    days.remove(old);
    days.add(old.with(List.of(random(r))));
    days.sort((a, b) -> a.date().compareTo(b.date()));
    return new History(days, history.first(), history.lastWeek());
  }

  /** The guard itself is the reference: the room told is allowed, one contact more is not. */
  @RepeatedTest(20)
  void theRoomIsTheGuardTurnedRound(RepetitionInfo info) {
    long seed = 700L + info.getCurrentRepetition();
    Random r = new Random(seed);
    Guard guard = new Guard(GuardLimits.DEFAULT, Season.OFF_SEASON);
    History history = history(r);
    DayLoad today = new DayLoad(TODAY, List.of());
    // twenty contacts begun on each foot in turn load both legs as the room counts twenty contacts, so these can be asked of the guard
    Room room = guard.room(Level.ADVANCED, LegCare.NONE, history, today, List.of(0)).get(0);
    int twenties = room.contacts() / 20;
    assertThat(counts(guard, history, today.with(twenties(twenties)))).as("seed %d", seed).isEqualTo(Answer.ALLOWED);
    assertThat(counts(guard, history, today.with(twenties(twenties + 1)))).as("seed %d", seed).isNotEqualTo(Answer.ALLOWED);
  }

  private static List<Work> twenties(int n) {
    return n == 0
        ? List.of()
        : List.of(new Work(Sequence.parse("RL x5"), n, 0, Surface.GRASS), new Work(Sequence.parse("LR x5"), n, 0, Surface.GRASS));
  }

  private static Answer counts(Guard guard, History history, DayLoad day) {
    return guard.judge(Level.ADVANCED, LegCare.NONE, history, day).findings().stream()
        .filter(f -> f.rule() != Finding.Rule.SURFACE && f.rule() != Finding.Rule.SINGLE_LEG_SERIES)
        .map(Finding::answer)
        .reduce(Answer.ALLOWED, Answer::or);
  }

  @Test
  void fewerContactsAreLeftFromMoreSteps() {
    List<DayLoad> days = new ArrayList<>();
    for (int ago = 28; ago >= 4; ago -= 4) {
      days.add(new DayLoad(TODAY.minusDays(ago), List.of(new Work(Sequence.parse("RL x5"), 8, 0, Surface.GRASS))));
    }
    Guard guard = new Guard(GuardLimits.DEFAULT, Season.PRE_SEASON);
    List<Room> rooms = guard.room(Level.INTERMEDIATE, LegCare.NONE, History.of(days), new DayLoad(TODAY, List.of()), STEPS);
    for (int i = 1; i < rooms.size(); i++) {
      assertThat(rooms.get(i).contacts()).isLessThan(rooms.get(i - 1).contacts());
    }
    assertThat(rooms.get(2).contacts()).isPositive();
    assertThat(rooms.get(2).swings()).as("from six steps the power decides").isTrue();
    assertThat(rooms.get(2).said()).isEqualTo(rooms.get(2).contacts() + " from 6 steps");
  }

  @Test
  void nothingIsLeftWhileBoundingIsStopped() {
    LegCare held = new LegCare(false, null, List.of(), List.of(new LegCare.MedicalHold(1, TODAY.minusDays(1), "physician", null, null)));
    Guard guard = new Guard(GuardLimits.DEFAULT, Season.PRE_SEASON);
    assertThat(guard.room(Level.ADVANCED, held, History.NONE, new DayLoad(TODAY, List.of()), STEPS)).allSatisfy(r -> assertThat(r.beforeRefused()).isZero());
  }
}
