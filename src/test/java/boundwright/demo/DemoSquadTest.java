package boundwright.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.load.Answer;
import boundwright.load.DayVerdict;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.MarkAdvice;
import boundwright.store.Fixtures;
import boundwright.store.RepExport;
import boundwright.store.Workbench;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The invented squad: complete, the same every time, marked as invented, and never among real people. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class DemoSquadTest {
  @TempDir Path dir;

  private Workbench open(String name) {
    return Workbench.open(dir.resolve(name), Fixtures.CLOCK);
  }

  @Test
  void everyAthleteHasTestsRepsOfEachKindAndMostMarksAnOpenWindow() {
    try (Workbench w = open("one")) {
      DemoSquad.fill(w);
      List<Athlete> squad = w.athletes().all();
      assertThat(squad).hasSize(8);
      List<Rep> all = new ArrayList<>();
      for (Athlete a : squad) {
        List<Rep> reps = w.reps().inOrder(a.id());
        assertThat(reps.size()).as(a.name()).isBetween(12, 60);
        assertThat(reps).allSatisfy(r -> assertThat(r.date()).isBetween(Fixtures.TODAY.minusDays(30), Fixtures.TODAY.minusDays(1)));
        assertThat(w.athletes().profile(a).knownMarks()).as(a.name()).isNotEmpty();
        assertThat(w.athletes().profile(a).runUps().isEmpty()).as(a.name()).isEqualTo(a.rung() == 0);
        assertThat(w.logbook().model(a).reps()).isEqualTo(reps.size());
        all.addAll(reps);
      }
      assertThat(all).anyMatch(r -> !r.footprints_m().isEmpty());
      assertThat(all).anyMatch(r -> r.footprints_m().isEmpty() && r.landing_m() != null);
      assertThat(all).anyMatch(r -> r.landing_m() == null);
      assertThat(all).extracting(Rep::outcome).contains(Outcome.SHORT, Outcome.IN, Outcome.LATE);

      int open = 0;
      int asked = 0;
      CoachSettings settings = w.settings().settings();
      for (Drill drill : w.settings().plan().drills()) {
        for (Athlete a : squad) {
          MarkAdvice advice = w.advisor().advise(a, drill.sequence(), drill.stepsFor(a.rung()), settings);
          if (drill.inSand()) {
            asked++;
            open += advice.window() == null ? 0 : 1;
          }
        }
      }
      assertThat(open).isGreaterThan(asked / 2);
    }
  }

  /** What the demo plans is not refused by what the demo did before, but for the one who is held. */
  @Test
  void itsOwnPlanPassesItsOwnLimits() {
    try (Workbench w = open("one")) {
      DemoSquad.fill(w);
      for (Athlete a : w.athletes().all()) {
        DayVerdict day = w.loadDesk().day(a);
        assertThat(day.planned()).as(a.name()).isTrue();
        assertThat(day.notKnownYet()).as(a.name()).isFalse();
        assertThat(day.held()).as(a.name()).isEqualTo(a.name().equals("Tovi Plover"));
        if (!day.held()) {
          assertThat(day.answer()).as(a.name() + ": " + day.lead()).isNotEqualTo(Answer.REFUSED);
        }
      }
    }
  }

  @Test
  void itIsMarkedAsInventedForGood() {
    try (Workbench w = open("one")) {
      assertThat(w.invented()).isFalse();
      DemoSquad.fill(w);
      assertThat(w.settings().settings().facility().name()).contains("invented");
      assertThat(w.settings().plan().title()).contains("invented");
      w.settings().keep(CoachSettings.DEFAULT);
      w.settings().keep(new DayPlan("", List.of()));
    }
    try (Workbench w = open("one")) {
      assertThat(w.invented()).isTrue();
    }
  }

  @Test
  void itIsTheSameEveryTime() {
    StringWriter one = new StringWriter();
    StringWriter two = new StringWriter();
    try (Workbench w = open("one")) {
      DemoSquad.fill(w);
      new RepExport(w).write(one);
    }
    try (Workbench w = open("two")) {
      DemoSquad.fill(w);
      new RepExport(w).write(two);
    }
    assertThat(two.toString()).isEqualTo(one.toString());
  }

  @Test
  void itNeverGoesAmongOthers() {
    try (Workbench w = open("one")) {
      Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
      assertThatThrownBy(() -> DemoSquad.fill(w)).isInstanceOf(RefusedException.class).hasMessageContaining("holds a squad");
      assertThat(w.athletes().all()).containsExactly(ada);
      assertThat(w.invented()).isFalse();
    }
    try (Workbench w = open("two")) {
      DemoSquad.fill(w);
      assertThatThrownBy(() -> DemoSquad.fill(w)).isInstanceOf(RefusedException.class);
      assertThat(w.athletes().all()).hasSize(8);
    }
  }
}
