package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateAnswer.Decision;
import boundwright.readiness.RungDecision;
import boundwright.season.ladder.SquadStay;
import boundwright.season.ladder.SquadStay.Beginning;
import boundwright.season.ladder.SquadStay.End;
import boundwright.season.ladder.Turnout;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Stays and turnout from a real folder: decisions, reps and the roll as the other rooms keep them. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class SqlStaysTest {
  private static final LocalDate TODAY = Fixtures.TODAY;
  private static final String BOUNDS = "RL x5";

  @TempDir Path dir;
  private Workbench w;
  private long ada;
  private long bo;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
    ada = w.athletes().add(Fixtures.athlete("Ada").onRung(0)).id();
    bo = w.athletes().add(Fixtures.athlete("Bo")).id();
  }

  @AfterEach
  void close() {
    w.close();
  }

  private void rep(long athlete, int daysAgo, String sequence, int steps) {
    Rep rep =
        new Rep(0, athlete, TODAY.minusDays(daysAgo), Sequence.parse(sequence), steps, Surface.GRASS, List.of(), null, Outcome.IN, null, null, true, List.of());
    w.reps().write(x -> x.add(rep));
  }

  private void decide(long athlete, DrillFamily family, int daysAgo, int from, int to, Decision gate) {
    w.ladder().keep(new RungDecision(0, athlete, family, TODAY.minusDays(daysAgo), from, to, gate, "as the invented coach saw it"));
  }

  private List<SquadStay> stays(long athlete, DrillFamily family) {
    return w.stays().stays(TODAY).stream().filter(s -> s.athleteId() == athlete && s.family() == family).toList();
  }

  private static LocalDate ago(int days) {
    return TODAY.minusDays(days);
  }

  @Test
  void aBeginnersStaysFromStandingOnAreNewAndSessionsAreCountedOnce() {
    for (int d : new int[] {60, 57, 53, 50}) {
      rep(ada, d, BOUNDS, 0);
      rep(ada, d, "RL x4", 0);
      rep(ada, d, "R x6", 0);
    }
    decide(ada, DrillFamily.ALTERNATE, 50, 0, 2, Decision.ADD_TWO_STEPS);
    rep(ada, 50, BOUNDS, 2);
    rep(ada, 46, BOUNDS, 2);
    rep(ada, 46, BOUNDS, 0);
    decide(ada, DrillFamily.ALTERNATE, 46, 2, 4, Decision.STAY);
    rep(ada, 43, BOUNDS, 4);
    assertThat(stays(ada, DrillFamily.ALTERNATE))
        .containsExactly(
            new SquadStay(ada, DrillFamily.ALTERNATE, 0, List.of(ago(60), ago(57), ago(53), ago(50)), ago(50), Beginning.NEW, End.READY),
            new SquadStay(ada, DrillFamily.ALTERNATE, 2, List.of(ago(50), ago(46)), ago(46), Beginning.NEW, End.LEFT),
            new SquadStay(ada, DrillFamily.ALTERNATE, 4, List.of(ago(43)), null, Beginning.NEW, End.STILL_THERE));
    assertThat(stays(ada, DrillFamily.SINGLE_LEG)).as("hops are a family of their own")
        .containsExactly(new SquadStay(ada, DrillFamily.SINGLE_LEG, 0, List.of(ago(60), ago(57), ago(53), ago(50)), null, Beginning.NEW, End.STILL_THERE));
  }

  @Test
  void whoWasThereBeforeTheLogOrComesBackIsNotNew() {
    rep(bo, 40, BOUNDS, 4);
    assertThat(stays(bo, DrillFamily.ALTERNATE)).extracting(SquadStay::beginning, SquadStay::steps).containsExactly(
        tuple(Beginning.UNKNOWN, 4));
    decide(bo, DrillFamily.ALTERNATE, 40, 4, 6, Decision.ADD_TWO_STEPS);
    rep(bo, 37, BOUNDS, 6);
    decide(bo, DrillFamily.ALTERNATE, 37, 6, 4, Decision.GO_BACK);
    rep(bo, 33, BOUNDS, 4);
    decide(bo, DrillFamily.ALTERNATE, 33, 4, 6, Decision.ADD_TWO_STEPS);
    assertThat(stays(bo, DrillFamily.ALTERNATE)).extracting(SquadStay::beginning, SquadStay::end).containsExactly(
        tuple(Beginning.UNKNOWN, End.READY),
        tuple(Beginning.NEW, End.LEFT),
        tuple(Beginning.AGAIN, End.READY),
        tuple(Beginning.AGAIN, End.STILL_THERE));
  }

  @Test
  void aDecisionToStayEndsNothingUnlessTheGateHadAnswered() {
    rep(ada, 30, BOUNDS, 0);
    decide(ada, DrillFamily.ALTERNATE, 30, 0, 0, Decision.STAY);
    assertThat(stays(ada, DrillFamily.ALTERNATE)).singleElement().satisfies(s -> assertThat(s.end()).isEqualTo(End.STILL_THERE));
    decide(ada, DrillFamily.ALTERNATE, 26, 0, 0, Decision.ADD_TWO_STEPS);
    assertThat(stays(ada, DrillFamily.ALTERNATE)).extracting(SquadStay::end).containsExactly(End.READY, End.STILL_THERE);
    assertThat(stays(ada, DrillFamily.ALTERNATE).get(1).beginning()).isEqualTo(Beginning.AGAIN);
  }

  @Test
  void turnoutIsWhoCameAndWhoWasTappedAway() {
    rep(ada, 10, BOUNDS, 0);
    rep(ada, 10, "R x6", 0);
    rep(ada, 3, BOUNDS, 0);
    w.attendance().keepHere(ago(6), Set.of());
    assertThat(w.stays().turnout(ago(20), TODAY)).containsEntry(ada, new Turnout(2, 1)).containsEntry(bo, new Turnout(0, 1));
    assertThat(w.stays().turnout(ago(5), TODAY)).containsEntry(ada, new Turnout(1, 0)).doesNotContainKey(bo);
    assertThat(new Turnout(0, 0).share()).as("nine of ten before anything is known; judgement").isEqualTo(0.9);
    assertThat(new Turnout(10, 30).share()).isEqualTo(19.0 / 50);
  }

  @Test
  void daysAfterTodayAreNotKnownYet() {
    rep(ada, 5, BOUNDS, 0);
    rep(ada, 2, BOUNDS, 0);
    assertThat(w.stays().stays(ago(3)).stream().filter(s -> s.athleteId() == ada && s.family() == DrillFamily.ALTERNATE)).singleElement()
        .satisfies(s -> assertThat(s.sessions()).containsExactly(ago(5)));
  }
}
