package boundwright.runway;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Rep;
import boundwright.flight.RunUp;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class AdviceMemoryTest {
  private static final LocalDate DAY = LocalDate.of(2026, 5, 12);
  private static final Estimate NONE = new Estimate(0, 0, 0);
  private static final RunUp STANDING = new RunUp(NONE, NONE, 0);
  private static final Sequence RRL = Sequence.parse("RRL");

  private final AdviceMemory memory = new AdviceMemory(2);
  private int worked;

  @Test
  void theSameIsWorkedOutOnceAndAnotherModelAfresh() {
    FlightModel prior = FlightModel.prior(Profile.bare(new Athlete(1, "Ilka Sandfoot", Level.BEGINNER, Foot.RIGHT, 0)));
    FlightModel learned =
        prior.learn(new Rep(1, 1, DAY, RRL, 0, Surface.TRACK, List.of(), 6.4, null, null, List.of()));
    MarkAdvice first = ask(prior, RRL, DAY);
    assertThat(ask(FlightModel.fromBytes(prior.toBytes()).orElseThrow(), RRL, DAY)).isSameAs(first);
    assertThat(worked).isEqualTo(1);
    MarkAdvice second = ask(learned, RRL, DAY);
    assertThat(second.markToSand_m()).isNotEqualTo(first.markToSand_m());
    assertThat(ask(prior, RRL, DAY)).as("taken back: the first advice again").isSameAs(first);
    assertThat(worked).isEqualTo(2);
    ask(prior, RRL, DAY.plusDays(1));
    assertThat(worked).as("another day").isEqualTo(3);
    ask(learned, RRL, DAY);
    assertThat(worked).as("the one that was asked longest ago made room").isEqualTo(4);
    ask(prior, RRL.mirrored(), DAY);
    assertThat(worked).isEqualTo(5);
  }

  private MarkAdvice ask(FlightModel model, Sequence sequence, LocalDate date) {
    return memory.advice(
        model,
        STANDING,
        sequence,
        0,
        Surface.TRACK,
        CoachSettings.DEFAULT,
        date,
        null,
        () -> {
          worked++;
          return MarkAdvisor.advise(model, STANDING, sequence, 0, Surface.TRACK, CoachSettings.DEFAULT, date);
        });
  }
}
