package boundwright.card;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.demo.DemoSeason;
import boundwright.footfall.Foot;
import boundwright.load.GuardSettings;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.season.Member;
import boundwright.season.PlainPlanner;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.sheet.SeasonOverview;
import boundwright.season.sheet.WeekSheet;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** The wall plan and the week's sheet as real PDFs, read back by their words and sizes. */
class SeasonSheetsTest {
  private static final SeasonInput SEASON = DemoSeason.from(LocalDate.of(2026, 9, 28), GuardSettings.DEFAULT);
  private static final ContactWeights WEIGHTS = new ContactWeights(GuardSettings.DEFAULT.scale());
  private static final SeasonSheets SHEETS = new SeasonSheets(new CardPdf());

  /** The invented season with so many athletes. */
  static SeasonInput of(int athletes) {
    List<Member> squad = new ArrayList<>();
    for (int i = 0; i < athletes; i++) {
      Member m = SEASON.squad().get(i % 3);
      squad.add(
          new Member(
              new Athlete(i + 1, i < 3 ? m.name() : m.name() + " " + (i + 1), Level.INTERMEDIATE, Foot.RIGHT, m.athlete().rung()), false, null, Map.of(), m.fullSteps(), m.days(),
              m.peakWeek(), m.joins(), m.away(), m.entries(), m.wishes(), m.past()));
    }
    return new SeasonInput(SEASON.name(), SEASON.first(), SEASON.last(), SEASON.periods(), SEASON.meets(), SEASON.venues(), squad, SEASON.rules());
  }

  private static SeasonPlan plan(SeasonInput season) {
    return new SeasonPlan(season.name(), 3, new PlainPlanner().plan(season, Optional.empty()).years());
  }

  static SeasonOverview overview(SeasonInput season, LocalDate today) {
    SeasonPlan plan = plan(season);
    List<DayLoad> done = plan.years().get(0).days().stream().filter(d -> d.date().isBefore(today)).map(d -> d.session().on(d.date())).toList();
    return SeasonOverview.of(season, plan, Map.of(1L, done), m -> WEIGHTS, today);
  }

  @Test
  void theWallPlanOfASquadIsOnePageAcross() throws IOException {
    for (int athletes : new int[] {3, 24}) {
      byte[] pdf = SHEETS.wall(overview(of(athletes), LocalDate.of(2026, 12, 2)), SeasonSheets.Wall.A3, "Invented.");
      try (PDDocument d = Loader.loadPDF(pdf)) {
        assertThat(d.getNumberOfPages()).as("%d athletes", athletes).isEqualTo(1);
        assertThat(d.getPage(0).getMediaBox().getWidth()).isGreaterThan(d.getPage(0).getMediaBox().getHeight());
        String words = new PDFTextStripper().getText(d);
        assertThat(words).contains("Two peaks (invented)", "version 3", "Wren Samphire", "Linnea Saltwort", "2 Indoor championships (invented), Sat 27 Feb", "Invented.");
      }
    }
    try (PDDocument d = Loader.loadPDF(SHEETS.wall(overview(of(70), LocalDate.of(2026, 12, 2)), SeasonSheets.Wall.A4, ""))) {
      assertThat(d.getNumberOfPages()).as("what cannot be read on one page goes on").isBetween(3, 5);
      assertThat(new PDFTextStripper().getText(d)).contains("Linnea Saltwort 69");
    }
  }

  @Test
  void theWeeksSheetSaysWhoDoesWhatWhere() throws IOException {
    WeekSheet sheet = WeekSheet.of(SEASON, plan(SEASON), LocalDate.of(2026, 10, 15));
    assertThat(sheet.days().get(0)).isEqualTo(LocalDate.of(2026, 10, 12));
    try (PDDocument d = Loader.loadPDF(SHEETS.week(sheet, ""))) {
      assertThat(d.getNumberOfPages()).isEqualTo(1);
      String words = new PDFTextStripper().getText(d);
      assertThat(words).contains("Week of 12 Oct 2026", "Mon 12 Oct", "Otis Sedgeley", "RRL RRL", "RL x5", "Lower meadow").doesNotContain("Sun 18 Oct");
    }
  }

  @Test
  void howContactsAreWeighedIsAskedOnceForEachAthlete() {
    List<Long> asked = new ArrayList<>();
    SeasonOverview.of(
        SEASON, plan(SEASON), Map.of(),
        m -> {
          asked.add(m.id());
          return WEIGHTS;
        },
        SEASON.first());
    assertThat(asked).as("the store is read for each answer").containsExactlyElementsOf(SEASON.squad().stream().map(Member::id).toList());
  }

  @Test
  void theFiguresOfAWeekAreThoseOfItsSessions() {
    SeasonPlan plan = plan(SEASON);
    SeasonOverview overview = SeasonOverview.of(SEASON, plan, Map.of(), m -> WEIGHTS, SEASON.first().minusDays(1));
    for (SeasonPlan.Year y : plan.years()) {
      SeasonOverview.Row row = overview.rows().stream().filter(r -> r.id() == y.athleteId()).findFirst().orElseThrow();
      assertThat(row.weeks()).hasSize(44).allSatisfy(w -> assertThat(w.done()).isEmpty());
      for (Foot foot : Foot.values()) {
        int contacts = y.days().stream().mapToInt(d -> d.session().contacts(foot)).sum();
        assertThat(row.weeks().stream().mapToInt(w -> foot == Foot.RIGHT ? w.planned().right() : w.planned().left()).sum()).isEqualTo(contacts);
      }
      WeekSheet week = WeekSheet.of(SEASON, plan, SEASON.first());
      assertThat(week.rows().stream().filter(r -> r.id() == y.athleteId()).findFirst().orElseThrow().contacts(Foot.LEFT))
          .isEqualTo(row.weeks().get(0).planned().left());
    }
  }
}
