package boundwright.season.check;

import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LegLoad;
import boundwright.season.Done;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Whether the load falls before each main meet by the least cut of the season's rules, the meet's own contacts counted, against the four
 * weeks before the taper; counted here on the days of a plan, whoever made it. Weeks of less than half of that with which anybody may
 * start are not cut. A meet that is over asks for nothing, nor does a taper of which no training is left: nothing more could be given up.
 */
public final class TaperCheck {
  private static final int BEFORE_DAYS = 28;

  private final SeasonInput input;
  private final ContactWeights weights;

  /** For a season. */
  public TaperCheck(SeasonInput input) {
    this.input = input;
    this.weights = new ContactWeights(input.rules().guard().scale());
  }

  /**
   * A taper that is none.
   *
   * @param athlete name
   * @param meet that it leads to
   * @param cut by how much the load falls, as a share of the four weeks before; below 0 where it rises
   */
  public record Missed(String athlete, Meet meet, double cut) {}

  /** All tapers that are none, by athlete, in order of time. */
  public List<Missed> missed(SeasonPlan plan, Done done) {
    List<Missed> out = new ArrayList<>();
    for (Member m : input.squad()) {
      plan.of(m.id()).ifPresent(y -> missed(m, y, done, out));
    }
    return out;
  }

  private void missed(Member m, SeasonPlan.Year year, Done done, List<Missed> out) {
    List<Meet> main =
        input.meets().stream().filter(x -> !x.date().isBefore(done.today()) && m.entry(x).filter(i -> i == Entry.Importance.MAIN).isPresent()).toList();
    if (main.isEmpty()) {
      return;
    }
    Map<LocalDate, Integer> load = load(m, year, done);
    int days = input.rules().taper().days();
    for (Meet meet : main) {
      LocalDate from = meet.date().minusDays(days - 1L);
      long before = sum(load, from.minusDays(BEFORE_DAYS), from.minusDays(1));
      long in = sum(load, from, meet.date());
      long mostMille = Math.round(1000 * (1 - input.rules().taper().leastCut()));
      boolean started = before >= 200L * input.rules().guard().limits().startWeek();
      if (started && 1000L * BEFORE_DAYS * in > before * days * mostMille && trainingLeft(year, from, meet.date(), done.today())) {
        out.add(new Missed(m.name(), meet, 1 - (double) BEFORE_DAYS * in / (before * (double) days)));
      }
    }
  }

  private static boolean trainingLeft(SeasonPlan.Year year, LocalDate from, LocalDate meet, LocalDate today) {
    return year.days().stream().map(PlannedDay::date).anyMatch(d -> !d.isBefore(from) && d.isBefore(meet) && !d.isBefore(today));
  }

  /** Days with load, both legs [1/100 standing-bound contact], as the plan's own rules count it. */
  private Map<LocalDate, Integer> load(Member m, SeasonPlan.Year year, Done done) {
    Map<LocalDate, Integer> out = new HashMap<>();
    m.past().days().stream().filter(d -> d.date().isBefore(input.first())).forEach(d -> add(out, d));
    done.of(m.id()).forEach(d -> add(out, d));
    year.days().stream().filter(d -> !d.date().isBefore(done.today())).forEach(d -> add(out, d.session().on(d.date())));
    return out;
  }

  private void add(Map<LocalDate, Integer> to, DayLoad day) {
    LegLoad legs = weights.of(day);
    to.merge(day.date(), (int) (Math.round(100 * legs.rightUnits()) + Math.round(100 * legs.leftUnits())), Integer::sum);
  }

  private static long sum(Map<LocalDate, Integer> load, LocalDate from, LocalDate to) {
    return from.datesUntil(to.plusDays(1)).mapToLong(d -> load.getOrDefault(d, 0)).sum();
  }
}
