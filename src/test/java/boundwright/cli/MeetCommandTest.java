package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A meet on the command line: list, attempts as they happen, ranks by the rules, undo, what the next attempt is for. */
class MeetCommandTest {
  @TempDir Path folder = Path.of("");
  private Terminal terminal = new Terminal(folder);

  @BeforeEach
  void meet() {
    terminal = new Terminal(folder);
    terminal.squad();
  }

  private Said ok(String... arguments) {
    return terminal.ok(arguments);
  }

  private void refused(String why, String... arguments) {
    terminal.refused(why, arguments);
  }

  private void begin() {
    ok("meet", "new", "--name", "Invented Evening", "--for", "women, international", "--points", "women");
    ok("meet", "enter", "--athlete", "orla tamsin");
    ok("meet", "enter", "--rival", "Bib 4");
    ok("meet", "enter", "--athlete", "Zoë Brandel");
  }

  @Test
  void aMeetIsBegunListedAndFilled() {
    assertThat(ok("meet").out()).contains("no meet here yet");
    assertThat(ok("meet", "--list", "--json").json()).isEmpty();
    begin();
    JsonNode list = ok("meet", "--list", "--json").json();
    assertThat(list).hasSize(1);
    assertThat(list.at("/0/name").asText()).isEqualTo("Invented Evening");
    assertThat(list.at("/0/date").asText()).isEqualTo("2026-05-14");
    // 11 m: women's board of international meets (World Athletics; read)
    assertThat(list.at("/0/boardToSand_m").asDouble()).isEqualTo(11);
    assertThat(list.at("/0/entrants").asInt()).isEqualTo(3);
    assertThat(ok("meet", "--list").out()).contains("Invented Evening").contains("3 on the list, 0 attempts");
  }

  /** The board is set by the competition: whoever is entered in that of the other sex is asked about, and entered all the same. */
  @Test
  void anEntrantOfTheOtherSexIsAskedAbout() {
    begin();
    assertThat(terminal.run("athlete", "--athlete", "Orla Tamsin", "--sex", "male").exit()).isZero();
    assertThat(ok("meet", "new", "--name", "Late", "--for", "women, international").out()).doesNotContain("Is that meant");
    String said = ok("meet", "enter", "--athlete", "Orla Tamsin", "--meet", "Late").out();
    assertThat(said).contains("Orla Tamsin is male, and this meet is for women, international, board to sand 11.00 m. Is that meant?");
    ok("meet", "new", "--name", "Later", "--for", "men, international");
    assertThat(ok("meet", "enter", "--athlete", "Orla Tamsin", "--meet", "Later").out()).doesNotContain("Is that meant");
  }

  /** A meet entered for next week is newest by date and yet not the one that is on today. */
  @Test
  void withoutAMeetTodaysIsTakenAndOtherwiseTheCoachIsAsked() {
    ok("meet", "new", "--name", "Next Week", "--date", "2026-05-21");
    for (String[] writes : new String[][] {{"meet", "enter", "--rival", "Bib 4"}, {"meet", "attempt", "--foul"}, {"meet", "undo"}}) {
      refused("No meet is on today, 2026-05-14. Name one with --meet: 1 (Next Week, 2026-05-21).", writes);
    }
    assertThat(ok("meet", "ranks").out()).as("looking changes nothing").contains("Next Week");
    begin();
    ok("meet", "attempt", "--foul");
    JsonNode list = ok("meet", "--list", "--json").json();
    assertThat(list.at("/0/name").asText()).isEqualTo("Next Week");
    assertThat(list.at("/0/entrants").asInt()).isZero();
    assertThat(list.at("/1/entrants").asInt()).isEqualTo(3);
    assertThat(list.at("/1/attempts").asInt()).isEqualTo(1);
    assertThat(ok("meet", "ranks").out()).contains("Invented Evening");
    ok("meet", "enter", "--rival", "Bib 9", "--meet", "next week");
    ok("meet", "new", "--name", "Morning");
    refused("2 meets are on today, 2026-05-14. Name one with --meet: 3 (Morning, 2026-05-14), 2 (Invented Evening, 2026-05-14).",
        "meet", "attempt", "--foul");
  }

