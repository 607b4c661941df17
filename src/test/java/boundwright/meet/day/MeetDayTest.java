package boundwright.meet.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.approach.run.LearnedShifts;
import boundwright.approach.run.LearnedShifts.InWind;
import boundwright.approach.run.RunThrough;
import boundwright.approach.weather.Weather;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The times of a meet's day, and start marks moved for the wind. */
class MeetDayTest {
  private static MeetDay day(String starts, int call, int warm) {
    return new MeetDay(1, MeetDay.time(starts), call, warm, null, 2, "");
  }

  /** Counted back from the start (arithmetic; the parts themselves are common practice). */
  @Test
  void theWarmUpIsCountedBackFromTheCallRoom() {
    List<DaySheet.Moment> all = DaySheet.moments(day("14:30", 30, 60));
    assertThat(all.get(0).at()).isEqualTo(LocalTime.of(13, 0));
    assertThat(all).anySatisfy(m -> assertThat(m).isEqualTo(new DaySheet.Moment(LocalTime.of(14, 0), "call room closes", true)));
    assertThat(all.get(all.size() - 1)).isEqualTo(new DaySheet.Moment(LocalTime.of(14, 30), "first attempt of the competition", true));
    assertThat(all).isSortedAccordingTo((a, b) -> a.at().compareTo(b.at()));
    assertThat(DaySheet.moments(day("9:15", 0, 10))).isSortedAccordingTo((a, b) -> a.at().compareTo(b.at()));
  }

  @Test
  void refusesInWords() {
    assertThatThrownBy(() -> day("half past two", 30, 60)).isInstanceOf(RefusedException.class).hasMessageContaining("14:30");
    assertThatThrownBy(() -> day("1:00", 30, 60)).isInstanceOf(RefusedException.class).hasMessageContaining("day before");
    assertThatThrownBy(() -> day("14:30", 300, 60)).isInstanceOf(RefusedException.class).hasMessageContaining("0 to 120");
    assertThatThrownBy(() -> day("14:30", 30, 5)).isInstanceOf(RefusedException.class).hasMessageContaining("10 to 150");
    assertThatThrownBy(() -> new MeetDay(1, LocalTime.NOON, 30, 60, 20.0, 2, "")).isInstanceOf(RefusedException.class).hasMessageContaining("-8 to 12");
    assertThatThrownBy(() -> new MeetDay(1, LocalTime.NOON, 30, 60, 1.0, -2, "")).isInstanceOf(RefusedException.class).hasMessageContaining("0 to 8");
  }

  /** Runs that are carried 5 cm further by each m/s of tail wind. */
  private static List<InWind> runs(int n, boolean flag) {
    Random r = new Random(4);
    List<InWind> out = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double wind = 1 + 1.5 * r.nextGaussian();
      double gap = Math.round(100 * (0.30 - 0.05 * wind + 0.06 * r.nextGaussian())) / 100.0;
      Weather w = flag ? new Weather(Math.rint(wind + r.nextGaussian()), Weather.From.FLAG, null, null) : Weather.gauge(Math.round(10 * wind) / 10.0);
      out.add(new InWind(RunThrough.toGap(14, 28.0, gap, null, null), w));
    }
    return out;
  }

  @Test
  void theStartMarkGoesBackForMoreTailWindThanUsualAndAnEstimateTellsLess() {
    LearnedShifts gauge = LearnedShifts.inWinds(runs(30, false));
    assertThat(gauge.windTold()).isTrue();
    assertThat(gauge.wind_m().p50()).isCloseTo(0.05, within(0.015));
    assertThat(gauge.usualWind()).isCloseTo(1, within(0.6));
    Estimate moved = gauge.moveFor(gauge.usualWind() + 2, 1);
    assertThat(moved.p50()).isCloseTo(2 * gauge.wind_m().p50(), within(1e-12));
    assertThat(moved.halfWidth()).isCloseTo(Math.hypot(2 * gauge.wind_m().halfWidth(), gauge.wind_m().p50()), within(1e-12));
    assertThat(gauge.moveFor(gauge.usualWind(), 0).halfWidth()).isCloseTo(0, within(1e-12));
    assertThat(LearnedShifts.inWinds(runs(30, true)).wind_m().halfWidth()).isGreaterThan(gauge.wind_m().halfWidth());
    assertThat(LearnedShifts.inWinds(runs(2, true)).moveFor(4, 1)).as("silent until told").isEqualTo(new Estimate(0, 0, 0));
    assertThat(mark(33.40, moved.p50()).move(LengthUnit.METRES)).contains(" cm back (");
    assertThat(mark(33.40, 0).move(LengthUnit.METRES)).isEqualTo("stays");
  }

  /** The move is between the two marks as they are written: 33.38 m and 33.39 m are 1 cm apart whatever lies behind them. */
  @Test
  void startMoveAndMarkThatFollowsAddUpAsTheyAreWritten() {
    for (LengthUnit unit : LengthUnit.values()) {
      for (int i = 0; i < 400; i++) {
        DaySheet.Mark m = mark(33.3701 + 0.0007 * i, 0.0003 * i);
        double start = unit.round(Objects.requireNonNull(m.start_m()).p50());
        double then = unit.round(Objects.requireNonNull(m.windStart_m()).p50());
        String by = then - start < unit.step() / 2 ? "stays" : unit.writeSmall(then - start) + " back";
        assertThat(m.move(unit)).as("%s from %s", m.moved_m().p50(), start).startsWith(by);
      }
    }
    assertThat(mark(33.376, 0.016).move(LengthUnit.METRES)).startsWith("1 cm back");
    assertThat(mark(33.376, -0.016).move(LengthUnit.METRES)).startsWith("2 cm forward");
  }

  /** What the figure does not show has no side. */
  @Test
  void anEndOfTheMoveThatIsWrittenAsNothingHasNoSign() {
    Estimate start = new Estimate(33.376, 33.376, 33.376);
    Estimate then = new Estimate(33.392, 33.392, 33.392);
    assertThat(new DaySheet.Mark("Ada", 1, 1, null, 14, start, new Estimate(-0.002, 0.016, 0.034), then, "").move(LengthUnit.METRES)).isEqualTo("1 cm back (0 cm to +3 cm)");
    assertThat(new DaySheet.Mark("Ada", 1, 1, null, 14, then, new Estimate(-0.034, -0.016, 0.002), start, "").move(LengthUnit.METRES)).isEqualTo("1 cm forward (-3 cm to 0 cm)");
  }

  private static DaySheet.Mark mark(double start, double by) {
    return new DaySheet.Mark("Ada", 1, 1, null, 14, new Estimate(start, start, start), new Estimate(by, by, by), new Estimate(start + by, start + by, start + by), "");
  }
}
