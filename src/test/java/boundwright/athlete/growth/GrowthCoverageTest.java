package boundwright.athlete.growth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.quantity.Decimals;
import boundwright.quantity.Estimate;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.BiFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Whether the interval of the speed holds on growth that other models made ({@link GrownUp}: Preece and Baines 1978, {@link ThreeWaves}), beside the
 * trend that knows nothing of growing ({@link PlainTrend}) and the best that could be told ({@link KnowsTheKind}). The courses are those of real
 * children; nothing was chosen on the seeds {@link #CHECKED_ON}. The tables stand in {@code docs/growth.md}, and the tests compare them.
 */
class GrowthCoverageTest {
  private static final long CHOSEN_ON = 900_000;
  private static final long CHECKED_ON = 50_000;
  private static final int EACH = 25;
  private static final int[] MONTHS = {1, 3, 6};

  private static Estimate trend(List<Measurement> all, LocalDate on) {
    return GrowthTrend.of(all).on(on).speed_cm_y();
  }

  private static List<Told> told(long from, int curves, int later, BiFunction<List<Measurement>, LocalDate, Estimate> tells) {
    List<Told> out = new ArrayList<>();
    for (long seed = from + 1; seed <= from + curves; seed++) {
      Random r = new Random(seed);
      GrownUp who = GrownUp.drawn(r);
      out.addAll(Told.of(who, who.measured(r), later, tells));
    }
    return out;
  }

  /** {@link #EACH} boys or girls, measured every so many months. */
  private static List<Told> told(boolean waves, boolean girl, int months, boolean gap, BiFunction<List<Measurement>, LocalDate, Estimate> tells) {
    List<Told> out = new ArrayList<>();
    for (long seed = CHECKED_ON + 1; seed <= CHECKED_ON + EACH; seed++) {
      Random r = new Random(seed);
      Growing who = waves ? ThreeWaves.drawn(r, girl) : GrownUp.drawn(r, girl);
      out.addAll(Told.of(who, who.measured(r, months, gap), 0, tells));
    }
    return out;
  }

  /** Half of the wander and twice of it do worse on seeds that nothing else is checked on, over both kinds of growth. */
  @Test
  void theWanderIsAboutRight() {
    double[] score = new double[3];
    double[] times = {0.5, 1, 2};
    for (int i = 0; i < times.length; i++) {
      double by = times[i];
      for (long seed = CHOSEN_ON + 1; seed <= CHOSEN_ON + 60; seed++) {
        Random r = new Random(seed);
        Growing who = seed % 2 == 0 ? ThreeWaves.drawn(r, r.nextBoolean()) : GrownUp.drawn(r);
        score[i] += Told.score(Told.of(who, who.measured(r), 0, (all, on) -> GrowthTrend.of(all, List.of(), by).on(on).speed_cm_y())) / 60;
      }
    }
    System.out.printf("wander halved, as it is, doubled: %.3f %.3f %.3f%n", score[0], score[1], score[2]);
    assertThat(score[1]).isLessThan(score[0]).isLessThan(score[2]);
  }

  @Test
  void theIntervalOfTheSpeedHoldsNineTimesInTenOnHundredCurves() throws IOException {
    List<Told> now = told(CHECKED_ON, 100, 0, GrowthCoverageTest::trend);
    List<Told> later = told(CHECKED_ON, 100, 42, GrowthCoverageTest::trend);
    List<String> rows = new ArrayList<>();
    rows.add(Told.row("all, on the day of a height", now));
    rows.add(Told.row("all, six weeks after it", later));
    for (int age = 10; age < 17; age++) {
      rows.add(Told.row(age + " to " + (age + 1) + " years", of(now, Told::age, age, age + 1)));
    }
    rows.add(Told.row("more than 1.5 years before the peak", of(now, Told::afterPeak, -9, -1.5)));
    rows.add(Told.row("1.5 to 0.5 years before", of(now, Told::afterPeak, -1.5, -0.5)));
    rows.add(Told.row("within half a year of the peak", of(now, Told::afterPeak, -0.5, 0.5)));
    rows.add(Told.row("0.5 to 1.5 years after", of(now, Told::afterPeak, 0.5, 1.5)));
    rows.add(Told.row("1.5 to 2.5 years after", of(now, Told::afterPeak, 1.5, 2.5)));
    rows.add(Told.row("later", of(now, Told::afterPeak, 2.5, 99)));
    rows.forEach(System.out::println);
    assertThat(Told.held(now)).as("of %d intervals of 100 curves", now.size()).isBetween(85.0, 95.0);
    assertThat(Told.held(later)).as("six weeks after the last height").isBetween(85.0, 95.0);
    assertThat(Told.score(now)).as("interval score, lower is better").isLessThan(Told.score(told(CHECKED_ON, 100, 0, PlainTrend::speed)));
    assertThat(Files.readString(Path.of("docs/growth.md"))).contains(rows);
  }

  private static List<Told> of(List<Told> all, ToDoubleFunction<Told> by, double from, double to) {
    return all.stream().filter(t -> by.applyAsDouble(t) >= from && by.applyAsDouble(t) < to).toList();
  }

  private static String phases(List<Told> all, ToDoubleFunction<List<Told>> of, int decimals) {
    return Stream.of(Told.Phase.values()).map(p -> Decimals.fixed(of.applyAsDouble(p.of(all)), decimals)).collect(Collectors.joining(" | "));
  }

  /** By phase of the spurt, for both kinds of growth, boys and girls, and how often they are measured. */
  @Test
  void theIntervalHoldsInEachPhaseHoweverOftenSomebodyIsMeasured() throws IOException {
    List<String> rows = new ArrayList<>();
    List<Told> every = new ArrayList<>();
    List<Told> plainEvery = new ArrayList<>();
    for (boolean waves : new boolean[] {false, true}) {
      for (boolean girl : new boolean[] {false, true}) {
        for (int months : MONTHS) {
          for (boolean gap : new boolean[] {false, true}) {
            List<Told> now = told(waves, girl, months, gap, GrowthCoverageTest::trend);
            List<Told> plain = told(waves, girl, months, gap, PlainTrend::speed);
            String what = (waves ? "three waves, " : "Preece-Baines, ") + (girl ? "girls, " : "boys, ") + months + (gap ? ", gap" : "");
            rows.add("| " + what + " | " + phases(now, Told::held, 0) + " | " + Decimals.fixed(Told.held(now), 0) + " | "
                + Decimals.fixed(Told.score(now), 2) + " | " + Decimals.fixed(Told.score(plain), 2) + " |");
            every.addAll(now);
            plainEvery.addAll(plain);
          }
        }
      }
    }
    for (List<Told> all : List.of(every, plainEvery)) {
      rows.add("| " + (all == every ? "all of them" : "all of them, trend that knows nothing") + " | " + phases(all, Told::held, 0) + " | "
          + Decimals.fixed(Told.held(all), 0) + " | " + Decimals.fixed(Told.score(all), 2) + " | |");
    }
    rows.forEach(System.out::println);
    assertThat(Told.held(every)).isBetween(85.0, 95.0);
    for (Told.Phase phase : Told.Phase.values()) {
      assertThat(Told.held(phase.of(every))).as(phase.words).isGreaterThan(85);
      assertThat(Told.score(phase.of(every))).as(phase.words).isLessThan(Told.score(phase.of(plainEvery)));
    }
    assertThat(Files.readString(Path.of("docs/growth.md"))).contains(rows);
  }

  /** Half widths beside those of who knows the kind of growth, the sex and the birth date. */
  @Test
  void howSureItCouldBeAtBest() throws IOException {
    List<String> rows = new ArrayList<>();
    for (int months : MONTHS) {
      List<Told> best = new ArrayList<>();
      List<Told> now = new ArrayList<>();
      List<Told> plain = new ArrayList<>();
      for (boolean girl : new boolean[] {false, true}) {
        KnowsTheKind knows = new KnowsTheKind(girl);
        best.addAll(told(false, girl, months, false, knows::speed));
        now.addAll(told(false, girl, months, false, GrowthCoverageTest::trend));
        plain.addAll(told(false, girl, months, false, PlainTrend::speed));
      }
      rows.add(width(months, "who knows the kind", best));
      rows.add(width(months, "the program", now));
      rows.add(width(months, "trend that knows nothing", plain));
      assertThat(Told.score(best)).isLessThan(Told.score(now));
      assertThat(Told.held(best)).as("who knows holds what is promised").isBetween(86.0, 94.0);
    }
    rows.forEach(System.out::println);
    assertThat(Files.readString(Path.of("docs/growth.md"))).contains(rows);
  }

  private static String width(int months, String who, List<Told> all) {
    return "| " + months + ", " + who + " | " + phases(all, Told::halfWidth, 1) + " | " + Decimals.fixed(Told.held(all), 0) + " | " + Decimals.fixed(Told.score(all), 2) + " |";
  }

  @Test
  void fastGrowthIsToldMostlyWhenItIs() {
    List<Told> now = told(CHECKED_ON, 100, 0, GrowthCoverageTest::trend);
    double limit = GrowthSettings.DEFAULT.fast_cm_y();
    List<Told> clearly = now.stream().filter(t -> t.truth() > limit + 1).toList();
    List<Told> clearlyNot = now.stream().filter(t -> t.truth() < limit - 3).toList();
    assertThat(clearly).hasSizeGreaterThan(50);
    assertThat(clearly.stream().filter(t -> t.speed().p50() > limit).count()).as("1 cm a year and more above the setting").isGreaterThan(clearly.size() * 3L / 4);
    assertThat(clearlyNot.stream().filter(t -> t.speed().p50() > limit).count()).as("3 cm a year and more below").isLessThan(clearlyNot.size() / 50);
  }

  /** The made-up growth is what it says: its speed is the slope of its height, and its peak the greatest speed (definitions). */
  @Test
  void theSimulatedSpeedIsTheSlopeOfTheSimulatedHeight() {
    for (long seed = 1; seed <= 50; seed++) {
      GrownUp who = GrownUp.drawn(new Random(seed));
      for (Growing any : List.of(who, ThreeWaves.drawn(new Random(seed), seed % 2 == 0))) {
        for (double age = 10; age < 17; age += 0.37) {
          double slope = (any.height_cm(age + 1e-4) - any.height_cm(age - 1e-4)) / 2e-4;
          assertThat(any.speed_cm_y(age)).as("seed %d", seed).isCloseTo(slope, within(1e-5));
        }
      }
      double peak = IntStream.range(800, 1800).mapToObj(i -> i / 100.0).filter(a -> a > who.spurt_y() - 3)
              .max(Comparator.comparing(who::speed_cm_y)).orElseThrow();
      assertThat(who.peak()).isCloseTo(peak, within(0.011));
    }
  }
}
