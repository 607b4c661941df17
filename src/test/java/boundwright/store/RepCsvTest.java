package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The file of reps. Quotes, commas and line ends are those of RFC 4180 (published). */
class RepCsvTest {
  private static final String HEADER = "date,athlete,sequence,approach_steps,surface,footprints_m,landing_m,outcome,mark_to_sand_m\n";

  private static RepCsv.Reading read(String text) {
    return RepCsv.read(new StringReader(text), Fixtures.TODAY);
  }

  private static String why(String row) {
    RepCsv.Reading reading = read(HEADER + row + "\n");
    assertThat(reading.rows()).isEmpty();
    assertThat(reading.problems()).hasSize(1);
    assertThat(reading.problems().get(0).line()).isEqualTo(2);
    return reading.problems().get(0).why();
  }

  @Test
  void aRowIsReadAsItStands() {
    RepCsv.Reading reading = read(HEADER + "2026-05-05,Ada Fenn,RRL,4,sprung floor,2.61;,8.12,in,7.5\n");
    assertThat(reading.problems()).isEmpty();
    assertThat(reading.rows())
        .containsExactly(
            new RepCsv.Row(
                2,
                "Ada Fenn",
                new Rep(
                    0,
                    0,
                    LocalDate.of(2026, 5, 5),
                    Sequence.parse("RRL"),
                    4,
                    Surface.SPRUNG_FLOOR,
                    List.of(2.61, Double.NaN),
                    8.12,
                    Outcome.IN,
                    7.5,
                    List.of())))
        .isEqualTo(read(HEADER + "2026-05-05,Ada Fenn,RRL,4,Sprung_Floor,2.61; ;,8.12,IN,7.50\n").rows());
  }

  @Test
  void anAbandonedRepNamesItsLastContactBehindAnAt() {
    RepCsv.Reading reading =
        read(HEADER + "2026-05-05,Ada,RRL x2,4,grass,2.5,,abandoned@4,14\n2026-05-05,Ada,RRL x2,4,grass,,,Abandoned,\n");
    assertThat(reading.problems()).isEmpty();
    assertThat(reading.rows()).extracting(r -> r.rep().outcome()).containsOnly(Outcome.ABANDONED);
    assertThat(reading.rows()).extracting(r -> r.rep().brokeOffAfter()).containsExactly(4, null);
    StringWriter out = new StringWriter();
    RepCsv.write(out, reading.rows());
    assertThat(out.toString()).contains(",abandoned@4,14,").contains(",abandoned,,");
    assertThat(read(out.toString()).rows()).extracting(RepCsv.Row::rep).isEqualTo(reading.rows().stream().map(RepCsv.Row::rep).toList());
    assertThat(why("2026-05-05,Ada,RRL,4,grass,,,abandoned@5,")).contains("contacts 1 to 3");
    assertThat(why("2026-05-05,Ada,RRL,4,grass,,,abandoned@x,")).contains("no contact after the @");
    assertThat(why("2026-05-05,Ada,RRL,4,grass,,,short@2,")).contains("outcome is 'short'");
  }

  @Test
  void theExampleInTheDocumentIsTaken() throws IOException {
    String document = Files.readString(Path.of("docs", "formats.md"));
    String example = document.substring(document.indexOf("```csv\n") + 7, document.indexOf("\n```\n", document.indexOf("```csv")));
    RepCsv.Reading reading = read(example);
    assertThat(reading.problems()).isEmpty();
    assertThat(reading.rows()).hasSize(4);
    assertThat(example.lines().findFirst()).contains(String.join(",", RepCsv.COLUMNS));
  }

  @Test
  void columnsComeInAnyOrderWithOrWithoutTheLastTwo() {
    String eight = "outcome,landing_m,footprints_m,surface,approach_steps,sequence,athlete,date\nshort,,,grass,0,RL x2,Bo,2026-05-05\n";
    String ten =
        """
        Faults, mark_to_sand_m ,outcome,landing_m,footprints_m,surface,approach_steps,sequence,athlete,date
        dangling-toe; forward-lean,,short,,,grass,0,RL x2,Bo,2026-05-05
        """;
    assertThat(read(eight).problems()).isEmpty();
    assertThat(read(ten).problems()).isEmpty();
    assertThat(read(eight).rows()).singleElement().satisfies(r -> assertThat(r.rep().faults()).isEmpty());
    assertThat(read(ten).rows()).singleElement().satisfies(r -> assertThat(r.rep().faults()).containsExactly("dangling-toe", "forward-lean"));
  }

