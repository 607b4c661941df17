package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.card.CardPdf;
import boundwright.card.Paper;
import boundwright.card.plain.PlainReport;
import boundwright.card.plain.PlainReport.Part;
import boundwright.card.plain.PlainReport.Reader;
import boundwright.card.plain.PlainReports;
import boundwright.demo.DemoSquad;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A report for somebody who does not coach. */
@Command(
    name = "report",
    description = {
      "A page for somebody who does not coach: the athlete, those at home, the club. Nothing of anybody's health stands in it.",
      "Example: boundwright report --for home --athlete Ada --out ada.pdf%n"
    })
final class ReportCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--for", required = true, paramLabel = "READER", description = "athlete, home or club.")
  private String reader = "";

  @Option(names = "--athlete", paramLabel = "NAME", description = "Of whom, for the athlete or those at home; any case.")
  private @Nullable String athlete;

  @Option(names = "--from", paramLabel = "DAY", description = "For the club: from this day, as 2026-05-20. Default: " + PlainReports.CLUB_WEEKS + " weeks before the last.")
  private @Nullable String from;

  @Option(names = "--to", paramLabel = "DAY", description = "For the club: to this day. Default: today.")
  private @Nullable String to;

  @Option(names = "--out", paramLabel = "FILE.pdf", description = "Write it as a PDF, too.")
  private @Nullable String out;

  @Option(names = "--force", description = "Replace the file if it is there.")
  private boolean force;

  ReportCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** What {@code report --json} prints; field by field in {@code docs/formats-json.md}. */
  record Answer(String reader, String title, String when, List<Told> parts, String footnote, @Nullable String file) {}

  /** A part of it. */
  record Told(String heading, List<String> lines, List<String> columns, List<List<String>> table) {}

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    Reader who = reader();
    Path file = out == null ? null : s.path(out);
    if (file != null) {
      OutFile.check(file, force);
    }
    try (Workbench bench = data.open(s)) {
      PlainReport report = report(bench, who, s);
      if (file != null) {
        OutFile.write(file, new CardPdf().renderPlain(report, Paper.A4), force);
      }
      if (top.json()) {
        Json.print(s.out(), answer(report, file));
      } else {
        print(s.out(), report);
        if (file != null) {
          s.out().println("It is in " + file + ".");
        }
      }
      return 0;
    }
  }

  private Reader reader() {
    String word = reader.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(Reader.values())
        .filter(r -> r.key().equals(word))
        .findFirst()
        .orElseThrow(() -> new RefusedException("There is no report for '" + reader + "'. Use athlete, home or club."));
  }

  private PlainReport report(Workbench bench, Reader who, Surroundings s) {
    PlainReports reports =
        new PlainReports(new PlainReports.Sources(bench.athletes(), bench.reps(), bench.workLog(), bench.looks(), bench.tests(), bench.meets()));
    LengthUnit unit = bench.settings().settings().unit();
    String footnote = bench.invented() ? DemoSquad.NOTE : "";
    if (who == Reader.CLUB) {
      if (athlete != null) {
        throw new RefusedException("The club's report is of the whole squad. Leave out --athlete, or use --for athlete or home.");
      }
      LocalDate last = Choices.anyDay(to, s);
      LocalDate first = from == null ? last.minusWeeks(PlainReports.CLUB_WEEKS) : Choices.anyDay(from, s);
      return reports.forClub(first, last, s.today(), unit, footnote);
    }
    if (athlete == null) {
      throw new RefusedException("Whose report? Add --athlete NAME.");
    }
    Athlete one = DataOptions.athlete(bench, athlete);
    return who == Reader.ATHLETE ? reports.forAthlete(one, unit, s.today(), footnote) : reports.forHome(one, unit, s.today(), footnote);
  }

  private static Answer answer(PlainReport r, @Nullable Path file) {
    return new Answer(
        r.reader().key(), r.title(), r.when(), r.parts().stream().map(p -> new Told(p.heading(), p.words(), p.columns(), p.table())).toList(), r.footnote(),
        file == null ? null : file.toString());
  }

  private static void print(PrintWriter out, PlainReport report) {
    out.println(report.reader().label() + ": " + report.title() + ", " + report.when());
    for (Part part : report.parts()) {
      out.println();
      out.println(part.heading());
      part.words().forEach(l -> out.println("  " + l));
      if (!part.table().isEmpty()) {
        out.println("  " + String.join(" | ", part.columns()));
        out.println(part.table().stream().map(row -> "  " + String.join(" | ", row)).collect(Collectors.joining(System.lineSeparator())));
      }
    }
    if (!report.footnote().isEmpty()) {
      out.println();
      out.println(report.footnote());
    }
  }
}
