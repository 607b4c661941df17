package boundwright.season.why;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.season.MadeUpSeason;
import boundwright.season.SeasonInput;
import boundwright.season.solve.Joint;
import boundwright.season.solve.SeasonPlanner;
import boundwright.season.year.Choice;
import boundwright.season.year.Level;
import java.time.Duration;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class WhyTest {
  private static final SeasonInput INPUT = MadeUpSeason.of(5, 20, 21);

  private static SeasonPlanner.Planned planned() {
    return new SeasonPlanner(INPUT, MadeUpSeason.climbs(INPUT, 6), null, 21).plan(Duration.ZERO, t -> {});
  }

  @Test
  void everyWishThatIsNotMetIsToldWithACostThatIsExact() {
    Joint joint = planned().joint();
    long[] before = joint.total().clone();
    List<Unmet> unmet = new Why(INPUT, joint).unmet();
    assertThat(joint.total()).as("asking changes nothing").containsExactly(before);
    assertThat(unmet).isNotEmpty();
    for (Unmet u : unmet) {
      assertThat(u.stands()).isNotBlank();
      if (u.nearest() == null) {
        continue;
      }
      Joint other = joint.copy();
      int a = athlete(other, u.athlete());
      int t = (int) ChronoUnit.DAYS.between(INPUT.first(), u.nearest());
      Choice c = other.line(a).problem().choices(t).stream().filter(x -> Objects.equals(x.session(), u.instead())).findFirst().orElseThrow();
      other.choose(a, t, c);
      assertThat(Cost.between(before, other.total())).as("%s %s %s", u.athlete(), u.from(), u.wish()).isEqualTo(u.cost());
      if (u.stands().startsWith("refused")) {
        assertThat(other.refusals()).isPositive();
      }
    }
  }

  private static int athlete(Joint joint, String name) {
    int a = 0;
    while (!joint.line(a).problem().member().name().equals(name)) {
      a++;
    }
    return a;
  }

  @Test
  void everyDayHasAReason() {
    SeasonPlanner.Planned p = planned();
    Why why = new Why(INPUT, p.joint());
    INPUT.squad().forEach(m -> {
      for (int t = 0; t < INPUT.days(); t++) {
        DayReasons d = why.day(m.id(), INPUT.day(t));
        assertThat(d.session()).isEqualTo(p.plan().of(m.id()).orElseThrow().on(INPUT.day(t)).orElse(null));
        assertThat(d.shaped()).as("%s on %s", m.name(), d.date()).isNotEmpty();
      }
    });
  }

  @Test
  void costsAreToldInUnitsNeverAsASum() {
    long[] now = {0, 3, 100, 5, 0, 2, 0, 1};
    long[] then = {0, 2, 114, 7, 0, 2, 0, 1};
    Cost cost = Cost.between(now, then);
    assertThat(cost.said()).isEqualTo("wishes not met: 1 wish less; off the load wanted: 14 standing-bound contacts more; cautions: 2 cautions more");
    assertThat(cost.decides()).isNull();
    assertThat(Cost.between(then, now).decides()).isEqualTo(Level.WISHES);
  }
}