  @Test
  void cleanMeansJudgedAndEmptyMeansNotJudged() {
    String text =
        """
        date,athlete,sequence,approach_steps,surface,footprints_m,landing_m,outcome,faults
        2026-05-05,Ada,RRL,4,grass,,8.1,,
        2026-05-05,Ada,RRL,4,grass,,8.1,,clean
        2026-05-05,Ada,RRL,4,grass,,8.1,, Clean ;
        2026-05-05,Ada,RRL,4,grass,,8.1,,Toe-Up@3; low-knee
        """;
    assertThat(read(text).problems()).isEmpty();
    assertThat(read(text).rows()).extracting(r -> r.rep().judged()).containsExactly(false, true, true, true);
    assertThat(read(text).rows()).extracting(r -> r.rep().faults()).containsExactly(List.of(), List.of(), List.of(), List.of("toe-up@3", "low-knee"));
    StringWriter out = new StringWriter();
    RepCsv.write(out, read(text).rows());
    assertThat(out.toString()).containsOnlyOnce(",toe-up@3;low-knee\r\n").contains(",clean\r\n");
    assertThat(read(out.toString()).rows()).extracting(RepCsv.Row::rep).isEqualTo(read(text).rows().stream().map(RepCsv.Row::rep).toList());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          clean;toe-up | say clean and name a fault
          toe-up@4     | has 3 contacts
          toe-up@      | no contact after the @
          low knee     | small letters, digits and single hyphens
          """)
  void whatIsWrongWithTheFaultsIsSaid(String faults, String said) {
    RepCsv.Reading reading =
        read("date,athlete,sequence,approach_steps,surface,footprints_m,landing_m,outcome,faults\n2026-05-05,Ada,RRL,4,grass,,8.1,," + faults + "\n");
    assertThat(reading.rows()).isEmpty();
    assertThat(reading.problems()).singleElement().satisfies(p -> assertThat(p.why()).contains(said));
  }

  @Test
  void byteOrderMarkAndEitherLineEndAreTaken() {
    String text = HEADER + "2026-05-05,Ada,RRL,4,grass,,8.1,,\n\n,,,,,,,,\n2026-05-05,Ada,RRL,4,grass,,8.2,,\n";
    RepCsv.Reading plain = read(text);
    assertThat(plain.problems()).isEmpty();
    assertThat(plain.rows()).extracting(RepCsv.Row::line).containsExactly(2, 5);
    assertThat(read("\uFEFF" + text)).isEqualTo(plain);
    assertThat(read("\uFEFF" + text.replace("\n", "\r\n"))).isEqualTo(plain);
    assertThat(read(text.stripTrailing())).isEqualTo(plain);
  }

  @Test
  void everyBadRowIsReportedWithItsLineInTheFile() {
    RepCsv.Reading reading =
        read(
            HEADER
                + """
                2026-05-05,"Ada
                Fenn",RRL,4,grass,,8.1,,
                2026-05-05,Ada,RXL,4,grass,,8.1,,

                2026-05-05,Ada,RRL,4,grass,,8.1,,
                2026-05-05,Ada,RRL,44,grass,,8.1,,
                """);
    assertThat(reading.rows()).extracting(RepCsv.Row::line).containsExactly(2, 6);
    assertThat(reading.rows()).extracting(RepCsv.Row::athlete).containsExactly("Ada Fenn", "Ada");
    assertThat(reading.problems()).extracting(RepCsv.Problem::line).containsExactly(4, 7);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          2026-05-05,Ada,RXL,4,grass,,8.1,,            | In the sequence 'RXL': Character 2 ('X')
          2026-05-05,Ada,,4,grass,,8.1,,               | 0 contacts
          2026-05-05,Ada,R x61,4,grass,,8.1,,          | 61 contacts; the limit is 60
          2026-05-05,Ada,RRL,-1,grass,,8.1,,           | Approach steps of -1 are out of range
          2026-05-05,Ada,RRL,40,grass,,8.1,,           | Approach steps of 40 are out of range
          2026-05-05,Ada,RRL,four,grass,,8.1,,         | approach steps 'four' are not a whole number
          2026-05-05,Ada,RRL,,grass,,8.1,,             | are not a whole number
          2026-05-05,Ada,RRL,4,,,8.1,,                 | The surface is empty. Write grass, sprung floor, raised runway, track or concrete.
          2026-05-05,Ada,RRL,4,moon,,8.1,,             | The surface 'moon' is not known
          2026-05-05,Ada,RRL,4,grass,,0,,              | limit is 0.60 m to 24.00 m
          2026-05-05,Ada,RRL,4,grass,,90,,             | 90.00 m
          2026-05-05,Ada,RRL,4,grass,5;4,8.1,,         | Footprints out of order
          2026-05-05,Ada,RRL,4,grass,2;4;6,8.1,,       | 3 footprints were given
          2026-05-05,Ada,RRL,4,grass,2 m;4,8.1,,       | footprint '2 m' is not a number
          2026-05-05,Ada,RRL,4,grass,,"8,1",,          | landing '8,1' is not a number. Write metres with a point
          2026-05-05,Ada,RRL,4,grass,,NaN,,            | landing 'NaN' is not a number
          2026-05-05,Ada,RRL,4,grass,,8.1,sand,        | The outcome 'sand' is not known. Write short, in, late, abandoned or done
          2026-05-05,Ada,RRL,4,grass,,,,               | The rep says nothing
          2026-05-05,Ada,RRL,4,grass,,8.1,short,8      | The outcome 'short' does not fit
          2026-05-05,Ada,RRL,4,grass,,8.1,,-1          | out of range: 0 to 300.00 m
          2026-05-05,,RRL,4,grass,,8.1,,               | The athlete is empty
          2026-05-05,Ad\uFFFD,RRL,4,grass,,8.1,,       | Save the file as CSV UTF-8
          05/05/2026,Ada,RRL,4,grass,,8.1,,            | date '05/05/2026' is not a date. Write year-month-day
          2026-02-30,Ada,RRL,4,grass,,8.1,,            | is not a date
          1949-12-31,Ada,RRL,4,grass,,8.1,,            | the oldest that is taken is 1950-01-01
          2026-05-05,Ada,RRL,4,grass,,8.1              | The line has 7 cells, the first line names 9 columns
          2026-05-05,Ada,RRL,4,grass,8.1,,in,7.5,      | The line has 10 cells
          """)
  void whatIsWrongIsSaid(String row, String said) {
    assertThat(why(row)).contains(said).doesNotContain("\n");
  }

