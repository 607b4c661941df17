package boundwright.card;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.picture.PictureFixtures;
import boundwright.runway.CoachSettings;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Cards and reports are in a coach's words: none of the code's (house rule; design, screen words), and no mark stands in brackets. */
class CardWordsTest {
  private static final Pattern NO_COACH_SAYS = Pattern.compile("(?i)\\b(windows?|asked chance|rungs?|gates?|guards?|judged)\\b");
  private static final Pattern MARK_IN_BRACKETS = Pattern.compile("\\(\\d+\\.\\d\\d( m)?\\)|\\(\\d+ ft[^)]*\\)");
  private final TemplateEngine engine = TemplateEngine.createPrecompiled(null, ContentType.Html, null, "boundwright.pages");

  private String text(String template, Map<String, Object> what) {
    StringOutput out = new StringOutput();
    engine.render(template, what, out);
    return out.toString().replaceAll("<[^>]*>", " ");
  }

  @Test
  void cards() {
    for (CoachSettings settings : new CoachSettings[] {CoachSettings.DEFAULT, Fixtures.FEET}) {
      for (int athletes : new int[] {1, 5}) {
        for (boolean paper : new boolean[] {true, false}) {
          SessionCard card = Fixtures.cards().of(Fixtures.athletes(athletes), Fixtures.PLAN, settings);
          String text = text("card/card.jte", Map.of("card", card, "paper", paper));
          assertThat(text).contains("In a box").doesNotContainPattern(NO_COACH_SAYS).doesNotContainPattern(MARK_IN_BRACKETS);
        }
      }
    }
  }

  @Test
  void reports() {
    assertThat(text("card/report.jte", Map.of("report", PictureFixtures.report()))).contains("Load today").doesNotContainPattern(NO_COACH_SAYS);
  }
}
