package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.Answer;
import boundwright.load.Finding;
import boundwright.quantity.RefusedException;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.track.Attendance;
import boundwright.track.Group;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Plans by day, who is here and who is called together, on the real database. */
class SquadDaysTest {
  private static final LocalDate TODAY = Fixtures.TODAY;
  private static final Drill RRL = new Drill(Sequence.parse("RRL x2"), 0, 2, 3, true);
  private static final Drill BOUNDS = new Drill(Sequence.parse("RL x5"), 2, 1, 4, false);

  @TempDir Path dir;
  private Workbench w;
  private Athlete ada;
  private Athlete ben;
  private Athlete cleo;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    ada = w.athletes().add(new Athlete(0, "Ada Fenn", Level.BEGINNER, Foot.RIGHT, 0));
    ben = w.athletes().add(new Athlete(0, "Ben Holm", Level.BEGINNER, Foot.LEFT, 0));
    cleo = w.athletes().add(new Athlete(0, "Cleo Marsh", Level.ADVANCED, Foot.LEFT, 8));
  }

  @AfterEach
  void close() {
    w.close();
  }

  @Test
  void aDayHasItsOwnPlanOrTheUsualOne() {
    assertThat(w.settings().hasUsual()).isFalse();
    DayPlan usual = new DayPlan("Bounding", List.of(RRL));
    w.settings().keep(usual);
    assertThat(w.settings().plan()).isEqualTo(usual);
    assertThat(w.settings().plan(TODAY.plusDays(9))).isEqualTo(usual);
    DayPlan tomorrow = new DayPlan("Hall", List.of(BOUNDS, RRL), new DayPlan.Place("Sports hall", Surface.SPRUNG_FLOOR));
    w.settings().keep(TODAY.plusDays(1), tomorrow);
    assertThat(w.settings().plan()).isEqualTo(usual);
    assertThat(w.settings().plan(TODAY.plusDays(1))).isEqualTo(tomorrow);
    assertThat(w.settings().own(TODAY)).isEmpty();
    assertThat(w.settings().planned(TODAY, TODAY.plusDays(3))).containsExactly(TODAY.plusDays(1));
    w.settings().keep(TODAY.plusDays(1), new DayPlan("Shorter", List.of(RRL)));
    assertThat(w.settings().plan(TODAY.plusDays(1)).drills()).containsExactly(RRL);
    w.settings().drop(TODAY.plusDays(1));
    assertThat(w.settings().plan(TODAY.plusDays(1))).isEqualTo(usual);
    close();
    w = Stores.open(dir, Fixtures.CLOCK);
    assertThat(w.settings().plan()).as("after a restart").isEqualTo(usual);
  }

  @Test
  void thePlaceOfTodayIsThePlaceOfTheMarksAndTheKeptOneStays() {
    w.settings().keep(TODAY, new DayPlan("Field day", List.of(RRL), new DayPlan.Place("Far field", Surface.GRASS)));
    assertThat(w.settings().settings().facility().surface()).isEqualTo(Surface.GRASS);
    assertThat(w.settings().settings().facility().name()).isEqualTo("Far field");
    assertThat(w.settings().kept().facility().surface()).isEqualTo(Surface.TRACK);
    assertThat(w.settings().settings(TODAY.plusDays(1)).facility().surface()).isEqualTo(Surface.TRACK);
  }

  @Test
  void theLoadOfADayIsThatOfItsOwnPlan() {
    w.settings().keep(new DayPlan("Little", List.of(RRL)));
    w.settings().keep(TODAY.plusDays(3), new DayPlan("Much", List.of(new Drill(Sequence.parse("RL x5"), 0, 5, 4, false))));
    assertThat(w.loadDesk().day(ada).withPlan().contacts()).isEqualTo(36);
    assertThat(w.loadDesk().day(ada, TODAY.plusDays(3)).withPlan().contacts()).isEqualTo(200);
    assertThat(Objects.requireNonNull(w.loadDesk().days(List.of(ada, ben), TODAY.plusDays(3)).get(ben.id())).withPlan().contacts()).isEqualTo(200);
  }

  /** The program's own first plan passes its own limits for everybody, also for an athlete who grows; the ordinary track is another matter. */
  @Test
  void theFirstPlanIsNotTooMuchForAnybody() {
    assertThat(DayPlan.FIRST.contacts(Foot.RIGHT)).isEqualTo(22);
    assertThat(DayPlan.FIRST.contacts(Foot.LEFT)).isEqualTo(22);
    w.settings().keep(DayPlan.FIRST);
    w.settings().keep(TODAY, new DayPlan("", DayPlan.FIRST.drills(), new DayPlan.Place("Far field", Surface.GRASS)));
    w.care().setGrowing(ben.id(), true, TODAY);
    for (Athlete a : List.of(ada, ben, cleo)) {
      assertThat(w.loadDesk().day(a).answer()).as(a.name()).isEqualTo(Answer.ALLOWED);
      assertThat(w.loadDesk().day(a, TODAY.plusDays(1)).withPlan().concerns()).as(a.name()).extracting(Finding::rule)
          .isSubsetOf(Finding.Rule.SURFACE);
    }
  }

  @Test
  void everybodyIsHereUntilTheyAreTappedAway() {
    assertThat(w.attendance().today().said()).isEqualTo("all 3 here");
    w.attendance().keepHere(TODAY, Set.of(ada.id(), 999L));
    assertThat(w.attendance().here()).containsExactly(ada);
    assertThat(w.attendance().today().said()).isEqualTo("1 of 3 here");
    assertThat(w.attendance().on(TODAY.plusDays(1)).here()).as("another day").hasSize(3);
    w.attendance().keepHere(TODAY, Set.of(ada.id(), cleo.id()));
    assertThat(w.attendance().here()).containsExactly(ada, cleo);
  }

  @Test
  void whoBoundsIsHereAndCanBeTappedAwayAgain() {
    w.attendance().keepHere(TODAY, Set.of(ada.id()));
    w.logbook().log(new Rep(0, ben.id(), TODAY, Sequence.parse("RRL"), 0, Surface.GRASS, List.of(), null, Outcome.IN, 6.0, List.of()));
    assertThat(w.attendance().here()).containsExactly(ada, ben);
    w.logbook().log(new Rep(0, cleo.id(), TODAY.minusDays(1), Sequence.parse("RRL"), 0, Surface.GRASS, List.of(), null, Outcome.IN, 6.0, List.of()));
    assertThat(w.attendance().here()).as("a rep of another day").containsExactly(ada, ben);
    w.attendance().keepHere(TODAY, Set.of(ada.id()));
    assertThat(w.attendance().here()).containsExactly(ada);
  }

  @Test
  void anAthleteIsInAnyNumberOfGroupsAndLeavesThemWhenErased() {
    Group young = w.attendance().keep(new Group(0, "Under 16", Set.of(ada.id(), ben.id())));
    w.attendance().keep(new Group(0, "Tuesday", Set.of(ada.id(), cleo.id())));
    assertThat(Attendance.groupsOf(ada, w.attendance().groups())).containsExactly("Tuesday", "Under 16");
    assertThatThrownBy(() -> w.attendance().keep(new Group(0, " under  16", Set.of()))).isInstanceOf(RefusedException.class)
        .hasMessageContaining("Under 16 is there already");
    w.attendance().keep(new Group(young.id(), "Under 18", Set.of(ben.id())));
    assertThat(Attendance.groupsOf(ada, w.attendance().groups())).containsExactly("Tuesday");
    w.attendance().keepHere(TODAY, Set.of());
    w.athletes().erase(ben.id());
    assertThat(w.attendance().groups()).extracting(Group::name).containsExactly("Tuesday", "Under 18");
    assertThat(w.attendance().groups().get(1).members()).isEmpty();
    assertThat(w.attendance().today().away()).containsExactlyInAnyOrder(ada.id(), cleo.id());
    w.attendance().removeGroup(young.id());
    assertThat(w.attendance().groups()).hasSize(1);
    assertThat(w.athletes().all()).hasSize(2);
  }
}
