package boundwright.season.check;

import boundwright.load.Answer;
import boundwright.load.Finding;
import boundwright.load.Guard;
import boundwright.load.LegCare;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.season.Done;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Asks the guard about every day of a plan, as it would be asked on that day if all was done as planned until then. */
public final class GuardCheck {
  /** Days that the guard looks back, and some. */
  private static final int LOOK_BACK_DAYS = 60;

  private final SeasonInput input;
  private final ContactWeights weights;
  private final Map<Long, List<MedicalHold>> holds;

  /** For a season of which the guard knows what stands in it alone. */
  public GuardCheck(SeasonInput input) {
    this(input, Map.of());
  }

  /**
   * For a season.
   *
   * @param holds medical holds that stand in the program, by the athlete's number
   */
  public GuardCheck(SeasonInput input, Map<Long, List<MedicalHold>> holds) {
    this.input = input;
    this.holds = Map.copyOf(holds);
    this.weights = new ContactWeights(input.rules().guard().scale());
  }

  /**
   * A day that the guard refuses.
   *
   * @param athleteId whose
   * @param date which day
   * @param finding what it says
   */
  public record Judged(long athleteId, LocalDate date, Finding finding) {}

  /** All refusals of a plan of which nothing was done yet; empty if it may be published. */
  public List<Judged> refused(SeasonPlan plan) {
    return refused(plan, Done.nothing(input));
  }

  /** All refusals of the days of a plan that are still open, after what was done. */
  public List<Judged> refused(SeasonPlan plan, Done done) {
    return refused(plan, done, input.squad().stream().map(Member::id).collect(Collectors.toSet()));
  }

  /** All refusals of the open days of some athletes. */
  public List<Judged> refused(SeasonPlan plan, Done done, Set<Long> athletes) {
    List<Judged> out = new ArrayList<>();
    for (Member m : input.squad()) {
      if (athletes.contains(m.id())) {
        plan.of(m.id()).ifPresent(y -> judge(m, y, done, out));
      }
    }
    return out;
  }

  private void judge(Member m, SeasonPlan.Year year, Done done, List<Judged> out) {
    List<DayLoad> before = new ArrayList<>(m.past().days().stream().filter(d -> d.date().isBefore(input.first())).toList());
    before.addAll(done.of(m.id()));
    LegCare care = new LegCare(m.growing(), m.firstSession(), List.of(), holds.getOrDefault(m.id(), List.of()), m.backs(), null);
    LocalDate first = m.past().first();
    if (first == null) {
      first = done.of(m.id()).stream().filter(d -> d.contacts() > 0).map(DayLoad::date).min(LocalDate::compareTo).orElse(null);
    }
    for (PlannedDay day : year.days()) {
      if (day.date().isBefore(done.today())) {
        continue;
      }
      DayLoad load = day.session().on(day.date());
      before.removeIf(d -> d.date().isBefore(day.date().minusDays(LOOK_BACK_DAYS)));
      History history = new History(before, first, m.past().lastWeek());
      Guard guard = new Guard(input.rules().guard().limits(), input.period(day.date()).season(), weights);
      guard.judge(m.athlete().level(), care, history, load).findings().stream()
          .filter(f -> f.answer() == Answer.REFUSED)
          .forEach(f -> out.add(new Judged(m.id(), day.date(), f)));
      before.add(load);
      if (first == null && load.contacts() > 0) {
        first = day.date();
      }
    }
  }
}
