package boundwright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.Test;

/** A few of the random schedules that {@code bench/schedules} runs by the hundred. */
class RunwaySchedulesTest {
  @Test
  void whateverHappensEveryTapIsThereOnceInOrderAndTheMarksAgree() throws IOException {
    try (RunwaySchedules schedules = new RunwaySchedules()) {
      for (long seed = 1; seed <= 6; seed++) {
        assertThat(schedules.run(seed, 9, false)).as("seed " + seed).startsWith("ok");
      }
    }
  }
}
