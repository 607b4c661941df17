package boundwright.athlete;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Expected distances: worked by hand. The names are invented. */
class NearNamesTest {
  private static final List<String> SQUAD = List.of("Orla Tamsin", "Orna Vetch", "Piet Quill", "Zoë Brandel");

  @ParameterizedTest(name = "{0} to {1}: {2}")
  @CsvSource({"abc,abc,0", "abc,acb,1", "abc,ab,1", "abc,abcd,1", "abc,axc,1", "'',abc,3", "abc,'',3", "piet,peit,1", "ca,abc,3"})
  void countsLetters(String a, String b, int changes) {
    assertThat(NearNames.letters(a, b)).isEqualTo(changes);
    assertThat(NearNames.letters(b, a)).isEqualTo(changes);
  }

  @Test
  void findsAMistypedWordOfAName() {
    assertThat(NearNames.of("Peit", SQUAD)).containsExactly("Piet Quill");
    assertThat(NearNames.of("orla tamsen", SQUAD)).containsExactly("Orla Tamsin");
    assertThat(NearNames.of("zoe", SQUAD)).containsExactly("Zoë Brandel");
  }

  @Test
  void theNearestComesFirst() {
    assertThat(NearNames.of("Orla", SQUAD)).containsExactly("Orla Tamsin", "Orna Vetch");
    assertThat(NearNames.of("  ORNA ", SQUAD)).containsExactly("Orna Vetch", "Orla Tamsin");
  }

  @Test
  void saysNothingWhenNothingIsNear() {
    assertThat(NearNames.of("Wilhelmina", SQUAD)).isEmpty();
    assertThat(NearNames.of("Orla", List.of())).isEmpty();
  }
}
