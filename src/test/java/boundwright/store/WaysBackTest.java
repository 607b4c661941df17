package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.load.Finding;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.back.BackStep;
import boundwright.load.back.LegBack;
import boundwright.load.back.Stages;
import boundwright.load.back.WayBack;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.store.view.Seen;
import boundwright.track.Tap;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.jdbi.v3.core.JdbiException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Ways back come back after the folder was closed, are judged with the day, and are kept as they were. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class WaysBackTest {
  private static final LocalDate TODAY = Fixtures.TODAY;
  private static final LocalDate BEGUN = TODAY.minusDays(70);

  @TempDir Path dir;
  private Workbench w;
  private Athlete ada;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    ada = w.athletes().byName("Ada").orElseGet(() -> w.athletes().add(Fixtures.athlete("Ada")));
  }

  @AfterEach
  void close() {
    w.close();
  }

  private static WayBack way(LocalDate begun) {
    return new WayBack(0, Foot.LEFT, begun, new Stages(0.3, 0.15), 123.4, 28, new WayBack.Clearance("Dr Sedge", begun, true), List.of(), null);
  }

  private LegBack standing() {
    return w.care().care(ada.id(), TODAY).backs().get(0);
  }

  @Test
  void everythingComesBackAndTheGuardKnows() {
    WayBack kept = w.waysBack().begin(ada.id(), way(BEGUN));
    BackStep on = w.waysBack().step(ada.id(), kept.id(), new BackStep(0, BEGUN.plusDays(7), BackStep.Kind.ON, 1, "Coach  Reed", "two clean days"));
    w.waysBack().step(ada.id(), kept.id(), new BackStep(0, BEGUN.plusDays(14), BackStep.Kind.ON, 2, "Coach Reed", ""));
    assertThat(standing().stage()).isEqualTo(2);
    // a pain older than the 60 days of the care page still counts
    w.care().addPain(ada.id(), new Pain(0, BEGUN.plusDays(9), "left shin", 6, true, false));
    assertThat(standing().stage()).isEqualTo(1);
    w.close();
    open();
    assertThat(w.waysBack().of(ada.id()).get(0).steps().get(0)).isEqualTo(on);
    assertThat(on.by()).isEqualTo("Coach Reed");
    assertThat(w.waysBack().of(ada.id())).singleElement().satisfies(b -> assertThat(b.stages()).isEqualTo(new Stages(0.3, 0.15)));
    assertThat(standing().formerUnits()).isEqualTo(123.4);
    w.track().log(ada, new Tap(String.format("%032x", 7), Fixtures.tap(ada.id(), TODAY), true), CoachSettings.DEFAULT);
    assertThat(w.loadDesk().day(ada).withPlan().findings()).extracting(Finding::rule).contains(Finding.Rule.WAY_BACK);
    w.waysBack().end(ada.id(), kept.id(), new WayBack.End(TODAY, "Dr Sedge", "back at the former week"));
    assertThat(w.loadDesk().day(ada).withPlan().findings()).extracting(Finding::rule).doesNotContain(Finding.Rule.WAY_BACK);
    assertThatThrownBy(() -> w.waysBack().end(ada.id(), kept.id(), new WayBack.End(TODAY, "x", "y"))).isInstanceOf(RefusedException.class).hasMessageContaining("ended on");
    assertThatThrownBy(() -> w.waysBack().step(ada.id(), kept.id(), on)).isInstanceOf(RefusedException.class).hasMessageContaining("ended on");
  }

  @Test
  void noneBeginsWhileAHoldStandsOrAnotherOfTheLegRuns() {
    MedicalHold hold = w.care().openHold(ada.id(), new MedicalHold(0, BEGUN.minusDays(28), "Set by the physio", null, null));
    assertThatThrownBy(() -> w.waysBack().begin(ada.id(), way(BEGUN)))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("Medical hold " + hold.id())
        .hasMessageContaining("named clinician");
    w.care().endHold(ada.id(), hold.id(), "Dr Sedge", BEGUN.plusDays(1));
    assertThatThrownBy(() -> w.waysBack().begin(ada.id(), way(BEGUN))).as("it stands on that day").isInstanceOf(RefusedException.class);
    w.waysBack().begin(ada.id(), way(BEGUN.plusDays(1)));
    assertThatThrownBy(() -> w.waysBack().begin(ada.id(), way(TODAY))).isInstanceOf(RefusedException.class).hasMessageContaining("End it first");
    assertThat(w.waysBack().of(ada.id())).hasSize(1);
  }

  @Test
  void aBeginningAsksForHoldsAndWaysAlone() {
    List<String> asked = Stores.asked(w, () -> w.waysBack().begin(ada.id(), way(BEGUN)));
    assertThat(asked).as("holds, steps, ways, and the new one").hasSize(4);
    assertThat(asked).noneMatch(sql -> sql.contains("FROM pain") || sql.contains("FROM body_measurement"));
  }

  @Test
  void aHoldOnTheWayBeginsItAnew() {
    WayBack kept = w.waysBack().begin(ada.id(), way(BEGUN));
    w.waysBack().step(ada.id(), kept.id(), new BackStep(0, BEGUN.plusDays(7), BackStep.Kind.ON, 1, "Coach Reed", ""));
    MedicalHold hold = w.care().openHold(ada.id(), new MedicalHold(0, BEGUN.plusDays(10), "invented", null, null));
    assertThat(w.loadDesk().day(ada).held()).isTrue();
    w.care().endHold(ada.id(), hold.id(), "Dr Sedge", BEGUN.plusDays(40));
    assertThat(standing().stage()).isZero();
    assertThat(standing().since()).isEqualTo(BEGUN.plusDays(40));
  }

  @Test
  void theDatabaseItselfLetsNothingUnsay() {
    WayBack kept = w.waysBack().begin(ada.id(), way(BEGUN));
    w.waysBack().step(ada.id(), kept.id(), new BackStep(0, BEGUN.plusDays(7), BackStep.Kind.ON, 1, "Coach Reed", ""));
    for (String sql :
        List.of(
            "DELETE FROM way_back", "UPDATE way_back SET allowed_by = 'me'", "UPDATE way_back SET former_units = 999", "DELETE FROM way_back_step",
            "UPDATE way_back_step SET stage = 9")) {
      assertThatThrownBy(() -> w.database().write(h -> h.execute(sql))).as(sql).isInstanceOf(RefusedException.class).hasCauseInstanceOf(JdbiException.class);
    }
    w.athletes().erase(ada.id());
    assertThat(w.database().counts().rows().get("way_back")).isZero();
    assertThat(w.database().counts().rows().get("way_back_step")).isZero();
  }

  @Test
  void whoMayNotKnowSeesNone() {
    w.waysBack().begin(ada.id(), way(BEGUN));
    Workbench less = w.seen(Seen.WITHOUT_BODIES);
    assertThat(less.waysBack().of(ada.id())).isEmpty();
    assertThat(less.care().care(ada.id(), TODAY).backs()).isEmpty();
    assertThatThrownBy(() -> less.waysBack().begin(ada.id(), way(TODAY))).isInstanceOf(RefusedException.class);
  }
}
