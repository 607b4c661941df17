package boundwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Against the exact definitions of the international yard and pound agreement of 1959 (published): 1 yd = 0.9144 m, so
 * 1 ft = 0.3048 m and 1 in = 0.0254 m. The other examples are worked from these two.
 */
class LengthUnitTest {
  private static final long SEED = 1959L;

  @Test
  void footAndInchAreTheAgreedOnes() {
    assertThat(3 * LengthUnit.FOOT_M).isCloseTo(0.9144, within(1e-15));
    assertThat(12 * LengthUnit.INCH_M).isCloseTo(LengthUnit.FOOT_M, within(1e-15));
  }

  @ParameterizedTest
  @EnumSource(LengthUnit.class)
  void whatIsWrittenReadsBackWithinHalfAStep(LengthUnit unit) {
    Random random = new Random(SEED);
    for (int i = 0; i < 5000; i++) {
      double metres = random.nextDouble() * 120 - 10;
      String written = unit.write(metres);
      assertThat(unit.read("length", written))
          .as("seed %d, %s m as %s", SEED, metres, written)
          .isCloseTo(metres, within(unit.step() / 2 + 1e-9));
      assertThat(unit.read("length", written)).as(written).isCloseTo(unit.round(metres), within(1e-9));
    }
  }

  /** Short lengths of either sign, on half steps too: what is written reads back as exactly what was rounded, and mirrors. */
  @ParameterizedTest
  @EnumSource(LengthUnit.class)
  void aLengthAndItsNegativeAreWrittenAlike(LengthUnit unit) {
    Random random = new Random(SEED);
    for (int i = 0; i < 5000; i++) {
      double metres = i % 2 == 0 ? (random.nextDouble() - 0.5) * 1.4 : (random.nextInt(400) - 200) * unit.step() / 2;
      String written = unit.write(metres);
      String seen = "seed " + SEED + ", " + metres + " m as " + written;
      assertThat(unit.read("gap", written)).as(seen).isCloseTo(unit.round(metres), within(1e-9));
      assertThat(unit.round(unit.round(metres))).as(seen).isEqualTo(unit.round(metres));
      assertThat(written).as(seen).doesNotContain("-0 ft").doesNotContain("-0 in").doesNotContain("-0.00");
      if (unit.round(metres) != 0) {
        assertThat(unit.write(-metres)).as(seen).isEqualTo(metres < 0 ? written.substring(1) : "-" + written);
      }
      double small = unit.readSmall("gap", unit.writeSmall(metres));
      assertThat(small).as(seen + ", small as " + unit.writeSmall(metres)).isCloseTo(Math.abs(metres), within(unit.step() / 2 + 1e-9));
    }
  }

  /** Either unit is understood in both settings once it is written out. */
  @ParameterizedTest
  @EnumSource(LengthUnit.class)
  void readsTheOtherUnitWhenItIsWrittenOut(LengthUnit unit) {
    Random random = new Random(SEED);
    LengthUnit other = unit == LengthUnit.METRES ? LengthUnit.FEET_INCHES : LengthUnit.METRES;
    for (int i = 0; i < 1000; i++) {
      double metres = random.nextDouble() * 90;
      assertThat(unit.read("length", other.write(metres)))
          .as("seed %d, %s", SEED, other.write(metres))
          .isCloseTo(metres, within(other.step() / 2 + 1e-9));
    }
  }

  @ParameterizedTest(name = "{0} m is {1}")
  @CsvSource({
    "0, 0 in",
    "0.3048, 1 ft 0 in",
    "0.0254, 1 in",
    "0.00635, 1/4 in",
    "0.15875, 6 1/4 in",
    "0.32385, 1 ft 0 3/4 in",
    "12.35075, 40 ft 6 1/4 in",
    "9.7536, 32 ft 0 in",
    "3.6512, 11 ft 11 3/4 in",
    "3.6557, 12 ft 0 in",
    "-0.0127, -1/2 in",
    "-0.01905, -3/4 in",
    "-0.4572, -1 ft 6 in",
    "-0.001, 0 in",
    "-0.003175, -1/4 in",
  })
  void writesFeetAndInches(double metres, String written) {
    assertThat(LengthUnit.FEET_INCHES.write(metres)).isEqualTo(written);
  }

  @ParameterizedTest(name = "{0} m is {1}")
  @CsvSource({"12.345, 12.35 m", "12.344, 12.34 m", "0, 0.00 m", "-0.004, 0.00 m", "-0.005, -0.01 m", "-1.5, -1.50 m", "1.005, 1.01 m", "-1.005, -1.01 m"})
  void writesMetres(double metres, String written) {
    assertThat(LengthUnit.METRES.write(metres)).isEqualTo(written);
  }

