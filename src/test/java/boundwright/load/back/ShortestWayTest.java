package boundwright.load.back;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The dynamic programme beside a plain search over dates, breadth first, that knows nothing of it. */
class ShortestWayTest {
  private static final LocalDate MONDAY = LocalDate.of(2026, 3, 2);

  /** A leg on a morning, in dates. */
  private record Leg(int stage, LocalDate stageBegan, int clean, LocalDate lastLoaded) {}

  /** Tries loading and resting on every day, a day at a time, until somebody has arrived. */
  private static int breadthFirst(Stages stages, Set<DayOfWeek> trains, Leg start, LocalDate today, int most) {
    Set<Leg> now = new HashSet<>(Set.of(start));
    for (int day = 0; day <= most; day++) {
      LocalDate morning = today.plusDays(day);
      Set<Leg> next = new HashSet<>();
      for (Leg leg : now) {
        boolean weekOver = !morning.isBefore(leg.stageBegan().plusDays(7));
        Leg at = weekOver && leg.clean() >= 2 ? new Leg(leg.stage() + 1, morning, 0, leg.lastLoaded()) : leg;
        if (stages.share(at.stage()) >= 1) {
          return day;
        }
        next.add(at);
        long hours = 24 * (morning.toEpochDay() - at.lastLoaded().toEpochDay());
        boolean rested = hours >= (stages.share(at.stage()) * 3 < 2 ? 48 : 72);
        if (trains.contains(morning.getDayOfWeek()) && rested) {
          next.add(new Leg(at.stage(), at.stageBegan(), Math.min(2, at.clean() + 1), morning));
        }
      }
      now = next;
    }
    return -1;
  }

  @Test
  void fewestDaysAreThoseOfAPlainSearch() {
    long seed = 20260302;
    Random r = new Random(seed);
    for (int i = 0; i < 150; i++) {
      Stages stages = new Stages(0.5 + 0.4 * r.nextDouble(), 0.05 + 0.25 * r.nextDouble());
      EnumSet<DayOfWeek> trains = EnumSet.noneOf(DayOfWeek.class);
      for (DayOfWeek d : DayOfWeek.values()) {
        if (r.nextInt(3) > 0) {
          trains.add(d);
        }
      }
      if (trains.isEmpty()) {
        trains.add(DayOfWeek.SUNDAY);
      }
      LocalDate today = MONDAY.plusDays(r.nextInt(7));
      BackState from = new BackState(1 + r.nextInt(3), r.nextInt(stages.count()), r.nextInt(3), r.nextInt(8));
      Leg leg = new Leg(from.stage(), today.minusDays(from.days()), from.clean(), today.minusDays(from.sinceLoaded()));
      int searched = breadthFirst(stages, trains, leg, today, 400);
      assertThat(new ShortestWay(stages, trains).days(from, today.getDayOfWeek()))
          .as("seed %d, case %d: %s, %s, %s from %s", seed, i, stages, trains, from, today.getDayOfWeek())
          .isEqualTo(searched);
    }
  }