  /**
   * Ties by the second best (read), points by the formula with recalled coefficients (women 13.00 m -> 1015; section 7), wind
   * rounded up to the next tenth: 2.03 -> 2.1 is above +2.0 (memory).
   */
  @Test
  void attemptsAreKeptAndRanked() {
    begin();
    JsonNode first = ok("meet", "attempt", "--distance", "13.009", "--wind", "2.03", "--gap", "0.05", "--json").json();
    assertThat(first.at("/kept/athlete").asText()).as("who is next").isEqualTo("Orla Tamsin");
    assertThat(first.at("/kept/wind_mps").asDouble()).isEqualTo(2.1);
    assertThat(first.at("/kept/windLegal").asBoolean()).isFalse();
    assertThat(first.at("/ranks/0/best_m").asDouble()).as("rounded down").isEqualTo(13.0);
    assertThat(first.at("/ranks/0/points").asInt()).isEqualTo(1015);
    assertThat(first.at("/ranks/0/bestWindLegal_m").isNull()).isTrue();
    assertThat(first.get("next").asText()).isEqualTo("Bib 4");
    ok("meet", "attempt", "--who", "bib 4", "--distance", "13.00");
    ok("meet", "attempt", "--who", "Zoë Brandel", "--foul");
    ok("meet", "attempt", "--who", "Bib 4", "--distance", "12.50");
    JsonNode tie = ok("meet", "ranks", "--json").json();
    assertThat(tie.at("/ranks/0/athlete").asText()).isEqualTo("Bib 4");
    assertThat(tie.at("/ranks/1/rank").asInt()).isEqualTo(2);
    assertThat(tie.at("/ranks/2/rank").isNull()).isTrue();
    assertThat(tie.at("/ranks/0/attempts")).hasSize(2);
    assertThat(tie.get("round").asInt()).isEqualTo(2);
    assertThat(tie.get("cut").asBoolean()).isFalse();
    assertThat(ok("meet", "ranks").out()).contains("1.  Bib 4").contains("13.00 m").contains("+2.1*").contains("Next: Orla Tamsin, round 2 of 6.");
    assertThat(ok("meet", "ranks", "--unit", "ft").out()).contains("42 ft 7 3/4 in").doesNotContainPattern("\\d m\\b(?!/s)");
  }

  @Test
  void anAttemptInFeetAndInchesIsShownAsItCounts() {
    begin();
    Said kept = ok("meet", "attempt", "--distance", "47' 6\"");
    assertThat(kept.out()).as("47 ft 6 in are 14.478 m, to the centimetre below 14.47").contains("round 1: 14.47 m").doesNotContain("14.48");
  }

  @Test
  void undoTakesTheLastBackAndWhatItReplacedReturns() {
    begin();
    ok("meet", "attempt", "--who", "Bib 4", "--distance", "13.00");
    ok("meet", "attempt", "--who", "Bib 4", "--round", "1", "--distance", "12.00");
    assertThat(ok("meet", "ranks", "--json").json().at("/ranks/0/best_m").asDouble()).isEqualTo(12);
    JsonNode back = ok("meet", "undo", "--json").json();
    assertThat(back.at("/takenBack/distance_m").asDouble()).isEqualTo(12);
    assertThat(back.at("/ranks/0/best_m").asDouble()).isEqualTo(13);
    assertThat(ok("meet", "undo").out()).startsWith("Taken back  Bib 4, round 1: 13.00 m.");
    refused("no attempt to take back", "meet", "undo");
  }

  @Test
  void whatTheNextAttemptIsFor() {
    begin();
    Said few = ok("meet", "aim", "--athlete", "Orla Tamsin");
    assertThat(few.out()).startsWith("START       The data cannot tell.").contains("Left        6 attempts, best so far none").doesNotContain("nothing");
    for (String gap : new String[] {"0.15", "0.20", "0.25", "0.18", "0.22"}) {
      ok("aim", "--athlete", "Orla Tamsin", "--keep", "--gap", gap, "--distance", "12.4" + gap.charAt(3));
    }
    ok("meet", "attempt", "--distance", "12.50", "--gap", "0.21");
    ok("meet", "attempt", "--distance", "12.61");
    JsonNode aim = ok("meet", "aim", "--athlete", "Orla Tamsin", "--json").json();
    assertThat(aim.get("attemptsLeft").asInt()).isEqualTo(5);
    assertThat(aim.get("best_m").asDouble()).isEqualTo(12.5);
    assertThat(aim.get("purpose").asText()).isEqualTo("the longest best");
    assertThat(aim.get("move_m").asDouble()).as("the foot falls 20 cm short: forward").isBetween(-0.20, -0.05);
    assertThat(aim.get("cannotTell").isNull()).isTrue();
    JsonNode bib = aim.at("/rivals/0");
    assertThat(bib.get("rival").asText()).isEqualTo("Bib 4");
    assertThat(bib.get("needed_m").asDouble()).as("level will do: the second best decides").isEqualTo(12.61);
    assertThat(ok("meet", "aim", "--athlete", "Orla Tamsin").out()).startsWith("START       Move the start forward").contains("12.61 m stands ahead");
  }

