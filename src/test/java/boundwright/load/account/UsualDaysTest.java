package boundwright.load.account;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Usual days: the house's own rule, three times or more. */
class UsualDaysTest {
  private static final LocalDate MONDAY = LocalDate.of(2026, 3, 2);

  private static DayLoad day(LocalDate date, boolean bounded) {
    return new DayLoad(date, bounded ? List.of(new Work(Sequence.parse("RL x5"), 1, 0, Surface.GRASS)) : List.of());
  }

  @Test
  void threeTimesAreAHabitTwiceAreNot() {
    List<DayLoad> days = new ArrayList<>();
    for (int week = 0; week < 4; week++) {
      days.add(day(MONDAY.plusWeeks(week), true));
      days.add(day(MONDAY.plusWeeks(week).plusDays(1), week < 2));
      days.add(day(MONDAY.plusWeeks(week).plusDays(3), week < 3));
    }
    assertThat(UsualDays.of(days)).as("a day without a contact is no coming").isEqualTo(Map.of(DayOfWeek.MONDAY, 4, DayOfWeek.THURSDAY, 3));
    assertThat(UsualDays.of(List.of())).isEmpty();
  }
}
