package boundwright.footfall;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Repeated take-offs: which foot takes off when. Feet worked by hand on paper: a take-off lands on the other foot, running steps alternate. */
class RunJumpsTest {
  private static String letters(List<Foot> feet) {
    return feet.stream().map(f -> String.valueOf(f.letter())).collect(Collectors.joining());
  }

  /** Worked: off L land R, run L, off R land L, run R, off L: run, run, jump changes the foot, and is a take-off every third contact. */
  @ParameterizedTest
  @CsvSource({
    "2, 4, LRLRLRLRLR, LRLR, 3", // off at contacts 1, 4, 7, 10
    "4, 3, LRLRLRLRLRL, LRL, 5", // pop-ups every fifth contact: 1, 6, 11
    "3, 3, LRLRLRLRL, LLL, 4", // one more running step keeps the foot: 1, 5, 9
    "1, 4, LRLRLRL, LLLL, 2", // land, and off the next: 1, 3, 5, 7
  })
  void feetAsWorkedByHand(int running, int jumps, String contacts, String takeOffs, int every) {
    RunJumps p = new RunJumps(Foot.LEFT, running, jumps);
    assertThat(letters(p.contacts())).isEqualTo(contacts);
    StringBuilder off = new StringBuilder();
    for (int j = 1; j <= jumps; j++) {
      off.append(p.foot(j).letter());
      assertThat(p.foot(j)).isEqualTo(p.contacts().get((j - 1) * every));
      if (j < jumps) {
        assertThat(p.landing(j)).as("the contact after the take-off").isEqualTo(p.contacts().get((j - 1) * every + 1));
      }
    }
    assertThat(off.toString()).isEqualTo(takeOffs);
    assertThat(p.every()).isEqualTo(every);
    assertThat(p.count(Foot.LEFT)).isEqualTo((int) takeOffs.chars().filter(c -> c == 'L').count());
    assertThat(p.count(Foot.LEFT) + p.count(Foot.RIGHT)).isEqualTo(jumps);
  }

  @Test
  void namesForACoach() {
    assertThat(new RunJumps(Foot.LEFT, 2, 4).title()).isEqualTo("Run, run, jump x4");
    assertThat(new RunJumps(Foot.LEFT, 1, 3).title()).isEqualTo("Run, jump x3");
    assertThat(new RunJumps(Foot.RIGHT, 4, 3).title()).isEqualTo("4 running steps, jump x3");
    assertThat(new RunJumps(Foot.LEFT, 2, 5).said())
        .isEqualTo("A take-off every third contact, feet in turn, first the left: 2 right, 3 left. Each lands on the free leg.");
    assertThat(new RunJumps(Foot.RIGHT, 3, 5).said()).contains("every 4th contact, always off the right: 5 right, 0 left");
  }

  @Test
  void whatIsAnotherDrillIsRefusedWithTheWayOut() {
    assertThatThrownBy(() -> new RunJumps(Foot.LEFT, 0, 4)).isInstanceOf(RefusedException.class).hasMessageContaining("of 0").hasMessageContaining("RL x4");
    assertThatThrownBy(() -> new RunJumps(Foot.LEFT, 9, 4)).isInstanceOf(RefusedException.class).hasMessageContaining("1 to 8");
    assertThatThrownBy(() -> new RunJumps(Foot.LEFT, 2, 1)).isInstanceOf(RefusedException.class).hasMessageContaining("run-run-jump");
    assertThatThrownBy(() -> new RunJumps(Foot.LEFT, 2, 13)).isInstanceOf(RefusedException.class).hasMessageContaining("2 to 12");
  }
}
