package boundwright.technique;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.evidence.Standing;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The list of faults, what a coach may add to it, and how a tick is written. The advice is common practice. */
class FaultsTest {
  @ParameterizedTest
  @EnumSource(TeachingPoint.class)
  void everyTeachingPointHasAdviceThatFitsBetweenTwoReps(TeachingPoint point) {
    FaultAdvice advice = FaultCatalogue.of(point);
    assertThat(advice.key()).isEqualTo(point.key());
    assertThat(advice.label()).isEqualTo(point.wentWrong());
    assertThat(advice.looksLike()).isNotBlank().hasSizeLessThan(120);
    assertThat(advice.causes()).hasSizeBetween(1, 3).allSatisfy(c -> assertThat(c).isNotBlank().hasSizeLessThan(90));
    assertThat(advice.say()).isNotBlank().hasSizeLessThan(50);
    assertThat(advice.next()).isNotBlank().hasSizeLessThan(140);
    assertThat(advice.source().standing()).isEqualTo(Standing.COMMON_PRACTICE);
    assertThat(FaultTick.of(point.key()).written()).isEqualTo(point.key());
  }

  @Test
  void cuesDiffer() {
    assertThat(new FaultCatalogue(List.of()).all()).extracting(FaultAdvice::say).doesNotHaveDuplicates();
  }

  @Test
  void aCoachAddsAFault() {
    Fault fault = Fault.named("  Clenched   fists ", "Fists and jaw tight.", "", "Soft hands.", "");
    FaultCatalogue list = new FaultCatalogue(List.of(fault));
    assertThat(fault.key()).isEqualTo("clenched-fists");
    assertThat(fault.label()).isEqualTo("Clenched fists");
    assertThat(list.label("clenched-fists")).isEqualTo("Clenched fists");
    assertThat(list.byKey("clenched-fists").orElseThrow().source().standing()).isEqualTo(Standing.OWN_DATA);
    assertThat(list.byKey("clenched-fists").orElseThrow().causes()).isEmpty();
    assertThat(list.all()).hasSize(TeachingPoint.values().length + 1);
  }

  @Test
  void aFaultTakenOutOfTheListStaysReadable() {
    assertThat(new FaultCatalogue(List.of()).label("old-one")).isEqualTo("old-one");
  }

  @Test
  void refusesFaultsThatDoNotFit() {
    assertThatThrownBy(() -> Fault.named(" ", "", "", "", "")).isInstanceOf(RefusedException.class).hasMessageContaining("no letter");
    assertThatThrownBy(() -> Fault.named("x".repeat(31), "", "", "", "")).isInstanceOf(RefusedException.class).hasMessageContaining("31");
    assertThatThrownBy(() -> Fault.named("arms", "y".repeat(301), "", "", ""))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("what it looks like")
        .hasMessageContaining("301");
    assertThatThrownBy(() -> Fault.named("Knee up", "", "", "", "")).isInstanceOf(RefusedException.class).hasMessageContaining("low knee");
    Fault one = Fault.named("Fists", "", "", "", "");
    assertThatThrownBy(() -> new FaultCatalogue(List.of(one, one))).isInstanceOf(RefusedException.class).hasMessageContaining("'Fists'");
    Fault sameName = new Fault("other-key", "Fists", "", "", "", "");
    assertThatThrownBy(() -> new FaultCatalogue(List.of(one, sameName))).isInstanceOf(RefusedException.class).hasMessageContaining("another name");
  }

  @ParameterizedTest
  @ValueSource(strings = {"leans@3", "leans", "knee-up@60", "knee-up@1"})
  void aTickReadsBackAsItWasWritten(String text) {
    assertThat(FaultTick.parse(text).written()).isEqualTo(text);
  }

  @Test
  void tickParts() {
    assertThat(FaultTick.parse(" leans@3 ")).isEqualTo(new FaultTick("leans", 3));
    assertThat(FaultTick.parse("leans").contact()).isNull();
    assertThat(FaultTick.parseAll(List.of("leans@3", "toe-up"))).hasSize(2);
  }

  @ParameterizedTest
  @ValueSource(strings = {"leans@0", "leans@61", "leans@", "leans@x", "leans@-1", "leans@3@4", "@3", "", "Leans", "knee up", "knee--up", "leans@9999"})
  void refusesWhatIsNoTick(String text) {
    assertThatThrownBy(() -> FaultTick.parse(text)).isInstanceOf(RefusedException.class);
  }

  @Test
  void refusesAContactThatTheDrillDoesNotHave() {
    Sequence six = Sequence.parse("RRL RRL");
    assertThat(new FaultTick("toe-up", 6).within(six).contact()).isEqualTo(6);
    assertThatThrownBy(() -> new FaultTick("toe-up", 7).within(six)).isInstanceOf(RefusedException.class).hasMessageContaining("6 contacts");
  }
}
