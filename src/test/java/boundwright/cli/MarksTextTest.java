package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.quantity.LengthUnit;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MarksTextTest {
  @ParameterizedTest
  @CsvSource({"0.9,90 in 100", "0.994,99 in 100", "0.9999,over 99 in 100", "1,over 99 in 100", "0,under 1 in 100", "0.004,under 1 in 100"})
  void nobodyPromisesNeverOrAlways(double chance, String said) {
    assertThat(MarksText.chance(chance)).isEqualTo(said);
  }

  @Test
  void aFigureKeepsItsUnitOnTheSameLine() {
    StringWriter out = new StringWriter();
    String text = "The window lies from 15 ft 1 1/2 in to 17 ft 0 1/2 in and that is 0.59 m wide, 90 % of 3 cm. ".repeat(12);
    new MarksText(new PrintWriter(out, true), LengthUnit.METRES).wrapped("From", text);
    assertThat(out.toString().lines()).hasSizeGreaterThan(5);
    assertThat(out.toString().lines().map(String::strip))
        .noneMatch(line -> line.matches("(m|cm|ft|in|%|1/2)\\b.*"))
        .allMatch(line -> line.length() <= 88);
    assertThat(out.toString().replaceAll("\\s+", " ").strip()).isEqualTo("From " + text.strip());
  }
}