  @Test
  void otherRulesAndBoards() {
    ok(
        "meet", "new", "--name", "School", "--for", "my own words", "--board", "28 ft", "--measure", "quarter inch", "--rounds", "4", "--first-rounds",
        "2", "--finalists", "1", "--order", "worst first always", "--date", "2026-05-14");
    ok("meet", "enter", "--rival", "One");
    ok("meet", "enter", "--rival", "Two");
    for (String distance : new String[] {"35-06.30", "34-00", "35-00", "36-00"}) {
      ok("meet", "attempt", "--unit", "ft", "--distance", distance);
    }
    JsonNode said = ok("meet", "ranks", "--json").json();
    // 36 ft exactly by the foot of 0.3048 m (1959; published)
    assertThat(said.at("/ranks/0/best_m").asDouble()).isEqualTo(10.973);
    assertThat(said.at("/meet/boardToSand_m").asDouble()).isEqualTo(8.534);
    assertThat(said.get("cut").asBoolean()).isTrue();
    assertThat(said.get("goOn")).hasSize(1);
    refused("did not go on", "meet", "attempt", "--who", "One", "--distance", "9.00");
  }

  /** An athlete's own data: theirs and nobody else's. */
  @Test
  void everythingOfAnAthleteIsHandedOut() {
    begin();
    ok("meet", "attempt", "--distance", "12.5", "--gap", "0.1", "--note", "good");
    ok("meet", "attempt", "--distance", "11.9");
    ok("phases", "--athlete", "Orla Tamsin", "--keep", "--run-up", "12", "--hop", "4.5", "--step", "3.2", "--jump", "4.1", "--note", "taped");
    ok("approach", "--athlete", "Orla Tamsin", "--keep", "--steps", "6", "--start", "10.40", "--gap", "0.13");
    ok("aim", "--athlete", "Orla Tamsin", "--keep", "--foul");
    ok("aim", "--athlete", "Zoë Brandel", "--keep", "--foul");
    Said said = ok("export", "--athlete", "Orla Tamsin", "--jumps");
    JsonNode one = said.json().get(0);
    assertThat(said.json()).hasSize(1);
    assertThat(one.at("/jumps/0/note").asText()).isEqualTo("taped");
    assertThat(one.at("/jumps/0/runUpSteps").asInt()).isEqualTo(12);
    assertThat(one.at("/runThroughs/0/startMark_m").asDouble()).isEqualTo(10.4);
    assertThat(one.get("takeOffs")).hasSize(1);
    assertThat(one.at("/attempts/0/meet").asText()).isEqualTo("Invented Evening");
    assertThat(one.at("/attempts/0/attempt/distance_m").asDouble()).isEqualTo(12.5);
    assertThat(said.out()).doesNotContain("Bib 4").doesNotContain("11.9");
    assertThat(ok("export", "--jumps", "--out", "jumps.json").out()).startsWith("3 athletes written to");
  }

  @Test
  void badInputIsRefusedInASentence() {
    refused("There is no meet here yet", "meet", "ranks");
    begin();
    refused("three", "meet", "attempt");
    refused("three", "meet", "attempt", "--foul", "--pass");
    refused("triple jump of 25 m", "meet", "attempt", "--distance", "25");
    refused("'far' is not a length", "meet", "attempt", "--distance", "far");
    refused("wind of 30 m/s", "meet", "attempt", "--distance", "12", "--wind", "30");
    refused("contradiction", "meet", "attempt", "--distance", "12", "--gap", "-0.05");
    refused("board gap of 3 m", "meet", "attempt", "--distance", "12", "--gap", "3");
    refused("shift of the start mark of 9 m", "meet", "attempt", "--foul", "--shift", "9");
    refused("A round of 9", "meet", "attempt", "--foul", "--round", "9");
    refused("Nobody on the list of Invented Evening is called 'Nils'", "meet", "attempt", "--who", "Nils", "--foul");
    refused("already", "meet", "enter", "--rival", "BIB 4");
    refused("one of the two", "meet", "enter");
    refused("No meet is called 'x'", "meet", "ranks", "--meet", "x");
    refused("competition 'giants' is not known", "meet", "new", "--name", "A", "--for", "giants");
    refused("board distance of 40 m", "meet", "new", "--name", "A", "--board", "40");
    refused("1 to 80 characters", "meet", "new", "--name", " ");
    refused("Rounds of 9", "meet", "new", "--name", "A", "--rounds", "9");
    refused("is no date", "meet", "new", "--name", "A", "--date", "yesterday");
    refused("not on the list", "meet", "aim", "--athlete", "Piet Quill");
    assertThat(ok("meet", "--list", "--json").json().at("/0/attempts").asInt()).as("nothing of it was kept").isZero();
  }

  @ParameterizedTest
  @ValueSource(strings = {"new", "enter", "attempt", "undo", "ranks", "aim"})
  void eachHasHelpAndJson(String command) {
    Said said = ok("meet", command, "--help");
    assertThat(said.out()).contains("Usage: boundwright meet " + command).contains("--json").contains("--data");
  }
}