  @Test
  void theWayIsAsLongAsItSaysAndKeepsItsRules() {
    Stages stages = Stages.USUAL;
    for (Set<DayOfWeek> trains :
        List.of(EnumSet.allOf(DayOfWeek.class), EnumSet.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY), EnumSet.of(DayOfWeek.TUESDAY, DayOfWeek.THURSDAY, DayOfWeek.SATURDAY))) {
      ShortestWay shortest = new ShortestWay(stages, trains);
      List<ShortestWay.Day> way = shortest.way(BackState.rested(0), DayOfWeek.MONDAY);
      assertThat(way).hasSize(shortest.days(BackState.rested(0), DayOfWeek.MONDAY));
      int last = -9;
      int[] days = new int[stages.count()];
      int[] loaded = new int[stages.count()];
      for (ShortestWay.Day d : way) {
        days[d.stage()]++;
        if (d.loaded()) {
          assertThat(d.day() - last).isGreaterThanOrEqualTo(stages.share(d.stage()) * 3 < 2 ? 2 : 3);
          assertThat(trains).contains(DayOfWeek.MONDAY.plus(d.day()));
          loaded[d.stage()]++;
          last = d.day();
        }
      }
      for (int k = 0; k < stages.count(); k++) {
        assertThat(days[k]).isGreaterThanOrEqualTo(7);
        assertThat(loaded[k]).isEqualTo(2);
      }
    }
  }

  @Test
  void whoTrainsOnTwoDaysInARowNeedsTwoWeeksForAStage() {
    Stages one = new Stages(0.8, 0.25);
    assertThat(one.count()).isEqualTo(1);
    assertThat(new ShortestWay(one, EnumSet.of(DayOfWeek.MONDAY, DayOfWeek.TUESDAY)).days(BackState.rested(0), DayOfWeek.MONDAY)).isEqualTo(8);
    assertThat(new ShortestWay(one, EnumSet.noneOf(DayOfWeek.class)).days(BackState.rested(0), DayOfWeek.MONDAY)).isEqualTo(ShortestWay.NEVER);
    assertThat(new ShortestWay(one, EnumSet.noneOf(DayOfWeek.class)).way(BackState.rested(0), DayOfWeek.MONDAY)).isEmpty();
  }

  /** A slow model of the same days with draws of its own: eight of ten of its ways end in the range. */
  @Test
  void eightOfTenWaysEndInTheRange() {
    Stages stages = new Stages(0.5, 0.1);
    BackChances known = new BackChances(40, 6, 2, 30, 4);
    ShortestWay shortest = new ShortestWay(stages);
    BackDates dates = BackDates.of(stages, shortest, BackState.rested(0), MONDAY, known, new Random(7));
    assertThat(dates).isEqualTo(BackDates.of(stages, shortest, BackState.rested(0), MONDAY, known, new Random(7)));
    assertThat(dates.earliest()).isEqualTo(MONDAY.plusDays(7L * stages.count())).isBeforeOrEqualTo(dates.from());
    assertThat(dates.from()).isBeforeOrEqualTo(dates.middle());
    assertThat(dates.middle()).isBefore(dates.to());
    long seed = 99;
    Random r = new Random(seed);
    int in = 0;
    int within = 0;
    int runs = 1500;
    for (int i = 0; i < runs; i++) {
      LocalDate end = slowWalk(stages, share(r, 9 + 40, 1 + 6), share(r, 1 + 2, 3 + 4), share(r, 1 + 4, 9 + 30), r);
      in += end.isBefore(dates.from()) || end.isAfter(dates.to()) ? 0 : 1;
      within += end.isAfter(dates.from()) && end.isBefore(dates.to()) ? 1 : 0;
    }
    // days are whole and many ways end on the same: with its ends the range holds eight in ten or more, without them or fewer
    assertThat(in / (double) runs).as("seed %d", seed).isGreaterThan(0.77);
    assertThat(within / (double) runs).as("seed %d", seed).isLessThan(0.83);
  }

  /** A share with this many hits and misses seen: a Beta of whole parameters is the place of a uniform number among others. */
  private static double share(Random r, int a, int b) {
    return new ArrayList<>(r.doubles(a + b - 1L).sorted().boxed().toList()).get(a - 1);
  }

  private static LocalDate slowWalk(Stages stages, double clean, double tooMuch, double missed, Random r) {
    LocalDate day = MONDAY;
    int stage = 0;
    LocalDate began = day;
    LocalDate loaded = day.minusDays(30);
    int cleans = 0;
    while (true) {
      if (cleans >= 2 && !day.isBefore(began.plusDays(7))) {
        stage++;
        began = day;
        cleans = 0;
        if (stages.share(stage) >= 1) {
          return day;
        }
      }
      int rest = stages.share(stage) * 3 < 2 ? 2 : 3;
      if (cleans < 2 && day.toEpochDay() - loaded.toEpochDay() >= rest && r.nextDouble() >= missed) {
        loaded = day;
        if (r.nextDouble() < clean) {
          cleans++;
        } else if (r.nextDouble() < tooMuch) {
          stage = Math.max(0, stage - 1);
          began = day.plusDays(1);
          cleans = 0;
        }
      }
      day = day.plusDays(1);
    }
  }
}
