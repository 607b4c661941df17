package boundwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Days as they are typed: year first by ISO 8601; dots and slashes as in common practice. */
class WrittenDayTest {
  private static final LocalDate DAY = LocalDate.of(2012, 7, 30);

  @Test
  void yearFirstAndDotsAreOneDay() {
    assertThat(List.of("2012-07-30", " 30.07.2012 ", "30.7.2012", "30. 7. 2012", "30/07/2012", "7/30/2012").stream().map(WrittenDay::read)).containsOnly(DAY);
    assertThat(WrittenDay.read("3.11.2012")).as("dots: day first").isEqualTo(LocalDate.of(2012, 11, 3));
    assertThat(WrittenDay.read("5/5/2012")).as("the same either way").isEqualTo(LocalDate.of(2012, 5, 5));
  }

  @Test
  void whatCanBeTwoDaysIsRefusedWithBoth() {
    assertThatThrownBy(() -> WrittenDay.read("03/11/2012"))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("'03/11/2012' can be two: day first it is 2012-11-03, month first 2012-03-11");
  }

  @Test
  void whatIsNoDayIsRefused() {
    for (String no : List.of("", "soon", "30.13.2012", "31.4.2012", "13/13/2012", "2012-02-30", "30.07.12", "30-07-2012", "9".repeat(500))) {
      assertThatThrownBy(() -> WrittenDay.read(no)).as(no).isInstanceOf(RefusedException.class).hasMessageContaining("is no date").hasMessageContaining("2026-05-14");
    }
  }
}
