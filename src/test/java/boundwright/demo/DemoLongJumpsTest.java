package boundwright.demo;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.footfall.RunJumps;
import boundwright.jump.Event;
import boundwright.jump.takeoff.BestAngle;
import boundwright.jump.takeoff.LongJumpAnswer;
import boundwright.meet.MeetSheet;
import boundwright.runway.CoachSettings;
import boundwright.store.Workbench;
import boundwright.takeoffs.RunJumpMarks;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The invented long jumper shows each answer of the long jump, and is marked as invented. */
class DemoLongJumpsTest {
  @TempDir Path dir;

  @Test
  void theInventedLongJumperShowsEveryAnswer() {
    try (Workbench w = Workbench.open(dir, Clock.fixed(Instant.parse("2026-05-14T08:00:00Z"), ZoneOffset.UTC))) {
      DemoSquad.fill(w);
      Athlete who = w.athletes().byName(DemoLongJumps.WHO).orElseThrow();
      LongJumpAnswer a = w.longJumpDesk().answer(who);
      BestAngle best = Objects.requireNonNull(a.best());
      assertThat(a.takeOffs()).isEqualTo(12);
      assertThat(best.trade().slope().p95()).as("made with a falling speed").isNegative();
      assertThat(a.worth()).hasSize(4);
      RunJumpMarks row = w.runJumpDesk().marks(who, new RunJumps(who.takeOffFoot(), 2, 3), 4, true, CoachSettings.DEFAULT);
      assertThat(row.reps()).isEqualTo(10);
      assertThat(Objects.requireNonNull(row.sand()).window()).as("marks work").isNotNull();
      assertThat(w.aimDesk().answer(who, Event.LONG_JUMP, null, 6).plan()).isNotNull();
      assertThat(w.approachDesk().answer(who, Event.LONG_JUMP, null, null, null).plan().steps()).isEqualTo(16);
      MeetSheet heptathlon = w.meets().all().stream().filter(m -> m.event() == Event.LONG_JUMP).findFirst().orElseThrow();
      assertThat(heptathlon.name()).contains("invented");
      assertThat(heptathlon.attempts()).hasSize(12);
      assertThat(w.meets().all()).filteredOn(m -> m.event() == Event.TRIPLE_JUMP).as("beside the triple jump's").isNotEmpty();
    }
  }
}
