package boundwright.footfall;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The long jump's drills (common practice): one take-off into the sand, the running steps in the run-up. */
class LongDrillTest {
  @ParameterizedTest
  @EnumSource(LongDrill.class)
  void eachIsOneTakeOffWhoseFlightIsTheJump(LongDrill drill) {
    Sequence left = drill.sequence(Foot.LEFT);
    assertThat(left.letters()).isEqualTo("L");
    assertThat(left.flights()).singleElement().satisfies(f -> assertThat(f.kind()).isEqualTo(FlightKind.JUMP));
    assertThat(left.mirrored().letters()).isEqualTo(drill.sequence(Foot.RIGHT).letters());
    assertThat(Routine.RUNGS).as("a run-up of the progression").contains(drill.steps());
  }

  /** Run, run, jump has two running steps by its name, and the others more. */
  @Test
  void theShortestComesFirst() {
    assertThat(LongDrill.RUN_RUN_JUMP.steps()).isEqualTo(2);
    assertThat(LongDrill.values()).extracting(LongDrill::steps).isSorted();
  }
}
