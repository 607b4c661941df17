package boundwright.store.backup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.YearMonth;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Which backups stay, on calendars counted out by hand and on random years. */
class RotationTest {
  private static final LocalDate FIRST = LocalDate.of(2026, 1, 1);

  private static Kept at(LocalDateTime at, long reps, long erasures) {
    return new Kept(Path.of(at.toString().replace(':', '-')), at, new Counts(16, 0, erasures, Map.of("rep", reps, "athlete", 5L)));
  }

  private static Kept on(LocalDate day, long reps) {
    return at(day.atTime(9, 0), reps, 0);
  }

  /** Lets a year go by, one backup each morning, thinned each time. */
  private static List<Kept> year(Rotation rotation) {
    List<Kept> there = new ArrayList<>();
    for (int i = 0; i < 365; i++) {
      there.add(on(FIRST.plusDays(i), 10L * i));
      there.removeAll(rotation.toGo(there));
    }
    return there;
  }

  @Test
  void afterAYearTheLastDaysWeeksAndMonthsAreThere() {
    List<LocalDate> days = year(Rotation.USUAL).stream().map(k -> k.made().toLocalDate()).toList();
    // worked by hand on the calendar of 2026: 31 December is a Thursday, so the Sundays before are the 27th, 20th and 13th
    assertThat(days)
        .contains(
            LocalDate.of(2026, 12, 31), LocalDate.of(2026, 12, 25), LocalDate.of(2026, 12, 27), LocalDate.of(2026, 12, 20), LocalDate.of(2026, 12, 13),
            LocalDate.of(2026, 11, 30), LocalDate.of(2026, 10, 31), LocalDate.of(2026, 9, 30), LocalDate.of(2026, 8, 31), LocalDate.of(2026, 7, 31))
        .doesNotContain(LocalDate.of(2026, 12, 24), LocalDate.of(2026, 6, 30));
    assertThat(days).hasSize(7 + 2 + 5);
  }

  @Test
  void aGoodOneNeverGoesForAWorseOne() {
    Kept full = on(FIRST, 300);
    List<Kept> there = new ArrayList<>(List.of(full));
    for (int i = 1; i < 200; i++) {
      there.add(on(FIRST.plusDays(i), 100)); // 200 reps are gone, and nobody was erased
      there.removeAll(Rotation.USUAL.toGo(there));
      assertThat(there).as("day %d", i).contains(full);
    }
    there.add(on(FIRST.plusDays(200), 301));
    there.removeAll(Rotation.USUAL.toGo(there));
    assertThat(there).doesNotContain(full);
  }

  @Test
  void anErasureIsNoLoss() {
    List<Kept> there = new ArrayList<>(List.of(on(FIRST, 300)));
    for (int i = 1; i < 40; i++) {
      there.add(at(FIRST.plusDays(i).atTime(9, 0), 100, 1));
    }
    assertThat(Rotation.USUAL.toGo(there)).contains(there.get(1)).doesNotContain(there.get(39));
    assertThat(there.get(0).counts().fewerIn(there.get(39).counts())).isEmpty();
    assertThat(there.get(0).counts().fewerIn(on(FIRST, 100).counts())).containsExactly("rep");
  }

  /** Against a slow reading of the rule: whatever went is held by a newer one that stayed, and every day, week and month keeps its newest. */
  @Test
  void whateverGoesIsHeldByANewerOneThatStays() {
    for (long seed = 0; seed < 60; seed++) {
      Random random = new Random(seed);
      Rotation rotation = new Rotation(1 + random.nextInt(8), random.nextInt(5), random.nextInt(7));
      List<Kept> all = new ArrayList<>();
      long reps = 0;
      for (int i = 0; i < 120; i += 1 + random.nextInt(3)) {
        reps = Math.max(0, reps + random.nextInt(40) - (random.nextInt(8) == 0 ? 60 : 0));
        all.add(at(FIRST.plusDays(i).atTime(random.nextInt(24), random.nextInt(60)), reps, 0));
      }
      Set<Kept> gone = new HashSet<>(rotation.toGo(all));
      List<Kept> stay = all.stream().filter(k -> !gone.contains(k)).toList();
      for (Kept k : gone) {
        assertThat(stay)
            .as("seed %d: %s went for none", seed, k)
            .anyMatch(s -> s.made().isAfter(k.made()) && s.counts().of("rep") >= k.counts().of("rep"));
      }
      assertThat(stay).as("seed %d: the newest", seed).contains(all.get(all.size() - 1));
      LocalDate last = all.get(all.size() - 1).made().toLocalDate();
      assertThat(stay.stream().map(k -> YearMonth.from(k.made())).distinct().filter(m -> !m.isBefore(YearMonth.from(last).minusMonths(rotation.months() - 1L))).count())
          .as("seed %d: months", seed)
          .isEqualTo(all.stream().map(k -> YearMonth.from(k.made())).distinct().filter(m -> !m.isBefore(YearMonth.from(last).minusMonths(rotation.months() - 1L))).count());
      long weeksThere = all.stream().map(k -> k.made().get(IsoFields.WEEK_OF_WEEK_BASED_YEAR)).distinct().count();
      assertThat(stay.stream().map(k -> k.made().get(IsoFields.WEEK_OF_WEEK_BASED_YEAR)).distinct().count())
          .as("seed %d: weeks", seed)
          .isGreaterThanOrEqualTo(Math.min(rotation.weeks(), weeksThere));
    }
  }

  @Test
  void numbersOutOfRangeAreRefused() {
    assertThatThrownBy(() -> new Rotation(0, 4, 6)).isInstanceOf(RefusedException.class).hasMessageContaining("A number of days of 0 is out of range: 1 to 60");
  }
}
