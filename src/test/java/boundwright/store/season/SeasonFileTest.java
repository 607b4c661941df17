package boundwright.store.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.demo.DemoSeason;
import boundwright.load.GuardSettings;
import boundwright.quantity.RefusedException;
import boundwright.season.InventedSeasons;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRules;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The two files of a season: laws on random ones, each error with its place, and random damage. */
class SeasonFileTest {
  private static final GuardSettings FACILITY = GuardSettings.DEFAULT;
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private static String example() {
    return SeasonFile.write(DemoSeason.from(LocalDate.of(2026, 9, 26), FACILITY), FACILITY, DemoSeason.NOTE);
  }

  private static SeasonInput read(String text) {
    return SeasonFile.read(text.getBytes(StandardCharsets.UTF_8), FACILITY);
  }

  @Test
  void aSeasonThatIsWrittenAndReadIsTheSame() {
    for (long seed = 1; seed <= 80; seed++) {
      SeasonInput season = new InventedSeasons(seed).input();
      assertThat(read(SeasonFile.write(season, FACILITY, seed % 2 == 0 ? "invented" : ""))).as("seed %d", seed).isEqualTo(season);
      List<String> members = season.squad().stream().map(SeasonFile::member).toList();
      assertThat(SeasonFile.read(SeasonFile.frame(season, FACILITY), members.stream().map(SeasonFile::readMember).toList(), FACILITY)).as("in pieces, seed %d", seed).isEqualTo(season);
    }
  }

  @Test
  void aPlanThatIsWrittenAndReadIsTheSame() {
    for (long seed = 1; seed <= 30; seed++) {
      InventedSeasons invented = new InventedSeasons(seed);
      SeasonPlan plan = invented.plan(invented.input(), (int) seed);
      assertThat(PlanFile.read(PlanFile.write(plan).getBytes(StandardCharsets.UTF_8))).as("seed %d", seed).isEqualTo(plan);
      for (SeasonPlan.Year y : plan.years()) {
        assertThat(PlanFile.readYear(PlanFile.year(y))).isEqualTo(y);
      }
    }
  }

  @Test
  void whatIsNotSaidIsTheFacilitys() {
    SeasonInput season = DemoSeason.from(LocalDate.of(2026, 9, 26), FACILITY);
    String file = SeasonFile.write(season, FACILITY, "");
    assertThat(file).doesNotContain("limits");
    GuardSettings stricter = new InventedSeasons(3).input().rules().guard();
    assertThat(SeasonFile.read(file.getBytes(StandardCharsets.UTF_8), stricter).rules().guard()).isEqualTo(stricter);
    ObjectNode bare = tree(file);
    bare.remove("rules");
    assertThat(read(bare.toString()).rules()).isEqualTo(SeasonRules.usual(FACILITY));
  }