  @Test
  void theEdgesOfTheDatesAreTaken() {
    assertThat(read(HEADER + "2026-05-12,Ada,RRL,4,grass,,8.1,,\n1950-01-01,Ada,RRL,4,grass,,8.1,,\n").rows()).hasSize(2);
  }

  @Test
  void allThatIsWrongWithARowIsSaidAtOnce() {
    assertThat(why("yesterday,Ada,RXL,44,moon,a,b,c,d"))
        .contains("'yesterday'", "'RXL'", "steps of 44", "'moon'", "footprint 'a'", "landing 'b'", "'c'", "mark 'd'");
  }

  @Test
  void wrongColumnsAreNamedOnTheFirstLine() {
    RepCsv.Reading reading = read("date,athlete,athlete,sequence,steps,surface,footprints_m,landing_m,outcome\n2026-05-05,,,,,,,,\n");
    assertThat(reading.rows()).isEmpty();
    assertThat(reading.problems()).hasSize(1);
    assertThat(reading.problems().get(0).line()).isEqualTo(1);
    assertThat(reading.problems().get(0).why())
        .contains("There is no column 'steps'.", "The column 'athlete' is there twice.", "The column 'approach_steps' is missing.")
        .doesNotContain("'mark_to_sand_m' is missing");
    assertThat(read("2026-05-05,Ada,RRL,4,grass,,8.1,,\n").problems())
        .singleElement()
        .satisfies(p -> assertThat(p.why()).contains("The first line names the columns"));
    assertThat(read("").problems()).singleElement().satisfies(p -> assertThat(p.why()).contains("The file is empty"));
  }

