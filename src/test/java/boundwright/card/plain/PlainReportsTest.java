package boundwright.card.plain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.card.CardPdf;
import boundwright.card.Paper;
import boundwright.card.plain.PlainReport.Part;
import boundwright.demo.DemoSquad;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.Answer;
import boundwright.load.Finding;
import boundwright.load.GuardOverride;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.rating.SessionRating;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestProtocol;
import boundwright.readiness.TestScore;
import boundwright.store.Workbench;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlainReportsTest {
  private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 12);

  private static PlainReports reports(Workbench w) {
    return new PlainReports(new PlainReports.Sources(w.athletes(), w.reps(), w.workLog(), w.looks(), w.tests(), w.meets()));
  }

  private static List<PlainReport> all(Workbench w) {
    List<PlainReport> out = new ArrayList<>();
    for (Athlete a : w.athletes().all()) {
      out.add(reports(w).forAthlete(a, LengthUnit.METRES, TODAY, ""));
      out.add(reports(w).forHome(a, LengthUnit.METRES, TODAY, ""));
    }
    out.add(reports(w).forClub(TODAY.minusWeeks(26), TODAY, TODAY, LengthUnit.METRES, ""));
    return out;
  }

  private static List<String> words(List<PlainReport> reports) {
    return reports.stream().flatMap(r -> r.parts().stream()).map(p -> p.heading() + p.words() + p.columns() + p.table()).toList();
  }

  /** To the letter the same, whatever is entered of health: nothing of it can have gone in. */
  @Test
  void nothingOfHealthGoesIntoAnyOfThem(@TempDir Path dir) {
    try (Workbench w = Workbench.open(dir, CLOCK)) {
      DemoSquad.fill(w);
      List<String> before = words(all(w));
      for (Athlete a : w.athletes().all()) {
        w.care().addPain(a.id(), new Pain(0, TODAY, "right heel", 6, null, true));
        w.care().openHold(a.id(), new MedicalHold(0, TODAY, "seen by the physiotherapist", null, null));
        w.care().setGrowing(a.id(), true, TODAY.minusWeeks(3));
        w.care().keep(new SessionRating(a.id(), TODAY, 9, 80));
        w.care().keep(new GuardOverride(0, a.id(), TODAY, Finding.Rule.SPACING, Answer.CAUTION, "said", "the coach's own reason"));
      }
      assertThat(words(all(w))).isEqualTo(before);
      assertThat(String.join(" ", before)).contains("Bounds from", "contacts", "so far.").doesNotContainIgnoringCase("hold ").doesNotContain("heel");
    }
  }

  /** Running is no bounding: a sum that has run-throughs in it says how many, and that each is one contact. */
  @Test
  void aSumSaysWhatItCountsOfRunThroughs(@TempDir Path dir) {
    try (Workbench w = Workbench.open(dir, CLOCK)) {
      Athlete a = athlete(w, "Ada");
      w.logbook().log(new Rep(0, a.id(), TODAY, Sequence.parse("RL x5"), 0, Surface.GRASS, List.of(), 20.0, null, null, List.of()));
      assertThat(String.join(" ", words(all(w)))).contains("10 contacts").doesNotContain("run-through");
      for (int i = 0; i < 2; i++) {
        w.runThroughs().add(new RunThroughEntry(0, a.id(), TODAY, new RunThrough(5, 9.1, List.of(Double.NaN, 6.33, 4.2, Double.NaN, -0.03), null, null), ""));
      }
      String one = "2 of them from run-throughs, each counted as one, at the board.";
      for (PlainReport r : all(w)) {
        assertThat(String.join(" ", words(List.of(r)))).contains("12 contacts").contains(one);
      }
    }
  }

  /**
   * Of the five pairs of Hopkins 2000 (Sports Med 30:1-15), divided by ten: typical error .28896, so a change of more than 1.96 x sqrt 2 x .28896 = .801 m
   * is more than the test can miss by.
   */
  @Test
  void aChangeIsCalledOneOnlyBeyondWhatTheTestCanMissBy(@TempDir Path dir) {
    double[][] pairs = {{6.2, 6.7}, {7.8, 7.6}, {8.1, 8.7}, {5.5, 5.5}, {6.6, 6.3}};
    try (Workbench w = Workbench.open(dir, CLOCK)) {
      Athlete within = athlete(w, "Ada");
      Athlete beyond = athlete(w, "Bo");
      Athlete none = athlete(w, "Cy");
      score(w, within, TODAY.minusDays(120), 9);
      assertThat(progress(w, within)).endsWith("9.00 m on 12 Jan 2026. Taken again in some weeks, it will tell of progress.");
      score(w, within, TODAY.minusDays(2), 9.8);
      assertThat(progress(w, within)).as("by what others measured, until the squad's own is known").contains("no change can be told");
      for (double[] p : pairs) {
        Athlete other = athlete(w, "Other " + p[0]);
        score(w, other, TODAY.minusDays(7), p[0]);
        score(w, other, TODAY, p[1]);
      }
      score(w, beyond, TODAY.minusDays(120), 9);
      score(w, beyond, TODAY.minusDays(2), 9.81);
      assertThat(progress(w, within)).isEqualTo(
          "Five bounds from standing: 9.80 m on 10 May 2026. On 12 Jan 2026 it was 9.00 m. The difference is within what the test can miss by (0.80 m), so no change can be told.");
      assertThat(progress(w, beyond)).isEqualTo(
          "Five bounds from standing: 9.81 m on 10 May 2026. On 12 Jan 2026 it was 9.00 m. That is 0.81 m more, and more than the test can miss by (0.80 m).");
      for (int i = 0; i < 2; i++) {
        w.tests().add(new TestScore(0, none.id(), TestKind.TIMED_RUN_UP, 6, 6.5 + i, null, TODAY.minusDays(90 - 40 * i), TestProtocol.usual(TestKind.TIMED_RUN_UP, Surface.GRASS)));
      }
      assertThat(progress(w, none)).endsWith("it was 6.50 m/s. How exact this test is here is not known yet, so it cannot be said whether that is progress.");
      assertThat(progress(w, athlete(w, "Dee"))).isEqualTo("Bounds from a run-up of 4 steps. No test was taken yet, so progress cannot be told.");
    }
  }

  private static Athlete athlete(Workbench w, String name) {
    return w.athletes().add(new Athlete(0, name, Level.INTERMEDIATE, Foot.RIGHT, 4));
  }

  private static void score(Workbench w, Athlete athlete, LocalDate day, double metres) {
    w.tests().add(new TestScore(0, athlete.id(), TestKind.STANDING_FIVE, 0, metres, null, day, TestProtocol.usual(TestKind.STANDING_FIVE, Surface.GRASS)));
  }

  private static String progress(Workbench w, Athlete athlete) {
    Part part = reports(w).forAthlete(athlete, LengthUnit.METRES, TODAY, "").parts().get(0);
    return part.words().get(part.words().size() - 1);
  }

  @Test
  void thoseOfTheInventedSquadFitAPageEachAndSayWhatTheyAre(@TempDir Path dir) throws IOException {
    try (Workbench w = Workbench.open(dir, CLOCK)) {
      DemoSquad.fill(w);
      Athlete one = w.athletes().all().get(0);
      for (PlainReport r :
          List.of(
              reports(w).forAthlete(one, LengthUnit.FEET_INCHES, TODAY, DemoSquad.NOTE), reports(w).forHome(one, LengthUnit.METRES, TODAY, DemoSquad.NOTE),
              reports(w).forClub(TODAY.minusWeeks(26), TODAY, TODAY, LengthUnit.METRES, DemoSquad.NOTE))) {
        try (PDDocument pdf = Loader.loadPDF(new CardPdf().renderPlain(r, Paper.A4))) {
          assertThat(pdf.getNumberOfPages()).isEqualTo(1);
          assertThat(new PDFTextStripper().getText(pdf)).contains(r.title(), DemoSquad.NOTE);
        }
      }
    }
  }

  @Test
  void theClubsReportCountsTheDaysFromTheFirstToTheLast(@TempDir Path dir) {
    try (Workbench w = Workbench.open(dir, CLOCK)) {
      DemoSquad.fill(w);
      LocalDate first = TODAY.minusDays(20);
      LocalDate last = TODAY.minusDays(10);
      Part squad = reports(w).forClub(first, last, TODAY, LengthUnit.METRES, "").parts().get(0);
      for (int i = 0; i < squad.table().size(); i++) {
        Athlete a = w.athletes().all().get(i);
        long days = w.reps().since(a.id(), first).stream().filter(r -> !r.date().isAfter(last)).map(r -> r.date()).distinct().count();
        assertThat(Long.parseLong(squad.table().get(i).get(1))).as(a.name()).isGreaterThanOrEqualTo(days);
      }
      assertThatThrownBy(() -> reports(w).forClub(TODAY, TODAY.minusDays(1), TODAY, LengthUnit.METRES, ""))
          .isInstanceOf(RefusedException.class).hasMessageContaining("2026-05-12").hasMessageContaining("Give other days");
      assertThatThrownBy(() -> reports(w).forClub(TODAY.minusDays(401), TODAY, TODAY, LengthUnit.METRES, "")).isInstanceOf(RefusedException.class);
    }
  }
}