  @Test
  void theDocumentedExampleIsReadAndIsWhatTheCommandPrints() throws IOException {
    String docs = Files.readString(Path.of("docs/season-file.md"));
    String shown = docs.substring(docs.indexOf("```json") + 7, docs.indexOf("```", docs.indexOf("```json") + 7));
    SeasonInput season = read(shown);
    assertThat(season.squad()).isNotEmpty();
    assertThat(read(example()).squad()).hasSize(3);
    String plan = docs.substring(docs.lastIndexOf("```json") + 7, docs.indexOf("```", docs.lastIndexOf("```json") + 7));
    assertThat(PlanFile.read(plan.getBytes(StandardCharsets.UTF_8)).years()).isNotEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "\"level\" : \"advanced\"|\"level\" : \"expert\"|squad[3].level (Linnea Saltwort): 'expert' is not known. Use one of: beginner, intermediate, advanced, level not set.",
        "\"takeOffFoot\" : \"left\"|\"takeOfFoot\" : \"left\"|squad[3].takeOffFoot (Linnea Saltwort): is missing. Write one of: right, left.",
        "\"growing\" : true|\"growin\" : true|squad[2] (Otis Sedgeley): the key 'growin' is not known here. Did you mean growing?",
        "\"growing\" : true|\"growing\" : \"yes\"|squad[2].growing (Otis Sedgeley): 'yes' is neither true nor false.",
        "\"fullRunUpSteps\" : 16|\"fullRunUpSteps\" : 30|squad[3].fullRunUpSteps (Linnea Saltwort): 30 is out of range: a whole number from 4 to 26.",
        "\"fullRunUpSteps\" : 16|\"fullRunUpSteps\" : 16.5|squad[3].fullRunUpSteps (Linnea Saltwort): 16.5 is out of range: a whole number from 4 to 26.",
        "\"contacts\" : 60|\"contacts\" : 99999999999|squad[2].past.lastWeek.contacts (Otis Sedgeley): 99999999999 is out of range",
        "\"sequence\" : \"RRL x2\"|\"sequence\" : \"RRK x2\"|squad[1].past.days[2].work[2].sequence (Wren Samphire)",
        "\"importance\" : \"usual\"|\"importance\" : \"big\"|squad[1].meets[1].importance (Wren Samphire): 'big' is not known. Use one of: main, usual.",
        "\"why\" : \"soft\"|\"why\" : \"exams\"|squad[1].away[1].why (Wren Samphire): 'exams' is not known. Use one of: held, away, travel, soft.",
        "\"wish\" : \"no session\"|\"wish\" : null|squad[1].wishes[1].wish (Wren Samphire): is missing.",
        "\"tuesday\" : \"17:00-19:30\"|\"tuesday\" : \"17-19\"|places[1].hours.tuesday: '17-19' are no hours. Write them as 17:00-19:30.",
        "\"tuesday\" : \"17:00-19:30\"|\"tuesday\" : \"17:00-24:00\"|places[1].hours.tuesday: '17:00-24:00' has a time that no clock shows.",
        "\"tuesday\" : \"17:00-19:30\"|\"tuesday\" : \"19:00-17:30\"|places[1].hours.tuesday: Open from 19:00 to 17:30 ends before it begins.",
        "\"athletesAtOnce\" : 12|\"athletesAtOnce\" : 0|places[1].athletesAtOnce: 0 is out of range: a whole number from 1 to 400.",
        "\"surface\" : \"grass\"|\"surface\" : [\"grass\"]|places[1].surface: a list is not known. Use one of: grass, sprung floor",
        "\"first\" : \"2026-09-28\"|\"first\" : \"2026-02-30\"|first: '2026-02-30' is no day of the calendar.",
        "\"first\" : \"2026-09-28\"|\"first\" : \"28.9.2026\"|first: '28.9.2026' is no date. Write year, month, day",
        "\"first\" : \"2026-09-28\"|\"first\" : \"2027-05-03\"|lies outside the season, 2027-05-03 to 2027-08-01",
        "\"lighterShare\" : 0.7|\"lighterShare\" : 7|rules.lighterShare: 7 is out of range: a number from 0.3 to 1.",
        "\"lighterShare\" : 0.7|\"lighterShar\" : 0.7|rules: the key 'lighterShar' is not known here. Did you mean lighterShare?",
        "\"leastCut\" : 0.41|\"leastCut\" : 0.8|rules.taper: A taper that cuts at least 0.8, usually 0.5",
        "\"key\" : \"pit\"|\"key\" : \"grass\"|The place grass stands twice",
        "\"format\" : 1|\"format\" : 2|format: 2 was written by a newer boundwright; this program reads 1.",
        "\"file\" : \"boundwright season\"|\"file\" : \"boundwright plan\"|file: 'boundwright plan' is not what is read here.",
        "\"meet\" : \"early\"|\"meet\" : \"late\"|Wren Samphire enters for the meet late, which the season does not have.",
        "\"squad\" : [|\"squad\" : 5, \"x\" : [|squad: 5 stands where a list is needed.",
        "\"name\" : \"Tidewater gym\",|\"name\" : \"Tidewater gym\"|The file cannot be read as JSON at line",
        "\"name\" : \"Tidewater gym\",|\"name\" : \"Tidewater gym\", \"name\" : \"Other\",|Duplicate field 'name'",
      })
  void everyErrorSaysWhere(String found, String instead, String said) {
    String file = example();
    assertThat(file).contains(found);
    int at = file.indexOf(found);
    assertThatThrownBy(() -> read(file.substring(0, at) + instead + file.substring(at + found.length())))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining(said);
  }

  @Test
  void bytesThatAreNoTextAreRefused() {
    assertThatThrownBy(() -> SeasonFile.read(example().getBytes(StandardCharsets.UTF_16), FACILITY))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("UTF-8");
    assertThatThrownBy(() -> read(" \n")).isInstanceOf(RefusedException.class).hasMessageContaining("empty");
    assertThat(read("\uFEFF" + example())).isEqualTo(read(example()));
    assertThatThrownBy(() -> read("[".repeat(5000))).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> read(example() + "{}")).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> SeasonFile.read(new byte[SeasonJson.MOST_BYTES + 1], FACILITY))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("20 MB");
  }

  @Test
  void athletesTakeTheNumbersThatTheyAreGiven() {
    SeasonInput season = SeasonFile.read(example().getBytes(StandardCharsets.UTF_8), FACILITY, (name, written) -> written + 100);
    assertThat(season.squad().get(2).id()).isEqualTo(103);
    assertThatThrownBy(
            () ->
                SeasonFile.read(
                    example().getBytes(StandardCharsets.UTF_8),
                    FACILITY,
                    (name, written) -> {
                      throw new RefusedException("nobody");
                    }))
        .hasMessage("squad[1].name (Wren Samphire): nobody");
  }

  @Test
  void damagedLettersAreReadOrRefused() {
    byte[] file = example().getBytes(StandardCharsets.UTF_8);
    for (long seed = 1; seed <= 600; seed++) {
      Random random = new Random(seed);
      byte[] bad = file.clone();
      for (int i = 0; i <= random.nextInt(3); i++) {
        bad[random.nextInt(bad.length)] = random.nextBoolean() ? (byte) random.nextInt(256) : "0123456789-\"{}[],:eE.nulltrue".getBytes(StandardCharsets.US_ASCII)[random.nextInt(28)];
      }
      readOrRefused("seed " + seed, () -> SeasonFile.read(bad, FACILITY));
    }
  }

  @Test
  void damagedValuesAreReadOrRefused() {
    ObjectNode season = tree(example());
    InventedSeasons invented = new InventedSeasons(5);
    ObjectNode plan = tree(PlanFile.write(invented.plan(invented.input(), 1)));
    for (long seed = 1; seed <= 600; seed++) {
      Random random = new Random(seed);
      ObjectNode bad = (random.nextBoolean() ? season : plan).deepCopy();
      for (int i = 0; i <= random.nextInt(3); i++) {
        damage(bad, random);
      }
      byte[] bytes = bad.toString().getBytes(StandardCharsets.UTF_8);
      if (bad.path("file").asText().contains("plan")) {
        readOrRefused("seed " + seed, () -> PlanFile.read(bytes));
      } else {
        readOrRefused("seed " + seed, () -> SeasonFile.read(bytes, FACILITY));
      }
    }
  }

  private static void readOrRefused(String as, Runnable reading) {
    try {
      reading.run();
    } catch (RefusedException e) {
      assertThat(e.getMessage()).as(as).matches("(?s).*[.^]").doesNotContain("\n\n", "com.fasterxml", "java.");
    }
  }

  /** Exchanges, drops or doubles one thing somewhere in the file. */
  private static void damage(ObjectNode root, Random random) {
    List<Consumer<JsonNode>> ways = new ArrayList<>();
    collect(root, ways);
    JsonNodeFactory f = JsonNodeFactory.instance;
    JsonNode[] odd = {
      f.nullNode(), f.textNode(""), f.textNode("x".repeat(5000)), f.textNode("\u0000\n\t"), f.textNode("-"), f.textNode("9999-12-31"), f.textNode("0000-00-00"),
      f.textNode("R x999999999"), f.textNode("((((((((((((R"), f.numberNode(-1), f.numberNode(0), f.numberNode(Long.MAX_VALUE), f.numberNode(Double.MAX_VALUE),
      f.numberNode(1e-300), f.numberNode(new java.math.BigInteger("9".repeat(300))), f.booleanNode(true), f.arrayNode(), f.objectNode(),
      f.arrayNode().add(1).add("a").addNull(), f.objectNode().put("from", "2026-10-01").put("to", "2026-09-01")
    };
    ways.get(random.nextInt(ways.size())).accept(odd[random.nextInt(odd.length)]);
  }

  private static void collect(JsonNode node, List<Consumer<JsonNode>> ways) {
    if (node instanceof ObjectNode o) {
      o.fieldNames()
          .forEachRemaining(
              key -> {
                ways.add(v -> o.set(key, v));
                ways.add(v -> o.remove(key));
                ways.add(v -> o.set(key + "s", v));
                collect(o.get(key), ways);
              });
    } else if (node instanceof ArrayNode a) {
      for (int i = 0; i < a.size(); i++) {
        int at = i;
        ways.add(v -> a.set(at % Math.max(1, a.size()), v));
        ways.add(v -> a.add(a.get(0)));
        collect(a.get(i), ways);
      }
    }
  }

  private static ObjectNode tree(String text) {
    try {
      return (ObjectNode) MAPPER.readTree(text);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
