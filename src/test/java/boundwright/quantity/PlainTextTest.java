package boundwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** Against the characters that are named one by one: Unicode's own lists (published: Unicode Standard chapters 23.1, 23.7 and UAX 9). */
class PlainTextTest {
  @Test
  void theCharactersThatBreakPaperAreRefusedAndNamesAreNot() {
    for (int c = 0; c < 0x20; c++) {
      assertThat(PlainText.isPlain("A" + (char) c + "b")).as("U+%04X", c).isEqualTo(c == '\t' || c == '\n' || c == '\r');
    }
    for (int c : new int[] {0x7F, 0x80, 0x85, 0x9F, 0x202A, 0x202B, 0x202C, 0x202D, 0x202E, 0x2066, 0x2067, 0x2068, 0x2069, 0xFDD0, 0xFFFE, 0xFFFF, 0x1FFFE, 0x10FFFF}) {
      assertThat(PlainText.isPlain("A" + Character.toString(c))).as("U+%04X", c).isFalse();
    }
    assertThat(PlainText.isPlain("A\uD800b")).isFalse();
    for (String name : new String[] {"Zoë Brandel", "Željko", "Ada O’Fenn", "אורה", "عائشة", "Nguyễn Ánh", "李明", "Ada 🏃", "a‍b", "\u200FA"}) {
      assertThat(PlainText.checked(name)).isEqualTo(name);
    }
    assertThat(PlainText.shown("A\u0085b\uFFFFc")).isEqualTo("A\uFFFDb\uFFFDc");
    assertThatThrownBy(() -> PlainText.checked("Ada\u202E")).isInstanceOf(RefusedException.class).hasMessageContaining("U+202E");
  }
}
