package boundwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Numbers as they are typed: point and comma are both common practice; with a point as the Java machine reads them (reference library). */
class WrittenNumberTest {
  @Test
  void aPointAndACommaAreTheSame() {
    for (String one : List.of("1.5", "+1.5", "-0.25", ".5", "8", "8.", "-.5", "007", " 12.50 ")) {
      assertThat(WrittenNumber.read(one)).as(one).hasValue(Double.parseDouble(one));
      assertThat(WrittenNumber.read(one.replace('.', ','))).as(one).hasValue(Double.parseDouble(one));
    }
  }

  @Test
  void whatIsNoNumberIsEmpty() {
    for (String none : List.of("", " ", ".", ",", "-", "1.2.3", "1,2.3", "1e3", "0x1p3", "1.5f", "1d", "NaN", "Infinity", "--1", "1 5", "five")) {
      assertThat(WrittenNumber.read(none)).as(none).isEmpty();
    }
  }
}
