package boundwright.season.ladder;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.readiness.GateRules;
import boundwright.readiness.TimeHere;
import java.time.LocalDate;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class StretchTest {
  /** Against the gate's own count (another part of this program, written before it): own output. */
  @Test
  void theLeastStayOfSimulatedSeasonsIsThatOfTheGate() {
    GateRules.Stay rules = GateRules.DEFAULT.stay();
    LocalDate first = LocalDate.of(2026, 10, 5);
    int over = 0;
    for (long seed = 1; seed <= 400; seed++) {
      Random random = new Random(seed);
      int steps = 2 * random.nextInt(6);
      boolean known = random.nextInt(4) == 0;
      Set<LocalDate> days = new TreeSet<>();
      ClimbCourse.Stretch stretch = new ClimbCourse.Stretch();
      int gap = 1 + random.nextInt(2 * rules.breakDays());
      for (int day = 0; day < 200; day++) {
        if (random.nextInt(gap) == 0) {
          days.add(first.plusDays(day));
          stretch.tell(day, rules.days(steps), rules.breakDays());
        }
        boolean met = TimeHere.of(days, steps, known, rules, first.plusDays(day)).met();
        assertThat(stretch.over(day, rules.days(steps), rules.breakDays(), known)).as("seed %d, day %d of %s", seed, day, days).isEqualTo(met);
        over += met ? 1 : 0;
      }
    }
    assertThat(over).as("days on which it is over").isBetween(8_000, 72_000);
  }
}
