package boundwright.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A rep that the athlete broke off: contacts on the legs and no length. Counts are worked by hand from the letters. */
class AbandonedRepTest {
  private static final LocalDate DAY = LocalDate.of(2026, 5, 12);
  private static final Sequence RRL_2 = Sequence.parse("RRL RRL");

  private static Rep rep(List<Double> prints, @Nullable Double landing, Outcome outcome, @Nullable Integer after) {
    return new Rep(0, 1, DAY, RRL_2, 4, Surface.TRACK, prints, landing, outcome, after, 14.0, false, List.of());
  }

  @Test
  void theContactsUpToWhereItBrokeOffWereDone() {
    Rep four = rep(List.of(2.5, 5.4), null, Outcome.ABANDONED, 4);
    assertThat(four.abandoned()).isTrue();
    assertThat(four.contactsDone().letters()).isEqualTo("RRLR");
    assertThat(four.contactsDone(Foot.RIGHT)).isEqualTo(3);
    assertThat(four.contactsDone(Foot.LEFT)).isEqualTo(1);
    assertThat(rep(List.of(), null, Outcome.ABANDONED, 6).contactsDone()).isEqualTo(RRL_2);
    assertThat(rep(List.of(), null, Outcome.IN, null).contactsDone()).isEqualTo(RRL_2);
  }

  @Test
  void whereNobodyCountedAllContactsCount() {
    assertThat(rep(List.of(2.5), null, Outcome.ABANDONED, null).contactsDone()).isEqualTo(RRL_2);
  }

  @Test
  void whatCannotBeIsRefusedWithTheLimit() {
    assertThatThrownBy(() -> rep(List.of(), 15.0, Outcome.ABANDONED, null)).isInstanceOf(RefusedException.class).hasMessageContaining("has no landing");
    assertThatThrownBy(() -> rep(List.of(), null, Outcome.ABANDONED, 0)).isInstanceOf(RefusedException.class).hasMessageContaining("contacts 1 to 6");
    assertThatThrownBy(() -> rep(List.of(), null, Outcome.ABANDONED, 7)).isInstanceOf(RefusedException.class).hasMessageContaining("contacts 1 to 6");
    assertThatThrownBy(() -> rep(List.of(2.5, 5.4), null, Outcome.ABANDONED, 2)).isInstanceOf(RefusedException.class).hasMessageContaining("at most 1");
    assertThatThrownBy(() -> rep(List.of(), null, Outcome.SHORT, 3)).isInstanceOf(RefusedException.class).hasMessageContaining("outcome is 'short'");
  }

  @Test
  void nothingIsLearnedFromItAsLength() {
    FlightModel before = FlightModel.prior(new Profile(new Athlete(1, "Ada", Level.INTERMEDIATE, Foot.RIGHT, 4), List.of(), List.of()));
    assertThat(before.learn(rep(List.of(1.2, 2.4), null, Outcome.ABANDONED, 4))).isEqualTo(before);
    FlightModel one = before.learn(rep(List.of(), 14.4, Outcome.IN, null));
    FlightModel between = before.learn(rep(List.of(), null, Outcome.ABANDONED, null)).learn(rep(List.of(), 14.4, Outcome.IN, null));
    assertThat(between).as("a day that begins with an abandoned rep").isEqualTo(one);
  }
}