  @ParameterizedTest(name = "{0} in feet and inches")
  @CsvSource(
      delimiter = '|',
      value = {
        "40 ft 6 1/4 in|12.35075",
        "40' 6\"|12.3444",
        "40'6|12.3444",
        "40-6|12.3444",
        "40-06.25|12.35075",
        "40' 6''|12.3444",
        "40 ft 6 1/4|12.35075",
        "6 in|0.1524",
        "6\"|0.1524",
        "¾ in|0.01905",
        "6¼ in|0.15875",
        "40|12.192",
        "40.5|12.3444",
        "40 ft|12.192",
        "1/2 in|0.0127",
        "12.35 m|12.35",
        "35 cm|0.35",
        "-1 ft 6 in|-0.4572",
      })
  void readsWhatACoachWritesInFeet(String text, double metres) {
    assertThat(LengthUnit.FEET_INCHES.read("mark", text)).isCloseTo(metres, within(1e-9));
  }

  @ParameterizedTest(name = "{0} in metres")
  @CsvSource(
      delimiter = '|',
      value = {"12.35|12.35", "12,35|12.35", "12.35m|12.35", "35 cm|0.35", "40 ft|12.192", "6 1/4 in|0.15875", "-0.5|-0.5", "+2|2"})
  void readsWhatACoachWritesInMetres(String text, double metres) {
    assertThat(LengthUnit.METRES.read("mark", text)).isCloseTo(metres, within(1e-9));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "abc", "12.35.1", "ft", "'", "in", "\"", "-", "- ft", "1/0 in", "12 m 3", "6 1/4", "40 6", "1/4", "½", "1e3", "NaN", "Infinity"})
  void refusesWhatIsNoLengthInEitherUnit(String text) {
    for (LengthUnit unit : LengthUnit.values()) {
      assertThatThrownBy(() -> unit.read("landing", text))
          .as("'%s' in %s", text, unit.label())
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining("landing")
          .hasMessageContaining("is not a length");
    }
  }

  @Test
  void writesASpread() {
    assertThat(LengthUnit.METRES.writeSpread(0.18)).isEqualTo("± 18 cm");
    assertThat(LengthUnit.FEET_INCHES.writeSpread(0.1778)).isEqualTo("± 7 in");
  }

  @Test
  void aShortLengthIsReadInCentimetresOrInchesAndWrittenSo() {
    assertThat(LengthUnit.METRES.readSmall("board gap", "7")).isCloseTo(0.07, within(1e-12));
    assertThat(LengthUnit.METRES.readSmall("board gap", "-7,5")).isCloseTo(-0.075, within(1e-12));
    assertThat(LengthUnit.METRES.readSmall("board gap", "0.07 m")).isCloseTo(0.07, within(1e-12));
    assertThat(LengthUnit.METRES.readSmall("board gap", "+12")).isCloseTo(0.12, within(1e-12));
    assertThat(LengthUnit.FEET_INCHES.readSmall("board gap", "3 1/2")).isCloseTo(3.5 * 0.0254, within(1e-12));
    assertThat(LengthUnit.FEET_INCHES.readSmall("board gap", "1/2")).isCloseTo(0.5 * 0.0254, within(1e-12));
    assertThat(LengthUnit.FEET_INCHES.readSmall("board gap", "-3")).isCloseTo(-3 * 0.0254, within(1e-12));
    assertThat(LengthUnit.FEET_INCHES.readSmall("board gap", "7 cm")).isCloseTo(0.07, within(1e-12));
    assertThat(LengthUnit.METRES.writeSmall(-0.07)).isEqualTo("7 cm");
    assertThat(LengthUnit.FEET_INCHES.writeSmall(3.5 * 0.0254)).isEqualTo("3 1/2 in");
  }

  @Test
  void aShortLengthThatMayBeAnotherUnitIsRefusedInWords() {
    assertThatThrownBy(() -> LengthUnit.METRES.readSmall("board gap", "0.07")).isInstanceOf(RefusedException.class).hasMessageContaining("either centimetres or metres");
    assertThatThrownBy(() -> LengthUnit.METRES.readSmall("board gap", "")).isInstanceOf(RefusedException.class).hasMessageContaining("is not a length");
    assertThatThrownBy(() -> LengthUnit.FEET_INCHES.readSmall("board gap", "x")).isInstanceOf(RefusedException.class);
  }
}
