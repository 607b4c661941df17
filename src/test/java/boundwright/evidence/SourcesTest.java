package boundwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.load.LoadSources;
import boundwright.readiness.Gate;
import boundwright.technique.TeachingPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What is called read or reported can be looked up: it names its year, its journal or the book of rules. */
class SourcesTest {
  private static final Pattern NAMED = Pattern.compile("\\b(1[89]|20)\\d\\d\\b|\\b(rules|press reports)\\b");

  private static List<Source> all() {
    List<Source> all = new ArrayList<>(Sources.ALL);
    all.addAll(LoadSources.ALL);
    all.addAll(List.of(Gate.LADDER, Gate.RULES, TeachingPoint.SOURCE));
    return all;
  }

  @Test
  void whatIsCalledReadNamesWhatWasRead() {
    assertThat(all())
        .filteredOn(s -> s.standing() == Standing.READ || s.standing() == Standing.SECOND_HAND)
        .isNotEmpty()
        .allSatisfy(s -> assertThat(s.citation()).as(s.id()).containsPattern(NAMED));
  }

  @Test
  void whatNamesNoPaperIsNeverCalledRead() {
    assertThat(all())
        .filteredOn(s -> s.citation().contains("no paper named") || s.citation().contains("not named"))
        .hasSizeGreaterThan(5)
        .allSatisfy(s -> assertThat(s.standing()).as(s.id()).isIn(Standing.MEMORY, Standing.JUDGEMENT));
  }

  /** A page that reports something is second-hand; what nobody looked up says no more than that it was recalled. */
  @Test
  void whatIsFromMemoryDoesNotSayThatAPageReportsIt() {
    assertThat(all())
        .filteredOn(s -> s.standing() == Standing.MEMORY)
        .hasSizeGreaterThan(20)
        .allSatisfy(s -> assertThat(s.citation()).as(s.id()).doesNotContainPattern("\\bpages?\\b.*\\breports?\\b"));
  }

  @Test
  void idsAreUniqueAndFilledIn() {
    assertThat(all()).extracting(Source::id).doesNotHaveDuplicates();
    assertThat(all()).allSatisfy(s -> assertThat(List.of(s.id(), s.about(), s.citation())).as(s.id()).noneMatch(String::isBlank));
  }
}
