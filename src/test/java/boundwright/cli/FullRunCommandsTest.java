package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code full-run}, {@code weather} and {@code chance}: what they keep, tell and refuse. */
class FullRunCommandsTest {
  private static final String WHO = "Orla Tamsin";

  @TempDir Path folder = Path.of("");
  private Terminal terminal = new Terminal(folder);

  @BeforeEach
  void squad() {
    terminal = new Terminal(folder);
    terminal.squad();
  }

  private JsonNode json(String... arguments) {
    return terminal.ok(arguments).json();
  }

  private void refused(String why, String... arguments) {
    terminal.refused(why, arguments);
  }

  private void jump(int steps, String distance) {
    json("full-run", "--athlete", WHO, "--keep", "--from", String.valueOf(steps), "--distance", distance, "--json");
  }

  @Test
  void figuresMayHaveADecimalCommaAndWhatIsNoFigureIsToldInWords() {
    JsonNode kept = json("full-run", "--athlete", WHO, "--keep", "--from", "8", "--distance", "11,20", "--wind", "-1,5", "--temperature", "12,5", "--json");
    assertThat(kept.at("/kept/weather/wind_mps").asDouble()).isEqualTo(-1.5);
    assertThat(kept.at("/kept/weather/temperature_c").asDouble()).isEqualTo(12.5);
    for (String odd : new String[] {"1,000,5", "a lot", "NaN", "1e3", ""}) {
      refused("Invalid value for option '--wind': '" + odd + "' is no figure. Write it as 1.5.", "weather", "--wind", odd);
    }
    for (String odd : new String[] {"8,5", "eight", "99999999999"}) {
      refused("'" + odd + "' is no whole number. Write it as 8.", "full-run", "--athlete", WHO, "--steps", odd);
      refused("'" + odd + "' is no whole number. Write it as 8.", "growth", "--athlete", WHO, "--weeks", odd);
    }
  }

  @Test
  void nothingIsWrittenAsLessThanNothing() {
    json("full-run", "--athlete", WHO, "--keep", "--from", "8", "--distance", "11.20", "--wind", "1.5", "--date", "2026-05-01", "--json");
    json("full-run", "--athlete", WHO, "--keep", "--from", "10", "--distance", "11.60", "--wind", "-1.0", "--date", "2026-05-08", "--json");
    String words = terminal.run("full-run", "--athlete", WHO, "--steps", "12").out();
    assertThat(words).contains("Each m/s of tail wind").doesNotContainPattern("-0 cm|-0\\.0");
    terminal.run("weather", "--wind", "-2", "--temperature", "9", "--wet");
    terminal.run("log", "--athlete", WHO, "--sequence", "RL x3", "--steps", "4", "--landing", "12.10", "--mark", "11.5", "--sure");
    assertThat(terminal.run("weather").out()).contains("ten degrees more 0.0 %").doesNotContain("-0.0");
  }

  @Test
  void keepsTellsAndTakesBack() {
    assertThat(json("full-run", "--athlete", WHO, "--json").get("cannotTell").asText()).contains("No triple jump of " + WHO);
    JsonNode kept = json("full-run", "--athlete", WHO, "--keep", "--from", "8", "--distance", "11.20", "--wind", "1.5", "--wind-by", "flag", "--headwind", "--wet", "--json");
    assertThat(kept.at("/kept/distance_m").asDouble()).isEqualTo(11.2);
    assertThat(kept.at("/kept/weather/wind_mps").asDouble()).isEqualTo(-1.5);
    assertThat(kept.at("/kept/weather/windBy").asText()).isEqualTo("flag");
    assertThat(kept.at("/kept/weather/wet").asBoolean()).isTrue();
    jump(8, "11.35");
    jump(12, "11.90");
    JsonNode answer = json("full-run", "--athlete", WHO, "--steps", "16", "--json");
    assertThat(answer.at("/asked/mean/p50_m").asDouble()).isBetween(11.9, 12.8);
    assertThat(answer.at("/asked/jump/p95_m").asDouble()).isGreaterThan(answer.at("/asked/mean/p95_m").asDouble());
    assertThat(answer.at("/base/steps").asInt()).isEqualTo(8);
    assertThat(answer.at("/weather/perMpsOfTailWind/p50_m").asDouble()).isBetween(0.0, 0.15);
    assertThat(answer.at("/weather/perDegree").isNull()).isTrue();
    Said words = terminal.run("full-run", "--athlete", WHO, "--steps", "16");
    assertThat(words.out()).startsWith("FULL RUN").contains(" from 8 steps is about ").contains("3 triple jumps of " + WHO);
    assertThat(terminal.run("full-run", "--athlete", WHO, "--unit", "ft").out()).contains(" ft ");
    assertThat(json("full-run", "--athlete", WHO, "--steps", "22", "--json").get("cannotTell").asText()).contains("Nobody here has jumped from more than 12 steps");
    assertThat(json("full-run", "--athlete", WHO, "--steps", "17", "--json").get("firstGuess").asBoolean()).isTrue();
    assertThat(json("full-run", "--from", "8", "--distance", "13.05", "--steps", "16", "--json").get("said").asText()).startsWith("13.05 m from 8 steps is about ");
    assertThat(json("full-run", "--athlete", WHO, "--undo-last", "--json").at("/takenBack/distance_m").asDouble()).isEqualTo(11.9);
  }

