package boundwright.season.desk;

import boundwright.quantity.RefusedException;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import boundwright.season.mend.Happened;
import boundwright.season.solve.SeasonPlanner;
import boundwright.season.why.DayReasons;
import boundwright.season.why.Unmet;
import boundwright.season.why.Why;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Says why a published day is as it is. Safe to use from many threads; what was worked out last is kept until anything is written. */
public final class WhyDesk {
  private final SeasonDesk desk;
  private final Supplier<String> stamp;
  private @Nullable About last;

  /** @param stamp changes whenever anything is written to the store */
  public WhyDesk(SeasonDesk desk, Supplier<String> stamp) {
    this.desk = desk;
    this.stamp = stamp;
  }

  private record About(long season, String stamp, LocalDate today, SeasonInput input, SeasonPlan plan, Why why) {}

  private About about(long season) {
    String now = stamp.get();
    LocalDate today = desk.today();
    About known = last;
    if (known != null && known.season() == season && known.stamp().equals(now) && known.today().equals(today)) {
      return known;
    }
    SeasonInput input = desk.held(desk.input(season));
    SeasonPlan plan = desk.published(season).orElseThrow(() -> new RefusedException("No plan is published yet, so there is nothing to explain. Plan the season first."));
    SeasonPlanner planner = new SeasonPlanner(input, Happened.climbs(plan, input), null, plan, desk.done(input), 1);
    About out = new About(season, now, today, input, plan, new Why(input, planner.published()));
    last = out;
    return out;
  }

  /** The wishes that are not met from today on, by athlete. */
  public synchronized List<Unmet> unmet(long season) {
    return about(season).why().unmet().stream().filter(u -> !u.from().plusDays(6).isBefore(desk.today())).toList();
  }

  /** Why a day of an athlete is as it is. */
  public synchronized DayReasons day(long season, long athlete, LocalDate day) {
    About about = about(season);
    SeasonInput input = about.input();
    if (input.squad().stream().noneMatch(m -> m.id() == athlete) || day.isBefore(input.first()) || day.isAfter(input.last())) {
      throw new RefusedException("The season has no such athlete or day. Load the page again.");
    }
    Session published = about.plan().of(athlete).flatMap(y -> y.on(day)).orElse(null);
    DayReasons out = about.why().day(athlete, day);
    if (day.isBefore(desk.today())) {
      return new DayReasons(out.athlete(), day, published, List.of("It is over."));
    }
    return Objects.equals(published, out.session())
        ? out
        : new DayReasons(out.athlete(), day, published, List.of("The rules would not allow this now: the season was changed since it was published. Mend the plan."));
  }
}
