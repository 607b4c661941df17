package boundwright.season.ladder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.quantity.RefusedException;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateRules;
import boundwright.season.ladder.SquadStay.Beginning;
import boundwright.season.ladder.SquadStay.End;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What a stay tells of the sessions that were needed (by hand). */
class SquadStayTest {
  private static final LocalDate FIRST = LocalDate.of(2026, 3, 2);
  private static final double OPEN = Double.POSITIVE_INFINITY;

  /** Sessions on every third day. */
  private static SquadStay stay(int steps, int sessions, Beginning beginning, End end) {
    List<LocalDate> days = IntStream.range(0, sessions).mapToObj(i -> FIRST.plusDays(3L * i)).toList();
    return new SquadStay(1, DrillFamily.ALTERNATE, steps, days, end == End.STILL_THERE ? null : FIRST.plusDays(3L * sessions), beginning, end);
  }

  private static SessionsNeeded needed(int steps, int sessions, End end) {
    return stay(steps, sessions, Beginning.NEW, end).needed(GateRules.DEFAULT.stay());
  }

  @Test
  void passedInTheFirstSessionAfterTheLeastStayItTellsAtMostThatMany() {
    // fourteen days are over in the sixth session, on the fifteenth day after the first
    assertThat(needed(4, 6, End.READY)).isEqualTo(new SessionsNeeded(0, 6));
    assertThat(needed(4, 7, End.READY)).isEqualTo(new SessionsNeeded(6, 7));
    // from six steps twenty-one days are over in the eighth
    assertThat(needed(6, 8, End.READY)).isEqualTo(new SessionsNeeded(0, 8));
    assertThat(needed(6, 9, End.READY)).isEqualTo(new SessionsNeeded(8, 9));
  }

  @Test
  void notOverOrEndedByTheCoachItTellsMoreThanThatMany() {
    assertThat(needed(4, 5, End.STILL_THERE)).isEqualTo(new SessionsNeeded(5, OPEN));
    assertThat(needed(4, 5, End.LEFT)).isEqualTo(new SessionsNeeded(5, OPEN));
  }

  @Test
  void onlyNewStaysWhereTheGateCanAnswerTell() {
    assertThat(stay(4, 5, Beginning.NEW, End.READY).tells()).isTrue();
    assertThat(stay(4, 5, Beginning.AGAIN, End.READY).tells()).isFalse();
    assertThat(stay(4, 5, Beginning.UNKNOWN, End.READY).tells()).isFalse();
    assertThat(stay(4, 0, Beginning.NEW, End.STILL_THERE).tells()).isFalse();
    assertThat(stay(12, 5, Beginning.NEW, End.STILL_THERE).tells()).as("nothing is added to twelve").isFalse();
  }

  @Test
  void refusals() {
    assertThatThrownBy(() -> new SquadStay(1, DrillFamily.ALTERNATE, 4, List.of(FIRST), null, Beginning.NEW, End.READY)).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> new ClimbRules(GateRules.DEFAULT.stay(), java.util.Map.of(DrillFamily.ALTERNATE, 14), 7, 28, PacePrior.USUAL))
        .isInstanceOf(RefusedException.class).hasMessageContaining("14").hasMessageContaining("0 to 12");
    assertThatThrownBy(() -> new PacePrior(1, 0.5, 0.2, 0.15, 0.35, 8)).isInstanceOf(RefusedException.class).hasMessageContaining("2 to 60 sessions");
    assertThatThrownBy(() -> new Turnout(-1, 0)).isInstanceOf(RefusedException.class);
  }
}