  /** The example of its own help, in a squad that has jumped from nowhere yet. */
  @Test
  void itsOwnExampleIsAnsweredInAnEmptySquad() {
    JsonNode a = json("full-run", "--from", "8", "--distance", "13.05", "--steps", "16", "--json");
    assertThat(a.at("/asked/mean/p05_m").asDouble()).isLessThan(14.0);
    assertThat(a.at("/asked/mean/p95_m").asDouble()).isGreaterThan(14.5);
    assertThat(a.get("firstGuess").asBoolean()).isTrue();
    assertThat(terminal.run("full-run", "--from", "8", "--distance", "13.05", "--steps", "16").out().replaceAll("\\s+", " ")).contains("A first guess: nobody here has jumped from more than 8 steps yet.");
  }

  /** 9 m from 8 steps and 14.9 m from 16 is a slip: asked about, kept when it is meant; a plausible one is not asked about. */
  @Test
  void aDistanceFarFromWhatIsToldIsAskedAbout() {
    jump(8, "9.00");
    refused("Was it really 14.90 m?", "full-run", "--athlete", WHO, "--keep", "--from", "16", "--distance", "14.9");
    refused("--sure", "full-run", "--athlete", WHO, "--keep", "--from", "16", "--distance", "14.9", "--date", "2026-01-02");
    jump(16, "10.40");
    assertThat(json("full-run", "--athlete", WHO, "--keep", "--from", "16", "--distance", "14.9", "--sure", "--json").at("/kept/distance_m").asDouble()).isEqualTo(14.9);
  }

  @Test
  void refusesInWords() {
    refused("4 to 26", "full-run", "--athlete", WHO, "--keep", "--from", "2", "--distance", "11");
    refused("3 to 19", "full-run", "--athlete", WHO, "--keep", "--from", "8", "--distance", "1.10");
    refused("--from N --distance LENGTH", "full-run", "--athlete", WHO, "--keep", "--from", "8");
    refused("add --keep", "full-run", "--athlete", WHO, "--from", "8", "--distance", "11");
    refused("--athlete NAME", "full-run", "--keep", "--from", "8", "--distance", "11");
    refused("ask about one jump", "full-run", "--from", "8");
    refused("-8 to 12", "weather", "--wind", "40");
    refused("not both", "weather", "--headwind", "--tailwind");
    refused("says its side twice", "weather", "--wind", "-2", "--headwind");
    refused("how a strength is known", "weather", "--wind-by", "flag");
    refused("gauge, flag", "weather", "--wind", "1", "--wind-by", "thumb");
    refused("Nothing was said of the weather", "weather", "--date", "2026-01-02");
    refused("No weather of", "weather", "--remove");
    String aim = "aim --event long-jump --target LENGTH";
    refused(aim, "chance", "--athlete", WHO, "--event", "long-jump", "--standard", "6.20", "--by", "2099-01-01");
    refused(aim, "full-run", "--event", "long jump", "--from", "8", "--distance", "5.20", "--steps", "16");
    refused("Use one of: triple jump, long jump", "chance", "--athlete", WHO, "--event", "high jump", "--standard", "6.20", "--by", "2099-01-01");
    refused("is not after today", "chance", "--athlete", WHO, "--standard", "12", "--by", "2020-01-01");
    refused("3 to 19", "chance", "--athlete", WHO, "--standard", "120", "--by", "2099-01-01");
    refused("no day with attempts", "chance", "--athlete", WHO, "--standard", "12", "--by", "2099-01-01", "--meet", "2098-01-01xmany");
    refused("is not between tomorrow and", "chance", "--athlete", WHO, "--standard", "12", "--by", "2099-01-01", "--meet", "2099-06-01");
  }

