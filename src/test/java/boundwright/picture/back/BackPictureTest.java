package boundwright.picture.back;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.footfall.Foot;
import boundwright.load.back.BackChances;
import boundwright.load.back.BackDates;
import boundwright.load.back.BackState;
import boundwright.load.back.LegBack;
import boundwright.load.back.ShortestWay;
import boundwright.load.back.Stages;
import boundwright.load.back.WayBack;
import boundwright.picture.Lettering;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.readiness.back.BackLook;
import boundwright.readiness.back.LegToday;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The path stays within its drawing at every stage, and says at each where the leg stands. */
class BackPictureTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 20);

  private static BackLook look(Stages s, Foot leg, int stage) {
    WayBack way = new WayBack(1, leg, TODAY.minusDays(30), s, 100, 28, new WayBack.Clearance("Dr Invented", TODAY.minusDays(30), true), List.of(), null);
    LegBack standing = new LegBack(leg, way.begun(), null, s, 100, stage, TODAY.minusDays(3), TODAY, null);
    BackState state = BackState.rested(stage);
    ShortestWay shortest = new ShortestWay(s);
    BackDates dates = stage >= s.count() ? null : BackDates.of(s, shortest, state, TODAY, BackChances.NONE, new Random(1));
    return new BackLook(
        new LegToday(way, standing, state, TODAY, null, null, 0, 0), List.of(), List.of(), EnumSet.allOf(DayOfWeek.class), List.of(), dates, BackChances.NONE);
  }

  @Test
  void nothingLiesOutsideAndTheStageIsMarked() {
    for (Stages s : List.of(Stages.USUAL, new Stages(0.9, 0.3), new Stages(0.3, 0.15), new Stages(0.1, 0.02))) {
      for (int stage = 0; stage <= s.count(); stage++) {
        for (Width form : Width.values()) {
          BackPicture p = BackPicture.of(look(s, stage % 2 == 0 ? Foot.RIGHT : Foot.LEFT, stage), form);
          assertThat(p.bars()).hasSize(s.count() + 1);
          assertThat(p.bars().stream().filter(b -> b.when() == BackPicture.When.NOW)).hasSize(1);
          assertThat(p.bars().stream().filter(b -> b.when() == BackPicture.When.OVER)).hasSize(stage);
          assertThat(p.bars()).allSatisfy(b -> {
            assertThat(b.x()).isGreaterThanOrEqualTo(0);
            assertThat(b.x() + b.width()).isLessThanOrEqualTo(p.width() + 0.1);
            assertThat(b.y()).isGreaterThan(10);
          });
          for (Lettering w : p.words()) {
            assertThat(w.left()).as("%s, stage %d: %s", s, stage, w.said()).isGreaterThanOrEqualTo(-0.2);
            assertThat(w.right()).as("%s, stage %d: %s", s, stage, w.said()).isLessThanOrEqualTo(p.width() + 0.2);
          }
          assertThat(p.filled()).isEqualTo(stage % 2 == 0);
          assertThat(p.said()).contains(stage == s.count() ? "Former week: 100 %, now" : "Stage " + (stage + 1) + ": ");
        }
      }
    }
  }
}