  @Test
  void otherSeparatorsAreToldNotTried() {
    assertThat(read(HEADER.replace(',', ';') + "2026-05-05;Ada;RRL;4;grass;;8,1;;\n").problems())
        .singleElement()
        .satisfies(p -> assertThat(p.why()).contains("separated by semicolons", "needs commas"));
    assertThat(read(HEADER.replace(',', '\t')).problems())
        .singleElement()
        .satisfies(p -> assertThat(p.why()).contains("separated by tabs"));
  }

  @Test
  void afterAnOpenQuoteNoRowIsTrusted() {
    for (String bad : List.of("2026-05-05,\"Ada,RRL,4,grass,,8.1,,\n", "2026-05-05,\"Ada\" B,RRL,4,grass,,8.1,,\n")) {
      RepCsv.Reading reading = read(HEADER + "2026-05-05,Ada,RRL,4,grass,,8.1,,\n" + bad);
      assertThat(reading.rows()).isEmpty();
      assertThat(reading.problems()).singleElement().satisfies(p -> assertThat(p.why()).contains("quotation mark"));
      assertThat(reading.problems().get(0).line()).isEqualTo(3);
    }
  }

  @Test
  void aFileThatIsNotUtf8IsRefused(@TempDir Path dir) throws IOException {
    Path file = dir.resolve("reps.csv");
    Files.writeString(file, HEADER + "2026-05-05,Zo\u00eb,RRL,4,grass,,8.1,,\n", StandardCharsets.ISO_8859_1);
    try (Reader in = RepCsv.open(file)) {
      RepCsv.Reading reading = RepCsv.read(in, Fixtures.TODAY);
      assertThat(reading.rows()).isEmpty();
      assertThat(reading.problems()).singleElement().satisfies(p -> assertThat(p.why()).contains("not UTF-8"));
    }
    Files.writeString(file, HEADER + "2026-05-05,Zo\u00eb,RRL,4,grass,,8.1,,\n");
    try (Reader in = RepCsv.open(file)) {
      assertThat(RepCsv.read(in, Fixtures.TODAY).rows()).extracting(RepCsv.Row::athlete).containsExactly("Zo\u00eb");
    }
    assertThatThrownBy(() -> RepCsv.open(dir.resolve("none.csv")).close())
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("There is no file");
  }

  @Test
  void whatIsWrittenReadsBackTheSame() {
    long seed = 42;
    Random random = new Random(seed);
    List<RepCsv.Row> rows = new ArrayList<>();
    String[] names = {"Ada Fenn", "=SUM(A1)", "-Bo", "'Quote", "'=Both", "Reed, \"Tall\"", "@home", "Zo\u00eb"};
    for (int i = 0; i < 300; i++) {
      rows.add(new RepCsv.Row(i + 2, names[random.nextInt(names.length)], Fixtures.any(random, 0)));
    }
    StringWriter out = new StringWriter();
    RepCsv.write(out, rows);
    RepCsv.Reading back = read(out.toString());
    assertThat(back.problems()).as("seed %d", seed).isEmpty();
    assertThat(back.rows()).as("seed %d", seed).isEqualTo(rows);
  }

  @Test
  void noCellThatIsWrittenRunsAsAFormula() throws IOException {
    StringWriter out = new StringWriter();
    Rep rep = Fixtures.tap(0, Fixtures.TODAY);
    RepCsv.write(out, List.of(new RepCsv.Row(0, "=HYPERLINK(\"x\")", rep), new RepCsv.Row(0, "+1", rep), new RepCsv.Row(0, "@a", rep)));
    try (CSVParser parser = CSVFormat.RFC4180.parse(new StringReader(out.toString()))) {
      assertThat(parser).hasSize(4).allSatisfy(r -> assertThat(r).noneMatch(cell -> cell.matches("(?s)[=+\\-@].*")));
    }
  }

  @Test
  void aDiskThatFillsWhileWritingIsSaid() {
    Writer full =
        new Writer() {
          @Override
          public void write(char[] text, int from, int length) throws IOException {
            throw new IOException("No space left on device");
          }

          @Override
          public void flush() {}

          @Override
          public void close() {}
        };
    assertThatThrownBy(() -> RepCsv.write(full, List.of()))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("could not be written to its end: No space left on device");
  }
}
