package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.cli.Terminal.Said;
import boundwright.footfall.Foot;
import boundwright.store.Workbench;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Heights from the command line; the day is 2026-05-14. */
class GrowthCommandTest {
  private static final String WHO = "Orla Tamsin";

  @TempDir Path folder = Path.of("");
  private Terminal terminal = new Terminal(folder);

  @BeforeEach
  void squad() {
    terminal = new Terminal(folder);
    terminal.squad();
  }

  private Said ok(String... arguments) {
    return terminal.ok(arguments);
  }

  private String refused(String... arguments) {
    Said said = terminal.run(arguments);
    assertThat(said.exit()).as(said.out()).isEqualTo(2);
    assertThat(said.out()).isEmpty();
    return said.err();
  }

  private JsonNode growth() {
    return ok("growth", "--athlete", WHO, "--json").json();
  }

  /** The worked value of Moore et al. 2015 from the issue: a boy of 13.5 years and 160 cm is .197 years before. */
  @Test
  void theWorkedOffsetIsToldWithHalfAYearOfError() {
    ok("athlete", "--athlete", WHO, "--born", "2012-11-11", "--sex", "male"); // 13.5 years of 365.25 days before 2026-05-12
    ok("growth", "--athlete", WHO, "--height", "160", "--date", "2026-05-12", "--by", "coach");
    JsonNode a = growth();
    assertThat(a.at("/offset/years").asDouble()).isCloseTo(-0.197, within(2e-3));
    assertThat(a.at("/offset/error_y").asDouble()).isEqualTo(0.5);
    assertThat(a.get("speed_cm_y").isNull()).isTrue();
    assertThat(a.get("speedMissing").asText()).contains("two heights at least four weeks apart");
    assertThat(a.get("measureOn").asText()).isEqualTo("2026-06-09");
    assertThat(ok("growth", "--athlete", WHO).out())
        .contains("On 2026-05-12, by a formula made for many, about 0.2 years before the fastest growth, give or take half a year", "Measure again on 2026-06-09", "160.0 cm, by coach");
  }

  @Test
  void heightsAreEnteredTakenOutAndLowerTheLimits() {
    ok("growth", "--athlete", WHO, "--height", "1.500", "--date", "2025-11-14");
    ok("growth", "--athlete", WHO, "--height", "152.1 cm", "--date", "2026-01-14", "--sitting", "0.79", "--mass", "41");
    ok("growth", "--athlete", WHO, "--height", "1,538", "--date", "2026-03-14");
    JsonNode a = ok("growth", "--athlete", "orla tamsin", "--height", "5 ft 1 in", "--json").json();
    assertThat(a.get("measured")).hasSize(4);
    assertThat(a.at("/measured/3/height_m").asDouble()).as("5 ft 1 in, exactly").isCloseTo(1.5494, within(1e-9));
    assertThat(a.at("/measured/1/mass_kg").asDouble()).isEqualTo(41);
    assertThat(a.at("/speed_cm_y/p50").asDouble()).isBetween(8.0, 11.0);
    assertThat(a.at("/fast/now").asBoolean()).isTrue();
    assertThat(ok("growth", "--athlete", WHO).out()).contains("That is fast, above the 7.0 cm a year of the settings. It passes.");
    ok("growth", "--fast", "12");
    assertThat(growth().get("fast").isNull()).isTrue();
    ok("growth", "--athlete", WHO, "--remove", a.at("/measured/3/id").asText());
    assertThat(growth().get("measured")).hasSize(3);
  }

  /** The same command twice narrows nothing; a second reading that is meant does. */
  @Test
  void theSameHeightIsNotTakenTwiceUnlessItWasReadTwice() {
    String[] once = {"growth", "--athlete", WHO, "--height", "152.1 cm", "--date", "2026-01-14", "--by", "coach"};
    ok(once);
    assertThat(refused(once)).contains("1.521 m on 2026-01-14 by coach is kept already").contains("--another");
    assertThat(growth().get("measured")).hasSize(1);
    ok("growth", "--athlete", WHO, "--height", "152.1 cm", "--date", "2026-01-14", "--by", "mother");
    ok("growth", "--athlete", WHO, "--height", "152.2 cm", "--date", "2026-01-14", "--by", "coach");
    ok("growth", "--athlete", WHO, "--height", "1.521", "--date", "2026-01-14", "--by", "coach", "--another");
    assertThat(growth().get("measured")).hasSize(4);
  }

  @Test
  void aLargeSquadIsListedInPart() {
    try (Workbench bench = Workbench.open(folder.resolve("data"), Terminal.CLOCK)) {
      for (char c = 'A'; c < 'I'; c++) {
        bench.athletes().add(new Athlete(0, "Invented " + c, Level.BEGINNER, Foot.LEFT, 0));
      }
    }
    assertThat(refused("growth", "--athlete", "Qqqqqq").replaceAll("\\s+", " ")).contains("The squad has 11 athletes").contains(" and 3 more.").doesNotContain("...");
  }

  @Test
  void whatCannotBeIsRefusedInWords() {
    assertThat(refused("growth")).contains("--athlete NAME");
    assertThat(refused("growth", "--athlete", WHO, "--height", "tall")).contains("The height 'tall' cannot be read. Write it as 162.4 (cm)");
    assertThat(refused("growth", "--athlete", WHO, "--height", "16.2")).contains("0.8 to 2.3 m");
    assertThat(refused("growth", "--athlete", WHO, "--height", "1.6", "--date", "2026-05-15")).contains("after today");
    assertThat(refused("growth", "--athlete", WHO, "--height", "1.6", "--sitting", "1.6")).contains("100 %");
    assertThat(refused("growth", "--athlete", WHO, "--mass", "50")).contains("needs its height");
    assertThat(refused("growth", "--athlete", WHO, "--remove", "77")).contains("not in the list of " + WHO);
    assertThat(refused("growth", "--height", "1.6", "--fast", "7")).contains("Say whose");
    assertThat(refused("growth", "--fast", "1")).contains("3 to 12 cm a year");
    assertThat(growth().get("measured")).isEmpty();
    JsonNode settings = ok("growth", "--weeks", "8", "--json").json();
    assertThat(settings.get("athlete").isNull()).isTrue();
    assertThat(settings.at("/settings/weeks").asInt()).isEqualTo(8);
  }
}
