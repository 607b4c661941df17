package boundwright.load;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.load.LegCare.MedicalHold;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Which hold stands on a day: the house's own rule, that only a named clinician and a date end one. */
class LegCareTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 20);

  private static MedicalHold hold(int from, @Nullable Integer cleared) {
    return new MedicalHold(7, TODAY.plusDays(from), "", cleared == null ? null : "Dr Sedge", cleared == null ? null : TODAY.plusDays(cleared));
  }

  @Test
  void aHoldStandsUntilTheDayOfTheClinician() {
    assertThat(hold(-3, 0).stands(TODAY)).as("ended from today on").isFalse();
    assertThat(hold(-3, 1).stands(TODAY)).as("ended from tomorrow on").isTrue();
    assertThat(hold(-3, null).stands(TODAY)).isTrue();
    assertThat(hold(5, null).stands(TODAY)).as("set for later, ended by nobody").isTrue();
    assertThat(hold(5, null).holds(TODAY)).as("and yet bounding is not stopped today").isFalse();
    assertThat(hold(5, 9).stands(TODAY)).as("set for later, with its end").isFalse();
  }

  @Test
  void theFirstThatStandsIsNamed() {
    MedicalHold stands = hold(-1, null);
    LegCare care = new LegCare(false, null, List.of(), List.of(hold(-9, -5), stands));
    assertThat(care.standing(TODAY)).contains(stands);
    assertThat(LegCare.NONE.standing(TODAY)).isEmpty();
    assertThat(stands.refusesWayBack()).hasMessageContaining("Medical hold 7 stands since 2026-05-19: a way back begins when a named clinician has ended it");
  }
}