  @Test
  void keepsTheWeatherOfADay() {
    assertThat(terminal.run("weather").out()).startsWith("No day's weather is kept yet.");
    assertThat(terminal.run("weather", "--headwind", "--temperature", "9", "--wet").out()).contains("wind against, 9 \u00b0C, wet");
    JsonNode days = json("weather", "--json");
    assertThat(days.at("/days/0/weather/windBy").asText()).isEqualTo("head");
    assertThat(days.at("/days/0/weather/wind_mps").isNull()).isTrue();
    assertThat(json("weather", "--remove", "--json").at("/takenOut/weather/temperature_c").asDouble()).isEqualTo(9);
  }

  @Test
  void tellsTheChanceOfAStandardMeetByMeet() {
    for (String d : new String[] {"11.90", "12.05", "11.80", "12.10", "12.00"}) {
      jump(14, d);
    }
    String by = "2099-12-31";
    assertThat(json("chance", "--athlete", WHO, "--standard", "12.20", "--by", by, "--json").get("cannotTell").asText()).contains("No meet of " + WHO);
    String soon = LocalDate.now(Terminal.CLOCK).plusDays(10).toString();
    String later = LocalDate.now(Terminal.CLOCK).plusDays(40).toString();
    JsonNode near = json("chance", "--athlete", WHO, "--standard", "12.20", "--by", by, "--meet", soon, "--meet", later + "x6", "--json");
    JsonNode far = json("chance", "--athlete", WHO, "--standard", "13.20", "--by", by, "--meet", soon, "--meet", later + "x6", "--json");
    assertThat(near.get("chance").asDouble()).isBetween(0.3, 0.99).isGreaterThan(far.get("chance").asDouble());
    assertThat(near.at("/meets/1/byThen").asDouble()).isEqualTo(near.get("chance").asDouble());
    assertThat(near.get("chanceInAnyWind").asDouble()).isGreaterThanOrEqualTo(near.get("chance").asDouble());
    assertThat(near.get("foulChance").asDouble()).isEqualTo(0.3);
    assertThat(near.get("foulsOwn").asBoolean()).isFalse();
    JsonNode indoors = json("chance", "--athlete", WHO, "--standard", "12.20", "--by", by, "--meet", soon, "--indoors", "--json");
    assertThat(indoors.get("wind").isNull()).isTrue();
    Said words = terminal.run("chance", "--athlete", WHO, "--standard", "12.20", "--by", by, "--meet", soon);
    assertThat(words.out().replaceAll("\\s+", " ")).startsWith("CHANCE").contains("to reach 12.20 m in the triple jump from 14 steps by 31 December 2099, in 1 meet.").contains("if the wind did not matter");
  }

  @Test
  void tellsTheDayOfAMeetAndWritesItsSheet() throws IOException {
    refused("There is no meet here yet", "meet", "day");
    json("meet", "new", "--name", "Evening", "--json");
    json("meet", "enter", "--athlete", WHO, "--json");
    refused("--starts 14:30", "meet", "day", "--wind", "1");
    refused("is none", "meet", "day", "--starts", "noon");
    refused("not both", "meet", "day", "--starts", "14:30", "--wind", "1", "--no-wind");
    JsonNode day = json("meet", "day", "--starts", "14:30", "--wind", "1.5", "--give", "1", "--out", "day.pdf", "--json");
    assertThat(day.at("/moments/0/at").asText()).isEqualTo("13:00");
    assertThat(day.at("/likelyWind_mps").asDouble()).isEqualTo(1.5);
    assertThat(day.at("/marks/0/firstAttempt").asText()).isEqualTo("14:30");
    assertThat(day.at("/marks/0/moved/p50_m").asDouble()).isZero();
    assertThat(day.at("/marks/0/from").asText()).contains("No run-through");
    assertThat(Files.readAllBytes(folder.resolve("day.pdf"))).startsWith("%PDF".getBytes(StandardCharsets.US_ASCII));
    refused("is there already", "meet", "day", "--out", "day.pdf");
    assertThat(json("meet", "day", "--no-wind", "--json").at("/likelyWind_mps").isNull()).isTrue();
    assertThat(terminal.run("meet", "day").out()).contains("MEET").contains("call room closes").contains("none is expected").contains("common practice");
  }
}
