package boundwright.footfall;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.quantity.RefusedException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected letters: worked by hand from the rules in {@link SequenceParser}'s Javadoc. */
class SequenceParserTest {
  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "R|R",
        "l|L",
        "RRL RRL|RRLRRL",
        "RRL x3|RRLRRLRRL",
        "R R L x3|RRLRRLRRL",
        "rrlx3|RRLRRLRRL",
        "RRL X 3|RRLRRLRRL",
        "RRL ×3|RRLRRLRRL",
        "(RRL)x3|RRLRRLRRL",
        "R x10|RRRRRRRRRR",
        "RL x5|RLRLRLRLRL",
        "RR, L x3|RRLLL",
        "R x2 L x2|RRLL",
        "(RL x2 R)x3|RLRLRRLRLRRLRLR",
        "(R)(L)x2|RLL",
        "R (L) R|RLR",
        "RRL x1|RRL",
        "RL x30|RLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRLRL",
      })
  void readsWhatACoachWrites(String written, String letters) {
    assertThat(Sequence.parse(written).letters()).isEqualTo(letters);
  }

  @ParameterizedTest(name = "{0}: character {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "RXL|2|X|is neither R nor L",
        "RRQ|3|Q|is not a foot",
        "x3|1|x|repeats nothing",
        "RRL x|5|x|needs a number",
        "RRL x0|6|0|repeats 0 times",
        "RRL x21|6|2|63 contacts; the limit is 60",
        "R x999999999999|4|9|far too many",
        "RRL)|4|)|never opened",
        "(RRL|1|(|never closed",
        "R()x3|2|(|empty bracket",
        "R, x2|4|x|repeats nothing",
        "R\tQ|3|Q|is not a foot",
        "R-L|2|-|is not a foot",
      })
  void pointsAtTheCharacterThatIsWrong(String written, int character, String shown, String why) {
    assertThatThrownBy(() -> Sequence.parse(written))
        .isInstanceOf(RefusedException.class)
        .hasMessageStartingWith("Character " + character + " ('" + shown + "')")
        .hasMessageContaining(why)
        .hasMessageEndingWith("\n  " + " ".repeat(character - 1) + "^");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "\t\n"})
  void refusesNoContact(String written) {
    assertThatThrownBy(() -> Sequence.parse(written))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("0 contacts")
        .hasMessageContaining("1 to 60");
  }

  @ParameterizedTest
  @ValueSource(strings = {",", ", ,"})
  void refusesCommasAlone(String written) {
    assertThatThrownBy(() -> Sequence.parse(written))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("no contact");
  }

  @Test
  void takesSixtyContactsAndRefusesSixtyOne() {
    assertThat(Sequence.parse("R".repeat(60)).size()).isEqualTo(60);
    assertThat(Sequence.parse("R x30 L x30").size()).isEqualTo(60);
    assertThatThrownBy(() -> Sequence.parse("R".repeat(61)))
        .isInstanceOf(RefusedException.class)
        .hasMessageStartingWith("Character 61 ('R')")
        .hasMessageContaining("61 contacts; the limit is 60");
    assertThatThrownBy(() -> Sequence.parse("R x30 L x31"))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("61 contacts; the limit is 60");
  }

  @Test
  void refusesTextThatNobodyWrites() {
    assertThatThrownBy(() -> Sequence.parse("R ".repeat(201)))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("402 characters")
        .hasMessageContaining("400");
    assertThatThrownBy(() -> Sequence.parse("(".repeat(12) + "R" + ")".repeat(12)))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("brackets");
  }

  @Test
  void namesAnOutsideCharacterWhole() {
    // a character beyond 16 bits must not be cut in half in the sentence
    assertThatThrownBy(() -> Sequence.parse("R\uD83D\uDC5FL"))
        .isInstanceOf(RefusedException.class)
        .hasMessageStartingWith("Character 2 ('\uD83D\uDC5F')");
  }

  @ParameterizedTest(name = "{0} is kept as {1}")
  @CsvSource(
      delimiter = '|',
      value = {"  rrl   X 3 |RRL x3", "RRL×3|RRLx3", "r r l|R R L", "RRL x3|RRL x3"})
  void keepsTheTextTidied(String written, String kept) {
    assertThat(Sequence.parse(written).text()).isEqualTo(kept);
  }

  @ParameterizedTest
  @ValueSource(strings = {"RRL x3", "RR, L x3", "(RL x2 R)x3", "R(L)R", "r X 10", "RL × 2"})
  void theTidiedTextReadsTheSame(String written) {
    Sequence once = Sequence.parse(written);
    assertThat(Sequence.parse(once.text())).isEqualTo(once);
  }
}
